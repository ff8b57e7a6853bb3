package dev.lapwright.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Sandwich covariance of the fitted parameters, A⁻¹ B A⁻¹, from the residuals and the sensitivities at the end of a fit, once
 * each lap's offset and stretch have been projected out of the sensitivities (Frisch and Waugh 1933; Lovell 1963).
 *
 * <p>A, the Hessian, is the sum of squared sensitivities, each times the slope of its robust weight (Huber, Robust
 * Statistics, 1981). B is the {@linkplain ScoreCovariance covariance of the scores}, sensitivity times error, the errors first
 * summed over the laps of a run at each place: laps share the model's errors there, and are not independent of each other (Driscoll and
 * Kraay, 1998). Errors are divided by one less their leverage, since a fit bends towards what it is fitted to (MacKinnon and
 * White, 1985). Scores are also summed corner by corner, from five corners on, and lap by lap, from five laps on ({@link
 * ClusteredErrors}): the first covers what a driver does differently in each corner, the second what differs from lap to lap.
 * The widest interval counts.
 */
final class SandwichCovariance {
    private static final int LEAST_CLUSTERS = 5;
    /** Leverage is held below, so that the error of a cell that alone tells a parameter stays finite. */
    private static final double MOST_LEVERAGE = 0.9;
    /** The slope of a weight is held above: an outlier's is negative, and would take away what others tell. */
    private static final double LEAST_SLOPE = 0.05;

    /** What the residuals bring in, over all shared unknowns. */
    final RealMatrix noise;
    /** What each unknown's prior brings in. */
    final RealMatrix[] doubts;
    /** Variance of the laps' scores over their squared sensitivities, (m/s)²: what a prior's weight is best made. */
    final double scoreRatio;
    /** Correlation of the residuals of neighbouring cells. */
    final double autocorrelation;
    /** Cells over which residuals are correlated. */
    final double correlationCells;

    /** Number of independent residuals that tell as much as these. */
    final double effectiveSamples;
    /** Standard errors by corner and by lap, as far as there are enough of them. */
    final List<ClusteredErrors> clustered;

    private SandwichCovariance(
            RealMatrix noise,
            RealMatrix[] doubts,
            double scoreRatio,
            double autocorrelation,
            double correlationCells,
            double effectiveSamples,
            List<ClusteredErrors> clustered) {
        this.noise = noise;
        this.doubts = doubts;
        this.scoreRatio = scoreRatio;
        this.autocorrelation = autocorrelation;
        this.correlationCells = correlationCells;
        this.effectiveSamples = effectiveSamples;
        this.clustered = clustered;
    }

    /**
     * Sensitivities of the parameters less what offset and stretch explain: by lap, cell, parameter; 0 in cells left
     * out.
     */
    static double[][][] cleaned(double[][] jacobian, boolean[][] in, int parameters) {
        int count = in[0].length;
        double[][][] clean = new double[in.length][count][parameters];
        for (int k = 0; k < in.length; k++) {
            int at = parameters + 2 * k;
            double aa = 0;
            double ab = 0;
            double bb = 0;
            double[] ya = new double[parameters];
            double[] yb = new double[parameters];
            for (int c = 0; c < count; c++) {
                if (in[k][c]) {
                    double[] row = jacobian[k * count + c];
                    aa += row[at] * row[at];
                    ab += row[at] * row[at + 1];
                    bb += row[at + 1] * row[at + 1];
                    for (int j = 0; j < parameters; j++) {
                        ya[j] += row[j] * row[at];
                        yb[j] += row[j] * row[at + 1];
                    }
                }
            }
            double determinant = aa * bb - ab * ab;
            boolean moves = determinant > 1e-9 * aa * bb;
            for (int c = 0; c < count; c++) {
                if (in[k][c]) {
                    double[] row = jacobian[k * count + c];
                    for (int j = 0; j < parameters; j++) {
                        double onOffset = moves ? (ya[j] * bb - yb[j] * ab) / determinant : 0;
                        double onStretch = moves ? (yb[j] * aa - ya[j] * ab) / determinant : 0;
                        clean[k][c][j] = row[j] - onOffset * row[at] - onStretch * row[at + 1];
                    }
                }
            }
        }
        return clean;
    }

    /** Sum of products of sensitivities. */
    static RealMatrix products(double[][][] clean) {
        int p = clean[0][0].length;
        RealMatrix sum = new Array2DRowRealMatrix(p, p);
        for (double[][] lap : clean) {
            for (double[] row : lap) {
                addProducts(sum, row, 1);
            }
        }
        return sum;
    }

    private static void addProducts(RealMatrix sum, double[] row, double factor) {
        for (int i = 0; i < row.length; i++) {
            for (int j = 0; j < row.length; j++) {
                sum.addToEntry(i, j, factor * row[i] * row[j]);
            }
        }
    }

    /**
     * From sensitivities to all shared unknowns, residuals (m/s), the run of each lap, the scale of the robust weights (m/s), the corner
     * each cell belongs to and what was known before.
     */
    static SandwichCovariance of(
            double[][][] clean,
            double[][] residuals,
            boolean[][] in,
            int[] runs,
            double scale,
            int[] corners,
            Priors priors) {
        int p = priors.shared;
        int count = residuals[0].length;
        RealMatrix[] cornerHessians = nought(Arrays.stream(corners).max().orElse(0) + 1, p);
        RealMatrix[] lapHessians = nought(residuals.length, p);
        double[][] cornerScores = new double[cornerHessians.length][p];
        double[][] lapScores = new double[residuals.length][p];
        Pooled pooled = new Pooled(Arrays.stream(runs).max().orElse(0) + 1, count, p);
        for (int c = 0; c < count; c++) {
            for (int k = 0; k < residuals.length; k++) {
                if (in[k][c]) {
                    double slope = Math.max(LEAST_SLOPE, RobustWeights.bisquareSlope(residuals[k][c], scale));
                    addProducts(cornerHessians[corners[c]], clean[k][c], slope);
                    addProducts(lapHessians[k], clean[k][c], slope);
                    double psi = residuals[k][c] * RobustWeights.bisquare(residuals[k][c], scale);
                    pooled.add(runs[k], c, psi, clean[k][c]);
                    for (int j = 0; j < p; j++) {
                        cornerScores[corners[c]][j] += clean[k][c][j] * psi;
                        lapScores[k][j] += clean[k][c][j] * psi;
                    }
                }
            }
        }
        RealMatrix hessian = new Array2DRowRealMatrix(p, p);
        for (RealMatrix corner : cornerHessians) {
            hessian = hessian.add(corner);
        }
        RealMatrix whole = hessian.copy();
        for (int j = 0; j < p; j++) {
            whole.addToEntry(j, j, priors.weight * priors.precision[j]);
        }
        RealMatrix inverseHessian = inverse(whole);
        List<ClusteredErrors> clustered = new ArrayList<>();
        if (cornerScores.length >= LEAST_CLUSTERS) {
            clustered.add(ClusteredErrors.of(whole, cornerHessians, cornerScores));
        }
        if (cornerScores.length >= LEAST_CLUSTERS && priors.lineAt >= 0) {
            clustered.add(ClusteredErrors.ofLines(inverseHessian, cornerHessians, cornerScores, priors.lineAt));
        }
        if (lapScores.length >= LEAST_CLUSTERS) {
            clustered.add(ClusteredErrors.of(whole, lapHessians, lapScores));
        }
        double[][] errors = pooled.errors(inverseHessian);
        boolean[][] counts = pooled.counts();
        ErrorAutocorrelation correlation = ErrorAutocorrelation.of(errors, counts);
        RealMatrix scores = ScoreCovariance.of(pooled.means(), errors, counts, correlation);
        double autocorrelation = pooled.autocorrelation();
        double held = Math.max(0, autocorrelation);
        double effective = Math.max(1, pooled.places() * (1 - held) / (1 + held));
        // Each lap's own offset and stretch use up residuals too; two of them, since places count once for all laps.
        double small = effective / Math.max(1, effective - priors.parameters - 2);
        RealMatrix noise =
                inverseHessian.multiply(scores).multiply(inverseHessian).scalarMultiply(small);
        return new SandwichCovariance(
                noise,
                doubts(inverseHessian, priors),
                ratio(scores, hessian),
                autocorrelation,
                correlation.reach(),
                effective,
                clustered);
    }

    private static RealMatrix[] nought(int many, int p) {
        RealMatrix[] matrices = new RealMatrix[many];
        for (int i = 0; i < many; i++) {
            matrices[i] = new Array2DRowRealMatrix(p, p);
        }
        return matrices;
    }

    /** Scores of the laps summed by run and cell. */
    private static final class Pooled {
        private final double[][] sums;
        private final double[][] laps;
        private final double[][][] sensitivities;

        Pooled(int runs, int count, int p) {
            sums = new double[runs][count];
            laps = new double[runs][count];
            sensitivities = new double[runs][count][p];
        }

        void add(int run, int c, double psi, double[] sensitivity) {
            sums[run][c] += psi;
            laps[run][c]++;
            for (int j = 0; j < sensitivity.length; j++) {
                sensitivities[run][c][j] += sensitivity[j];
            }
        }

        /** Mean sensitivities of the laps of each run, by cell. */
        double[][][] means() {
            double[][][] means = new double[sums.length][][];
            for (int a = 0; a < sums.length; a++) {
                means[a] = new double[sums[a].length][];
                for (int c = 0; c < sums[a].length; c++) {
                    double[] mean = sensitivities[a][c].clone();
                    for (int j = 0; j < mean.length && laps[a][c] > 0; j++) {
                        mean[j] /= laps[a][c];
                    }
                    means[a][c] = mean;
                }
            }
            return means;
        }

        /** Summed errors of each run, by cell, over one less their leverage. */
        double[][] errors(RealMatrix inverseHessian) {
            double[][][] means = means();
            double[][] errors = new double[sums.length][sums[0].length];
            for (int a = 0; a < errors.length; a++) {
                for (int c = 0; c < errors[a].length; c++) {
                    ArrayRealVector mean = new ArrayRealVector(means[a][c], false);
                    double leverage = laps[a][c] * mean.dotProduct(inverseHessian.operate(mean));
                    errors[a][c] = sums[a][c] / (1 - Math.min(MOST_LEVERAGE, leverage));
                }
            }
            return errors;
        }

        boolean[][] counts() {
            boolean[][] counts = new boolean[sums.length][sums[0].length];
            for (int a = 0; a < counts.length; a++) {
                for (int c = 0; c < counts[a].length; c++) {
                    counts[a][c] = laps[a][c] > 0;
                }
            }
            return counts;
        }

        /** Cells in which any lap counts. */
        int places() {
            int places = 0;
            for (int c = 0; c < sums[0].length; c++) {
                places += lapsAt(c) > 0 ? 1 : 0;
            }
            return places;
        }

        private double lapsAt(int c) {
            double all = 0;
            for (double[] run : laps) {
                all += run[c];
            }
            return all;
        }

        private double meanAt(int c) {
            double sum = 0;
            for (double[] run : sums) {
                sum += run[c];
            }
            return sum / lapsAt(c);
        }

        /** Correlation of neighbouring cells, of those in which any lap counts. */
        double autocorrelation() {
            double sum = 0;
            double all = 0;
            for (int c = 0; c < sums[0].length; c++) {
                if (lapsAt(c) > 0) {
                    sum += meanAt(c) * lapsAt(c);
                    all += lapsAt(c);
                }
            }
            double mean = sum / Math.max(1, all);
            double cross = 0;
            double square = 0;
            for (int c = 1; c < sums[0].length; c++) {
                if (lapsAt(c) > 0 && lapsAt(c - 1) > 0) {
                    double a = meanAt(c - 1) - mean;
                    double b = meanAt(c) - mean;
                    cross += a * b;
                    square += 0.5 * (a * a + b * b);
                }
            }
            return square > 0 ? cross / square : 0;
        }
    }

    /** Covariance that each prior brings in: its error times its weight moves the estimates. */
    private static RealMatrix[] doubts(RealMatrix inverseHessian, Priors priors) {
        int p = priors.shared;
        RealMatrix[] doubts = new RealMatrix[p];
        for (int j = 0; j < p; j++) {
            double[] column = inverseHessian.getColumn(j);
            double weight = priors.weight * Math.sqrt(priors.precision[j]);
            doubts[j] = new Array2DRowRealMatrix(p, p);
            for (int i = 0; i < p; i++) {
                column[i] *= weight;
            }
            addProducts(doubts[j], column, 1);
        }
        return doubts;
    }

    /** Median over the unknowns of score variance over squared sensitivities, (m/s)². */
    private static double ratio(RealMatrix scores, RealMatrix hessian) {
        double[] ratios = new double[hessian.getRowDimension()];
        int n = 0;
        for (int j = 0; j < ratios.length; j++) {
            if (hessian.getEntry(j, j) > 0) {
                ratios[n++] = scores.getEntry(j, j) / hessian.getEntry(j, j);
            }
        }
        Arrays.sort(ratios, 0, n);
        return n == 0 ? 0 : ratios[n / 2];
    }

    /** What the laps and the doubts leave of the first so many unknowns. */
    RealMatrix covariance(int parameters) {
        RealMatrix sum = noise;
        for (RealMatrix doubt : doubts) {
            sum = sum.add(doubt);
        }
        return sum.getSubMatrix(0, parameters - 1, 0, parameters - 1);
    }

    /** Inverse of that covariance. */
    RealMatrix information(int parameters) {
        return inverse(covariance(parameters));
    }

    private static RealMatrix inverse(RealMatrix matrix) {
        int p = matrix.getRowDimension();
        double[] root = new double[p];
        RealMatrix scaled = matrix.copy();
        for (int j = 0; j < p; j++) {
            root[j] = Math.sqrt(Math.max(matrix.getEntry(j, j), Double.MIN_NORMAL));
        }
        for (int i = 0; i < p; i++) {
            for (int j = 0; j < p; j++) {
                scaled.multiplyEntry(i, j, 1 / (root[i] * root[j]));
            }
        }
        // A slight ridge keeps an exact collinearity finite: it is then found by its size.
        RealMatrix inverse = new LUDecomposition(
                        scaled.add(MatrixUtils.createRealIdentityMatrix(p).scalarMultiply(1e-12)), 0)
                .getSolver()
                .getInverse();
        for (int i = 0; i < p; i++) {
            for (int j = 0; j < p; j++) {
                inverse.multiplyEntry(i, j, 1 / (root[i] * root[j]));
            }
        }
        return inverse;
    }

    /**
     * Cluster-robust standard errors by the jackknife: from scores summed over clusters that are independent of each other,
     * whatever goes on within them (Liang and Zeger, 1986). Each cluster is left out in turn, and its score moves the
     * estimates by (A − A_i)⁻¹ s_i: a corner that alone tells a parameter says how little that is (Bell and McCaffrey, 2002;
     * Cameron and Miller, 2015).
     *
     * <p>Clusters that tell an unknown unequally are worth fewer: the degrees of freedom are Satterthwaite's, one less than
     * (Σ w)²/Σ w² with w each cluster's part in the variance were all residuals alike (Bell and McCaffrey, 2002).
     *
     * @param errors standard error of each unknown, doubts apart; not copied
     * @param freedom degrees of freedom of its t; not copied
     */
    record ClusteredErrors(double[] errors, double[] freedom) {
        private static final double LEAST_FREEDOM = 2;
        private static final int FITTED_TO_RADII = 2;

        /** From the Hessian with its priors, and each cluster's share of it and sum of scores. */
        static ClusteredErrors of(RealMatrix whole, RealMatrix[] hessians, double[][] scores) {
            int p = whole.getRowDimension();
            RealMatrix inverse = inverse(whole);
            double[] errors = new double[p];
            double[] sum = new double[p];
            double[] squares = new double[p];
            for (int i = 0; i < scores.length; i++) {
                double[] moved = inverse(whole.subtract(hessians[i])).operate(scores[i]);
                RealMatrix part = inverse.multiply(hessians[i]).multiply(inverse);
                for (int j = 0; j < p; j++) {
                    errors[j] += moved[j] * moved[j];
                    double w = part.getEntry(j, j);
                    sum[j] += w;
                    squares[j] += w * w;
                }
            }
            double clusters = scores.length;
            double[] freedom = new double[p];
            for (int j = 0; j < p; j++) {
                errors[j] = Math.sqrt(errors[j] * (clusters - 1) / clusters);
                double equal = squares[j] > 0 ? sum[j] * sum[j] / squares[j] : clusters;
                freedom[j] = Math.max(LEAST_FREEDOM, equal - 1);
            }
            return new ClusteredErrors(errors, freedom);
        }

        /**
         * The same where each corner is driven on a radius of its own: one variance for all corners, from how far each
         * corner's own speeds ask for another radius, times what such a radius moves. Steadier than the jackknife where a
         * corner or two tell an unknown.
         */
        static ClusteredErrors ofLines(RealMatrix inverse, RealMatrix[] hessians, double[][] scores, int line) {
            int p = inverse.getRowDimension();
            double[] errors = new double[p];
            double variance = 0;
            int told = 0;
            for (int i = 0; i < scores.length; i++) {
                double own = hessians[i].getEntry(line, line);
                if (own > 0) {
                    double radius = scores[i][line] / own;
                    variance += radius * radius;
                    told++;
                    double[] moved = inverse.operate(hessians[i].getColumn(line));
                    for (int j = 0; j < p; j++) {
                        errors[j] += moved[j] * moved[j];
                    }
                }
            }
            // Grip and downforce bend towards the corners' radii: two of them are used up.
            double freedom = Math.max(LEAST_FREEDOM, told - FITTED_TO_RADII);
            double[] freedoms = new double[p];
            for (int j = 0; j < p; j++) {
                errors[j] = Math.sqrt(errors[j] * variance / freedom);
                freedoms[j] = freedom;
            }
            return new ClusteredErrors(errors, freedoms);
        }
    }
}
