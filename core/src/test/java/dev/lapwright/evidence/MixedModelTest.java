package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import java.util.Arrays;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.inference.TTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;

class MixedModelTest {
    /** Yields of six batches, g: Davies and Goldsmith (1972), 6.4. */
    private static final double[][] DYESTUFF = {
        {1545, 1440, 1440, 1520, 1580},
        {1540, 1555, 1490, 1560, 1495},
        {1595, 1550, 1605, 1510, 1560},
        {1445, 1440, 1595, 1465, 1545},
        {1595, 1630, 1515, 1635, 1625},
        {1520, 1455, 1450, 1480, 1445}
    };

    /** Simulated yields, Box and Tiao (1973), 5.1.2; from memory. */
    private static final double[][] DYESTUFF_2 = {
        {7.298, 3.846, 2.434, 9.566, 7.990},
        {5.220, 6.556, 0.608, 11.788, -0.892},
        {0.110, 10.386, 13.434, 5.510, 8.166},
        {2.212, 4.852, 7.092, 9.288, 4.980},
        {0.282, 9.014, 4.458, 9.446, 7.198},
        {1.722, 4.782, 8.106, 0.758, 3.758}
    };

    private static final double[] ONE = {1};

    /** One level for all. */
    private static MixedModel level(double[]... batches) {
        return new MixedModel(
                Arrays.stream(batches).map(y -> group(y, k -> ONE)).toArray(MixedModel.Group[]::new), 0);
    }

    private interface Row {
        double[] of(int k);
    }

    private static MixedModel.Group group(double[] y, Row row) {
        double[][] x = new double[y.length][];
        int[] t = new int[y.length];
        for (int k = 0; k < y.length; k++) {
            x[k] = row.of(k);
            t[k] = k + 1;
        }
        return new MixedModel.Group(y, x, t);
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("mixed-model.csv")
    void dyestuffIsAsPublished(CheckRow row) {
        MixedModel model = level(DYESTUFF);
        MixedModel.Variances found = model.reml(false);
        double[] mean = model.at(found).estimate(ONE);
        row.verify(
                switch (row.quantity()) {
                    case "mean yield" -> mean[0];
                    case "standard error of the mean" -> Math.sqrt(mean[1]);
                    case "variance between batches" -> found.run() * found.run();
                    default -> found.lap() * found.lap();
                });
    }

    @Test
    void batchesThatDifferLessThanChanceHaveNoVarianceBetween() {
        MixedModel.Variances found = level(DYESTUFF_2).reml(false);
        double[] all = Arrays.stream(DYESTUFF_2).flatMapToDouble(Arrays::stream).toArray();
        // Closed form: without a variance between, that within is the variance of all. The search stops within 1e-5 of
        // it.
        assertThat(found.run()).isCloseTo(0, within(1e-3));
        assertThat(found.lap() * found.lap()).isCloseTo(StatUtils.variance(all), within(1e-3));
    }

    @Test
    void batchesThatDifferLessThanChanceStillHaveAnInterval() {
        NormalMixture mean = level(DYESTUFF_2)
                .posterior(new MixedModel.VariancePrior(1, 0.6, 0), ONE)
                .combinations()
                .get(0);
        // About two standard errors of the mean of 30; a prior for the batches widens it.
        double error = Math.sqrt(StatUtils.variance(Arrays.stream(DYESTUFF_2)
                        .flatMapToDouble(Arrays::stream)
                        .toArray())
                / 30);
        assertThat(mean.interval(0.05).half()).isBetween(2.04 * error, 3.5 * error);
    }

    /** Six runs by turns, five laps each: setup means. */
    private static double[][] runs(long seed) {
        RandomGenerator random = new Well19937c(seed);
        double[][] runs = new double[6][5];
        for (int r = 0; r < 6; r++) {
            double level = 0.3 * random.nextGaussian() + (r % 2 == 0 ? 0 : -0.2);
            for (int k = 0; k < 5; k++) {
                runs[r][k] = level + 0.1 * random.nextGaussian();
            }
        }
        return runs;
    }

    @Test
    void balancedRunsAreATTestOfTheirMeans() {
        // Closed form: runs of one length without drift; Student's t on run means, k - 2 degrees of freedom.
        double[][] runs = runs(7);
        MixedModel.Group[] groups = new MixedModel.Group[6];
        double[][] means = new double[2][3];
        for (int r = 0; r < 6; r++) {
            double[] row = r % 2 == 0 ? new double[] {1, 0} : new double[] {0, 1};
            groups[r] = group(runs[r], k -> row);
            means[r % 2][r / 2] = StatUtils.mean(runs[r]);
        }
        MixedModel model = new MixedModel(groups, 0, 0);
        MixedModel.Variances found = model.reml(false);
        double[] difference = model.at(found).estimate(-1, 1);
        double t = new TTest().homoscedasticT(means[1], means[0]);
        assertThat(difference[0]).isCloseTo(StatUtils.mean(means[1]) - StatUtils.mean(means[0]), within(1e-9));
        // Where the search stops, and steps of a thousandth in the curvature.
        assertThat(difference[0] / Math.sqrt(difference[1])).isCloseTo(t, within(1e-4 * Math.abs(t)));
        assertThat(model.freedom(found, -1, 1)).isCloseTo(4, within(0.02));
    }

    @Test
    void evenAndBendingDriftFallOutOfFourRunsByTurns() {
        // Closed form: A-B-A-B with a flat even drift and bend leaves weights of -1, 3, -3, 1 over 4.
        double[] y = {0.11, -0.23, 0.38, 0.07};
        MixedModel.Group[] groups = new MixedModel.Group[4];
        for (int r = 0; r < 4; r++) {
            double x = r - 1.5;
            double[] row = {r % 2 == 0 ? 1 : 0, r % 2, x, x * x};
            groups[r] = group(new double[] {y[r]}, k -> row);
        }
        MixedModel model = new MixedModel(groups, 0, 0, 0, 0);
        double[] difference = model.at(new MixedModel.Variances(0.2, 0.15, 0)).estimate(-1, 1, 0, 0);
        assertThat(difference[0]).isCloseTo((-y[0] + 3 * y[1] - 3 * y[2] + y[3]) / 4, within(1e-9));
        assertThat(difference[1]).isCloseTo(20.0 / 16 * (0.2 * 0.2 + 0.15 * 0.15), within(1e-9));
    }

    @Test
    void sumsByGroupsAreGeneralisedLeastSquares() {
        // The same by full matrices of Commons Math: V = sigma² R + tau² 1 1', b = (X' V^-1 X + D)^-1 X' V^-1 y.
        RandomGenerator random = new Well19937c(3);
        int[][] numbers = {{1, 2, 5}, {8, 9, 10, 11}, {14, 16}};
        MixedModel.Group[] groups = new MixedModel.Group[3];
        RealMatrix x = MatrixUtils.createRealMatrix(9, 2);
        RealMatrix y = MatrixUtils.createRealMatrix(9, 1);
        MixedModel.Variances variances = new MixedModel.Variances(0.2, 0.15, 0.4);
        RealMatrix v = MatrixUtils.createRealMatrix(9, 9);
        int at = 0;
        for (int g = 0; g < 3; g++) {
            int n = numbers[g].length;
            double[] values = new double[n];
            double[][] rows = new double[n][];
            for (int i = 0; i < n; i++) {
                rows[i] = new double[] {1, random.nextGaussian()};
                values[i] = random.nextGaussian();
                x.setRow(at + i, rows[i]);
                y.setEntry(at + i, 0, values[i]);
                for (int j = 0; j < n; j++) {
                    double apart = Math.abs(numbers[g][i] - numbers[g][j]);
                    v.setEntry(at + i, at + j, 0.04 * Math.pow(0.4, apart) + 0.15 * 0.15);
                }
            }
            groups[g] = new MixedModel.Group(values, rows, numbers[g]);
            at += n;
        }
        double[] precision = {0, 2.5};
        RealMatrix inverse = new LUDecomposition(v).getSolver().getInverse();
        RealMatrix normal =
                x.transpose().multiply(inverse).multiply(x).add(MatrixUtils.createRealDiagonalMatrix(precision));
        RealMatrix covariance = new LUDecomposition(normal).getSolver().getInverse();
        RealMatrix b = covariance.multiply(x.transpose().multiply(inverse).multiply(y));
        double squares = y.transpose().multiply(inverse).multiply(y).getEntry(0, 0)
                - b.transpose().multiply(normal).multiply(b).getEntry(0, 0);
        double logLikelihood = -0.5
                * (Math.log(new LUDecomposition(v).getDeterminant())
                        + Math.log(new LUDecomposition(normal).getDeterminant())
                        + squares);
        MixedModel.Fit fit = new MixedModel(groups, precision).at(variances);
        // Rounding of two ways to the same.
        assertThat(fit.logLikelihood()).isCloseTo(logLikelihood, within(1e-9));
        assertThat(fit.estimate(0, 1)[0]).isCloseTo(b.getEntry(1, 0), within(1e-9));
        assertThat(fit.estimate(0, 1)[1]).isCloseTo(covariance.getEntry(1, 1), within(1e-9));
    }

    @Test
    void withoutGroupsTheIntervalIsStudents() {
        // Closed form: a mean with a flat prior for it and for the logarithm of sigma.
        double[] y = {0.3, -0.1, 0.25, 0.6, -0.4, 0.2, 0.05};
        NormalMixture mean = level(y).posterior(new MixedModel.VariancePrior(0, 0.6, 0), ONE)
                .combinations()
                .get(0);
        double half =
                new TDistribution(null, 6).inverseCumulativeProbability(0.975) * Math.sqrt(StatUtils.variance(y) / 7);
        // Eleven points over sigma, cut at 4.5 deviations: a hundredth.
        assertThat(mean.interval(0.05).half()).isCloseTo(half, within(0.01 * half));
    }

    @Test
    void finerPointsChangeNoLimitByAMillisecond() {
        MixedModel model = level(runs(11));
        MixedModel.VariancePrior prior = new MixedModel.VariancePrior(0.15, 0.6, 0.8);
        NormalMixture.Interval coarse =
                model.posterior(prior, ONE).combinations().get(0).interval(0.05);
        NormalMixture.Interval fine =
                model.posterior(2, prior, ONE).combinations().get(0).interval(0.05);
        assertThat(coarse.low()).isCloseTo(fine.low(), within(1e-3));
        assertThat(coarse.high()).isCloseTo(fine.high(), within(1e-3));
    }
}
