package dev.lapwright.fit;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/**
 * Covariance of a sum of scores that hang together along the lap: Newey and West's (1987) Bartlett-weighted sum of
 * autocovariances, with the bandwidth by Andrews' (1991) rule for first-order autoregression, after the scores were
 * prewhitened by a first-order vector autoregression (Andrews and Monahan, 1992), without which it falls short where
 * they hang together long. From memory of the papers.
 */
final class LongRunCovariance {
    /** Andrews and Monahan hold the autoregression's singular values below this. */
    private static final double MOST_PERSISTENCE = 0.97;

    private final RealMatrix sum;
    private final double bandwidth;

    private LongRunCovariance(RealMatrix sum, double bandwidth) {
        this.sum = sum;
        this.bandwidth = bandwidth;
    }

    /** From scores in order along the lap, one row a cell. */
    static LongRunCovariance of(double[][] scores) {
        int n = scores.length;
        int p = scores[0].length;
        RealMatrix filter = autoregression(scores);
        double[][] e = new double[n - 1][p];
        for (int t = 1; t < n; t++) {
            double[] expected = filter.operate(scores[t - 1]);
            for (int j = 0; j < p; j++) {
                e[t - 1][j] = scores[t][j] - expected[j];
            }
        }
        double m = bandwidth(e);
        RealMatrix whitened = bartlett(e, m);
        RealMatrix recolour = new LUDecomposition(
                        MatrixUtils.createRealIdentityMatrix(p).subtract(filter))
                .getSolver()
                .getInverse();
        RealMatrix sum = recolour.multiply(whitened).multiply(recolour.transpose());
        return new LongRunCovariance(sum.scalarMultiply((double) n / (n - 1)), m);
    }

    /** Covariance of the sum of all scores. */
    RealMatrix sum() {
        return sum;
    }

    /** Cells over which Bartlett's weights reach, after prewhitening. */
    double bandwidth() {
        return bandwidth;
    }

    /** A of z(t) = A z(t−1) + e by least squares, its singular values held in. */
    private static RealMatrix autoregression(double[][] z) {
        int p = z[0].length;
        RealMatrix now = new Array2DRowRealMatrix(p, p);
        RealMatrix before = new Array2DRowRealMatrix(p, p);
        for (int t = 1; t < z.length; t++) {
            for (int i = 0; i < p; i++) {
                for (int j = 0; j < p; j++) {
                    now.addToEntry(i, j, z[t][i] * z[t - 1][j]);
                    before.addToEntry(i, j, z[t - 1][i] * z[t - 1][j]);
                }
            }
        }
        RealMatrix a =
                now.multiply(new SingularValueDecomposition(before).getSolver().getInverse());
        SingularValueDecomposition parts = new SingularValueDecomposition(a);
        RealMatrix s = parts.getS();
        for (int j = 0; j < p; j++) {
            s.setEntry(j, j, Math.min(MOST_PERSISTENCE, s.getEntry(j, j)));
        }
        return parts.getU().multiply(s).multiply(parts.getVT());
    }

    /**
     * Andrews' automatic bandwidth for the Bartlett kernel, each component weighted by the inverse square of its
     * variance.
     */
    private static double bandwidth(double[][] e) {
        int n = e.length;
        double top = 0;
        double bottom = 0;
        for (int j = 0; j < e[0].length; j++) {
            double cross = 0;
            double square = 0;
            for (int t = 1; t < n; t++) {
                cross += e[t][j] * e[t - 1][j];
                square += e[t - 1][j] * e[t - 1][j];
            }
            if (square > 0) {
                double r = Math.max(-MOST_PERSISTENCE, Math.min(MOST_PERSISTENCE, cross / square));
                top += 4 * r * r / (Math.pow(1 - r, 6) * Math.pow(1 + r, 2));
                bottom += 1 / Math.pow(1 - r, 4);
            }
        }
        double alpha = bottom > 0 ? top / bottom : 0;
        return Math.min(n / 4.0, 1.1447 * Math.cbrt(alpha * n));
    }

    private static RealMatrix bartlett(double[][] e, double bandwidth) {
        int p = e[0].length;
        RealMatrix sum = new Array2DRowRealMatrix(p, p);
        int reach = (int) Math.floor(bandwidth);
        for (int lag = 0; lag <= reach; lag++) {
            double weight = 1 - lag / (bandwidth + 1);
            for (int t = lag; t < e.length; t++) {
                for (int i = 0; i < p; i++) {
                    for (int j = 0; j < p; j++) {
                        double product = e[t][i] * e[t - lag][j];
                        if (lag == 0) {
                            sum.addToEntry(i, j, product);
                        } else {
                            sum.addToEntry(i, j, weight * product);
                            sum.addToEntry(j, i, weight * product);
                        }
                    }
                }
            }
        }
        return sum;
    }
}
