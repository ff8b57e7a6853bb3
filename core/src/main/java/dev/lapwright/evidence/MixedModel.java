package dev.lapwright.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.analysis.MultivariateFunction;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.SimpleBounds;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.BOBYQAOptimizer;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/**
 * Linear mixed model of grouped measurements: y = X b + u(group) + e, with u normal of deviation tau for each group (a run) and
 * e normal of deviation sigma, correlated within a group as rho^|t - t'| (first-order autoregression over the number t of the
 * lap). Coefficients b may have normal priors about nought. D. Harville, <i>Journal of the American Statistical Association</i>
 * 72 (1977) 320, for the restricted likelihood (cited from memory): b is integrated out, flat where it has no prior.
 *
 * <p>A group's covariance is whitened by the autoregression, and its common part added by rank one: work grows with the
 * measurements, not with their square.
 */
final class MixedModel {
    /** Points for sigma, tau and rho; twice as many change no limit by a millisecond ({@code MixedModelTest}). */
    private static final int LAP_POINTS = 11;

    private static final int RUN_POINTS = 12;
    private static final int CORRELATION_POINTS = 6;
    /** How far the logarithm of sigma is looked at, in its standard deviations. */
    private static final double REACH = 4.5;
    /** The same of tau. */
    private static final double RUN_REACH = 3.5;

    private final int coefficients;
    private final double[] precision;
    private final Group[] groups;
    private final int measurements;
    private final int flat;

    /**
     * Measurements of one group.
     *
     * @param y s
     * @param x by measurement and coefficient
     * @param t number of each, rising
     */
    record Group(double[] y, double[][] x, int[] t) {}

    /**
     * Standard deviations and correlation.
     *
     * @param lap sigma, s, above zero
     * @param run tau, s, 0 or more
     * @param correlation rho of neighbours, 0 to below 1
     */
    record Variances(double lap, double run, double correlation) {}

    /**
     * Priors of tau and rho; the logarithm of sigma has a flat one.
     *
     * @param run median of tau, s; 0 for no effect of the group
     * @param logRun standard deviation of tau's natural logarithm, which is normal
     * @param mostCorrelation rho is alike likely from 0 to this; 0 for independence
     */
    record VariancePrior(double run, double logRun, double mostCorrelation) {}

    /** The coefficients at given variances, by Cholesky's factor of their inverse covariance. */
    static final class Fit {
        private final double logLikelihood;
        private final double[][] factor;

        private Fit(double logLikelihood, double[][] factor) {
            this.logLikelihood = logLikelihood;
            this.factor = factor;
        }

        /** Restricted likelihood, natural logarithm, up to a constant. */
        double logLikelihood() {
            return logLikelihood;
        }

        /** Estimate of a combination of coefficients, and its variance. */
        double[] estimate(double... combination) {
            int p = combination.length;
            double value = 0;
            double variance = 0;
            double[] solved = new double[p];
            for (int i = 0; i < p; i++) {
                double sum = combination[i];
                for (int k = 0; k < i; k++) {
                    sum -= factor[i][k] * solved[k];
                }
                solved[i] = sum / factor[i][i];
                value += solved[i] * factor[p][i];
                variance += solved[i] * solved[i];
            }
            return new double[] {value, variance};
        }

        /** Variance of a combination. */
        double variance(double... combination) {
            return estimate(combination)[1];
        }
    }

    /**
     * What the measurements tell.
     *
     * @param combinations each that was asked for
     * @param variances that were looked at
     * @param weight of each; their sum is 1
     */
    record Posterior(List<NormalMixture> combinations, Variances[] variances, double... weight) {
        /** Mean of a figure of the variances. */
        double mean(ToDoubleFunction<Variances> figure) {
            double sum = 0;
            for (int i = 0; i < weight.length; i++) {
                sum += weight[i] * figure.applyAsDouble(variances[i]);
            }
            return sum;
        }
    }

    /** A group's sums of products, whitened for one correlation; the last column is y. */
    private record Sums(double[][] products, double[] withOne, double one, double logDeterminant, int count) {}

    /**
     * @param groups the measurements
     * @param precision 1/variance of each coefficient's prior about nought; 0 for a flat one
     */
    MixedModel(Group[] groups, double... precision) {
        this.groups = groups.clone();
        this.precision = precision.clone();
        coefficients = precision.length;
        measurements = Arrays.stream(groups).mapToInt(group -> group.y.length).sum();
        flat = (int) Arrays.stream(precision).filter(p -> p == 0).count();
    }

    /** The coefficients at given variances. */
    Fit at(Variances variances) {
        return at(sums(variances.correlation), variances);
    }

    private Fit at(Sums[] sums, Variances variances) {
        int p = coefficients;
        double lap = variances.lap * variances.lap;
        double run = variances.run * variances.run;
        double[][] all = new double[p + 1][p + 1];
        double logDeterminant = 0;
        for (Sums group : sums) {
            double share = run / (lap + run * group.one);
            for (int i = 0; i <= p; i++) {
                for (int j = 0; j <= i; j++) {
                    all[i][j] += (group.products[i][j] - share * group.withOne[i] * group.withOne[j]) / lap;
                }
            }
            logDeterminant += group.count * Math.log(lap) + group.logDeterminant + Math.log1p(run * group.one / lap);
        }
        for (int i = 0; i < p; i++) {
            all[i][i] += precision[i];
        }
        // Cholesky: all = L L', its last row solving L z = X' y on the way.
        double logNormal = 0;
        for (int j = 0; j <= p; j++) {
            for (int i = j; i <= p; i++) {
                double sum = all[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= all[i][k] * all[j][k];
                }
                all[i][j] = i > j ? sum / all[j][j] : j < p ? Math.sqrt(sum) : sum;
            }
            logNormal += j < p ? 2 * Math.log(all[j][j]) : 0;
        }
        return new Fit(-(logDeterminant + logNormal + all[p][p]) / 2, all);
    }

    private Sums[] sums(double correlation) {
        return Arrays.stream(groups).map(group -> sums(group, correlation)).toArray(Sums[]::new);
    }

    private Sums sums(Group group, double correlation) {
        int p = coefficients;
        double[][] products = new double[p + 1][p + 1];
        double[] withOne = new double[p + 1];
        double one = 0;
        double logDeterminant = 0;
        double[] row = new double[p + 1];
        for (int k = 0; k < group.y.length; k++) {
            double before = k == 0 ? 0 : Math.pow(correlation, group.t[k] - group.t[k - 1]);
            double left = 1 - before * before;
            double scale = 1 / Math.sqrt(left);
            logDeterminant += Math.log(left);
            double unit = scale * (1 - before);
            for (int i = 0; i <= p; i++) {
                row[i] = scale * (column(group, k, i) - (k == 0 ? 0 : before * column(group, k - 1, i)));
                withOne[i] += row[i] * unit;
            }
            one += unit * unit;
            for (int i = 0; i <= p; i++) {
                for (int j = 0; j <= i; j++) {
                    products[i][j] += row[i] * row[j];
                }
            }
        }
        return new Sums(products, withOne, one, logDeterminant, group.y.length);
    }

    private double column(Group group, int k, int i) {
        return i < coefficients ? group.x[k][i] : group.y[k];
    }

    /**
     * What the measurements tell of combinations of coefficients, the variances integrated out over their priors: sigma and tau
     * by even steps of their logarithms, rho by Gauss and Legendre.
     */
    Posterior posterior(VariancePrior prior, double[]... combinations) {
        return posterior(1, prior, combinations);
    }

    /** The same with so many times as many points. */
    Posterior posterior(int fineness, VariancePrior prior, double[]... combinations) {
        int laps = fineness * LAP_POINTS;
        double freedom = Math.max(2, measurements - flat - (prior.run > 0 ? groups.length / 2.0 : 0));
        double room = REACH / Math.sqrt(2 * freedom);
        double middle = Math.log(lapDeviation(prior));
        // With laps that hang together a run too short to show it hides part of sigma.
        double above = room + 0.5 * Math.log(1 / (1 - prior.mostCorrelation * prior.mostCorrelation));
        double[][] runs = runs(prior, fineness * RUN_POINTS);
        double[][] correlations = points(prior.mostCorrelation, fineness * CORRELATION_POINTS);
        int parts = laps * runs.length * correlations.length;
        Variances[] variances = new Variances[parts];
        double[] logWeight = new double[parts];
        double[][] mean = new double[combinations.length][parts];
        double[][] deviation = new double[combinations.length][parts];
        int part = 0;
        for (double[] correlation : correlations) {
            Sums[] sums = sums(correlation[0]);
            for (double[] run : runs) {
                for (int i = 0; i < laps; i++) {
                    double lap = Math.exp(middle - room + (room + above) * i / (laps - 1));
                    variances[part] = new Variances(lap, run[0], correlation[0]);
                    Fit fit = at(sums, variances[part]);
                    logWeight[part] = fit.logLikelihood + run[1] + correlation[1];
                    for (int c = 0; c < combinations.length; c++) {
                        double[] estimate = fit.estimate(combinations[c]);
                        mean[c][part] = estimate[0];
                        deviation[c][part] = Math.sqrt(estimate[1]);
                    }
                    part++;
                }
            }
        }
        List<NormalMixture> differences = new ArrayList<>();
        for (int c = 0; c < combinations.length; c++) {
            differences.add(NormalMixture.of(logWeight, mean[c], deviation[c]));
        }
        double most = Arrays.stream(logWeight).max().orElseThrow();
        double[] weight =
                Arrays.stream(logWeight).map(log -> Math.exp(log - most)).toArray();
        double sum = Arrays.stream(weight).sum();
        return new Posterior(
                differences, variances, Arrays.stream(weight).map(w -> w / sum).toArray());
    }

    /** Values of tau by even steps of its logarithm, with the logarithms of their weights. */
    private static double[][] runs(VariancePrior prior, int count) {
        if (prior.run == 0) {
            return new double[][] {{0, 0}};
        }
        double[][] points = new double[count][];
        for (int i = 0; i < count; i++) {
            double z = RUN_REACH * (2.0 * i / (count - 1) - 1);
            points[i] = new double[] {prior.run * Math.exp(prior.logRun * z), -z * z / 2};
        }
        return points;
    }

    /** The variances that a prior of tau allows, sigma and rho being known. */
    static Variances[] allowed(VariancePrior prior, double lap, double correlation) {
        return Arrays.stream(runs(prior, RUN_POINTS))
                .map(run -> new Variances(lap, run[0], correlation))
                .toArray(Variances[]::new);
    }

    /** The weight of each of them; their sum is 1. */
    static double[] weights(VariancePrior prior) {
        double[] weight = Arrays.stream(runs(prior, RUN_POINTS))
                .mapToDouble(run -> Math.exp(run[1]))
                .toArray();
        double sum = Arrays.stream(weight).sum();
        return Arrays.stream(weight).map(w -> w / sum).toArray();
    }

    /** Points from 0 to a limit, with the logarithms of their weights. */
    private static double[][] points(double limit, int count) {
        if (limit == 0) {
            return new double[][] {{0, 0}};
        }
        GaussIntegrator rule = new GaussIntegratorFactory().legendre(count, 0, limit);
        double[][] points = new double[count][];
        for (int i = 0; i < count; i++) {
            points[i] = new double[] {rule.getPoint(i), Math.log(rule.getWeight(i))};
        }
        return points;
    }

    /** The likeliest sigma at the middle of the priors, s: about which the others are laid. */
    private double lapDeviation(VariancePrior prior) {
        double correlation = Math.min(0.2, prior.mostCorrelation);
        Sums[] sums = sums(correlation);
        double start = Math.log(scatter());
        return Math.exp(new BrentOptimizer(1e-3, 1e-3)
                .optimize(
                        new MaxEval(200),
                        GoalType.MAXIMIZE,
                        new SearchInterval(start - 6, start + 1, start - 1),
                        new UnivariateObjectiveFunction(
                                log -> at(sums, new Variances(Math.exp(log), prior.run, correlation)).logLikelihood))
                .getPoint());
    }

    /** Standard deviation of all measurements, s. */
    private double scatter() {
        double sum = 0;
        double squares = 0;
        for (Group group : groups) {
            for (double y : group.y) {
                sum += y;
                squares += y * y;
            }
        }
        return Math.sqrt(Math.max(1e-12, squares / measurements - Math.pow(sum / measurements, 2)));
    }

    /**
     * The variances of greatest restricted likelihood (REML).
     *
     * @param correlated whether rho is sought too, or 0
     */
    Variances reml(boolean correlated) {
        double scale = scatter();
        MultivariateFunction likelihood =
                v -> at(new Variances(scale * Math.exp(v[0]), scale * v[1], correlated ? v[2] : 0)).logLikelihood;
        double[] start = correlated ? new double[] {-0.2, 0.4, 0.2} : new double[] {-0.2, 0.4};
        double[] low = correlated ? new double[] {-8, 0, 0} : new double[] {-8, 0};
        double[] high = correlated ? new double[] {1.5, 4, 0.95} : new double[] {1.5, 4};
        double[] best = new BOBYQAOptimizer(2 * start.length + 1, 0.1, 1e-7)
                .optimize(
                        new MaxEval(5000),
                        GoalType.MAXIMIZE,
                        new ObjectiveFunction(likelihood),
                        new InitialGuess(start),
                        new SimpleBounds(low, high))
                .getPoint();
        return new Variances(scale * Math.exp(best[0]), scale * best[1], correlated ? best[2] : 0);
    }

    /**
     * Degrees of freedom of a combination's variance at these variances, 2 V²/Var(V): F. E. Satterthwaite, <i>Biometrics
     * Bulletin</i> 2 (1946) 110, with the spread of sigma² and tau² from the curvature of the restricted likelihood, rho as it
     * stands. In balanced runs without drift they are the runs less 2.
     */
    double freedom(Variances variances, double... combination) {
        double[] at = {variances.lap * variances.lap, variances.run * variances.run};
        double[] step = {1e-3 * at[0], 1e-3 * (at[1] + at[0] / 10)};
        Fit here = moved(variances, at);
        double variance = here.variance(combination);
        double[] slope = new double[2];
        double[][] curvature = new double[2][2];
        for (int i = 0; i < 2; i++) {
            double[] one = at.clone();
            one[i] += step[i];
            slope[i] = (moved(variances, one).variance(combination) - variance) / step[i];
            for (int j = 0; j < 2; j++) {
                double[] other = at.clone();
                other[j] += step[j];
                double[] both = one.clone();
                both[j] += step[j];
                double change = moved(variances, both).logLikelihood
                        - moved(variances, one).logLikelihood
                        - moved(variances, other).logLikelihood
                        + here.logLikelihood;
                curvature[i][j] = -change / (step[i] * step[j]);
            }
        }
        double determinant = curvature[0][0] * curvature[1][1] - curvature[0][1] * curvature[1][0];
        double spread = (slope[0] * slope[0] * curvature[1][1]
                        - 2 * slope[0] * slope[1] * curvature[0][1]
                        + slope[1] * slope[1] * curvature[0][0])
                / determinant;
        return 2 * variance * variance / spread;
    }

    private Fit moved(Variances from, double... to) {
        return at(new Variances(Math.sqrt(to[0]), Math.sqrt(to[1]), from.correlation));
    }
}
