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
 * summed over laps at each place: laps share the model's errors there, and are not independent of each other (Driscoll and
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

    /** Inverse of the covariance. */
    final RealMatrix information;

    final RealMatrix covariance;
    /** Correlation of the residuals of neighbouring cells. */
    final double autocorrelation;
    /** Cells over which residuals are correlated. */
    final double correlationCells;

    /** Number of independent residuals that tell as much as these. */
    final double effectiveSamples;
    /** Standard errors by corner and by lap, as far as there are enough of them. */
    final List<ClusteredErrors> clustered;

    private SandwichCovariance(
            RealMatrix information,
            RealMatrix covariance,
            double autocorrelation,
            double correlationCells,
            double effectiveSamples,
            List<ClusteredErrors> clustered) {
        this.information = information;
        this.covariance = covariance;
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

    /** From sensitivities, residuals (m/s), the scale of the robust weights (m/s) and the corner each cell belongs to. */
    static SandwichCovariance of(
            double[][][] clean, double[][] residuals, boolean[][] in, double scale, int[] corners) {
        int p = clean[0][0].length;
        int count = residuals[0].length;
        RealMatrix hessian = new Array2DRowRealMatrix(p, p);
        int places = 0;
        double[][] together = new double[count][p];
        boolean[] counts = new boolean[count];
        double[][] lapScores = new double[residuals.length][p];
        double[] pooled = new double[count];
        double[] shares = new double[count];
        for (int c = 0; c < count; c++) {
            boolean any = false;
            for (int k = 0; k < residuals.length; k++) {
                if (in[k][c]) {
                    any = true;
                    double slope = Math.max(LEAST_SLOPE, RobustWeights.bisquareSlope(residuals[k][c], scale));
                    addProducts(hessian, clean[k][c], slope);
                    double psi = residuals[k][c] * RobustWeights.bisquare(residuals[k][c], scale);
                    pooled[c] += psi;
                    shares[c]++;
                    for (int j = 0; j < p; j++) {
                        together[c][j] += clean[k][c][j];
                        lapScores[k][j] += clean[k][c][j] * psi;
                    }
                }
            }
            places += any ? 1 : 0;
            counts[c] = any;
            for (int j = 0; j < p && any; j++) {
                together[c][j] /= shares[c];
            }
        }
        RealMatrix inverseHessian = inverse(hessian);
        double[] errors = new double[count];
        for (int c = 0; c < count; c++) {
            double leverage = shares[c]
                    * new ArrayRealVector(together[c])
                            .dotProduct(inverseHessian.operate(new ArrayRealVector(together[c])));
            errors[c] = pooled[c] / (1 - Math.min(MOST_LEVERAGE, leverage));
        }
        List<ClusteredErrors> clustered = new ArrayList<>();
        double[][] cornerScores = new double[Arrays.stream(corners).max().orElse(0) + 1][p];
        for (int c = 0; c < count; c++) {
            for (int j = 0; j < p; j++) {
                cornerScores[corners[c]][j] += together[c][j] * errors[c];
            }
        }
        if (cornerScores.length >= LEAST_CLUSTERS) {
            clustered.add(ClusteredErrors.of(inverseHessian, cornerScores));
        }
        if (lapScores.length >= LEAST_CLUSTERS) {
            clustered.add(ClusteredErrors.of(inverseHessian, lapScores));
        }
        ErrorAutocorrelation correlation = ErrorAutocorrelation.of(errors, counts);
        RealMatrix scores = ScoreCovariance.of(together, errors, counts, correlation);
        double autocorrelation = autocorrelation(pooled, shares);
        double held = Math.max(0, autocorrelation);
        double effective = Math.max(1, places * (1 - held) / (1 + held));
        // Each lap's own offset and stretch use up residuals too; two of them, since places count once for all laps.
        double small = effective / Math.max(1, effective - p - 2);
        RealMatrix covariance =
                inverseHessian.multiply(scores).multiply(inverseHessian).scalarMultiply(small);
        return new SandwichCovariance(
                inverse(covariance), covariance, autocorrelation, correlation.reach(), effective, clustered);
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

    /** Correlation of neighbouring cells, of those in which any lap counts. */
    private static double autocorrelation(double[] pooled, double[] shares) {
        double cross = 0;
        double square = 0;
        double mean =
                Arrays.stream(pooled).sum() / Math.max(1, Arrays.stream(shares).sum());
        for (int c = 1; c < pooled.length; c++) {
            if (shares[c] > 0 && shares[c - 1] > 0) {
                double a = pooled[c - 1] / shares[c - 1] - mean;
                double b = pooled[c] / shares[c] - mean;
                cross += a * b;
                square += 0.5 * (a * a + b * b);
            }
        }
        return square > 0 ? cross / square : 0;
    }

    /**
     * Cluster-robust standard errors: from scores summed over clusters that are independent of each other, whatever goes on
     * within them (Liang and Zeger, 1986; Cameron and Miller, 2015).
     *
     * @param errors standard error of each parameter; not copied
     * @param freedom degrees of freedom of their t: one less than the clusters
     */
    record ClusteredErrors(double[] errors, double freedom) {
        /** From the inverse Hessian and the sum of scores of each cluster. */
        static ClusteredErrors of(RealMatrix inverseHessian, double[][] scores) {
            double[] squares = new double[inverseHessian.getRowDimension()];
            for (double[] score : scores) {
                double[] moved = inverseHessian.operate(score);
                for (int j = 0; j < squares.length; j++) {
                    squares[j] += moved[j] * moved[j];
                }
            }
            double clusters = scores.length;
            for (int j = 0; j < squares.length; j++) {
                squares[j] = Math.sqrt(squares[j] * clusters / (clusters - 1));
            }
            return new ClusteredErrors(squares, clusters - 1);
        }
    }
}
