package dev.lapwright.fit;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * What residuals and sensitivities at the end of a fit tell of the parameters, once each lap's offset and stretch have
 * been taken out of the sensitivities (Frisch and Waugh 1933; Lovell 1963).
 *
 * <p>The covariance is a sandwich. Its bread is the sum of squared sensitivities times the mean slope of the robust
 * weights (Huber, Robust Statistics, 1981). Its filling is the {@linkplain LongRunCovariance long-run covariance} of
 * the scores, which are first summed over laps at each place (Driscoll and Kraay, 1998): laps share the model's errors
 * there, and are not independent witnesses of it. From five laps on, scores are also summed lap by lap (a sandwich
 * clustered by lap; Cameron and Miller, 2015), which sees what differs from lap to lap, and the wider of the two
 * counts.
 */
final class FitInformation {
    private static final int LEAST_CLUSTERS = 5;

    final RealMatrix information;
    final RealMatrix covariance;
    final double persistence;
    final double bandwidth;
    final double effectiveSamples;
    /** Standard errors by lap; null with fewer than five laps. */
    final double[] byLap;

    final int laps;

    private FitInformation(
            RealMatrix information,
            RealMatrix covariance,
            double persistence,
            double bandwidth,
            double effectiveSamples,
            double[] byLap,
            int laps) {
        this.information = information;
        this.covariance = covariance;
        this.persistence = persistence;
        this.bandwidth = bandwidth;
        this.effectiveSamples = effectiveSamples;
        this.byLap = byLap;
        this.laps = laps;
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
                for (int i = 0; i < p; i++) {
                    for (int j = 0; j < p; j++) {
                        sum.addToEntry(i, j, row[i] * row[j]);
                    }
                }
            }
        }
        return sum;
    }

    /** From sensitivities, residuals (m/s) and the scale of the robust weights (m/s). */
    static FitInformation of(double[][][] clean, double[][] residuals, boolean[][] in, double scale) {
        int p = clean[0][0].length;
        int count = residuals[0].length;
        double slope = 0;
        int n = 0;
        int places = 0;
        double[][] scores = new double[count][p];
        double[][] lapScores = new double[residuals.length][p];
        double[] pooled = new double[count];
        double[] shares = new double[count];
        for (int c = 0; c < count; c++) {
            boolean any = false;
            for (int k = 0; k < residuals.length; k++) {
                if (in[k][c]) {
                    any = true;
                    n++;
                    slope += RobustWeights.bisquareSlope(residuals[k][c], scale);
                    double psi = residuals[k][c] * RobustWeights.bisquare(residuals[k][c], scale);
                    pooled[c] += psi;
                    shares[c]++;
                    for (int j = 0; j < p; j++) {
                        scores[c][j] += clean[k][c][j] * psi;
                        lapScores[k][j] += clean[k][c][j] * psi;
                    }
                }
            }
            places += any ? 1 : 0;
        }
        RealMatrix products = products(clean);
        RealMatrix bread = inverse(products.scalarMultiply(Math.max(0.05, slope / n)));
        LongRunCovariance filling = LongRunCovariance.of(scores);
        double persistence = persistence(pooled, shares);
        double held = Math.max(0, persistence);
        double effective = Math.max(1, places * (1 - held) / (1 + held));
        // Each lap's own offset and stretch use up residuals too; two of them, since places count once for all laps.
        double small = effective / Math.max(1, effective - p - 2);
        RealMatrix covariance = bread.multiply(filling.sum()).multiply(bread).scalarMultiply(small);
        return new FitInformation(
                inverse(covariance),
                covariance,
                persistence,
                filling.bandwidth(),
                effective,
                byLap(bread, lapScores),
                residuals.length);
    }

    private static double[] byLap(RealMatrix bread, double[][] lapScores) {
        int laps = lapScores.length;
        if (laps < LEAST_CLUSTERS) {
            return null;
        }
        int p = lapScores[0].length;
        double[] errors = new double[p];
        for (double[] score : lapScores) {
            double[] moved = bread.operate(score);
            for (int j = 0; j < p; j++) {
                errors[j] += moved[j] * moved[j];
            }
        }
        for (int j = 0; j < p; j++) {
            errors[j] = Math.sqrt(errors[j] * laps / (laps - 1));
        }
        return errors;
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
        // A breath of ridge keeps an exact tie finite: it is then found by its size.
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

    /** Correlation of neighbours, of cells in which any lap counts. */
    private static double persistence(double[] pooled, double[] shares) {
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
}
