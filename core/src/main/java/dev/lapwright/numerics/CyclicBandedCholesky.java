package dev.lapwright.numerics;

import java.util.Arrays;

/**
 * Cholesky factorisation of a symmetric positive definite banded matrix, cyclic or not, in O(order · bands²). Indices wrap
 * round modulo the order; the last rows, as many as there are bands on one side, are kept as a dense border, so that nothing
 * fills in. Owns its workspace: not for sharing between threads.
 */
public final class CyclicBandedCholesky {
    private final int order;
    private final int bands;
    private final int body;
    private final int stride;
    /** Entry (j + d, j) of the body at j · stride + d. */
    private final double[] band;
    /** Entry (body + k, j) at j · bands + k. */
    private final double[] border;

    private final double[] corner;

    /**
     * @param order rows, at least three times the bands
     * @param bands on either side of the diagonal
     */
    public CyclicBandedCholesky(int order, int bands) {
        if (order < 3 * bands) {
            throw new IllegalArgumentException("order " + order + " is too small for " + bands + " bands");
        }
        this.order = order;
        this.bands = bands;
        body = order - bands;
        stride = bands + 1;
        band = new double[body * stride];
        border = new double[body * bands];
        corner = new double[bands * bands];
    }

    /** Takes the matrix whose entry ((j + d) mod order, j) stands at j · (bands + 1) + d, and factors it. */
    public void factor(double[] entries) {
        Arrays.fill(border, 0);
        Arrays.fill(corner, 0);
        for (int j = 0; j < order; j++) {
            for (int d = 0; d < stride; d++) {
                double value = entries[j * stride + d];
                int i = j + d;
                if (i < body) {
                    band[j * stride + d] = value;
                } else if (j < body) {
                    band[j * stride + d] = 0;
                    border[j * bands + i - body] = value;
                } else if (i < order) {
                    corner[(i - body) * bands + j - body] = value;
                } else {
                    border[(i - order) * bands + j - body] = value;
                }
            }
        }
        for (int j = 0; j < body; j++) {
            eliminate(j);
        }
        factorCorner();
    }

    private void eliminate(int j) {
        int at = j * stride;
        double inverse = 1 / Math.sqrt(band[at]);
        band[at] = inverse;
        int reach = Math.min(bands, body - 1 - j);
        for (int d = 1; d <= reach; d++) {
            band[at + d] *= inverse;
        }
        int side = j * bands;
        for (int k = 0; k < bands; k++) {
            border[side + k] *= inverse;
        }
        for (int d = 1; d <= reach; d++) {
            double l = band[at + d];
            if (l == 0) {
                continue;
            }
            int to = (j + d) * stride - d;
            for (int e = d; e <= reach; e++) {
                band[to + e] -= l * band[at + e];
            }
            int toSide = (j + d) * bands;
            for (int k = 0; k < bands; k++) {
                border[toSide + k] -= l * border[side + k];
            }
        }
        for (int k = 0; k < bands; k++) {
            double l = border[side + k];
            for (int i = k; i < bands; i++) {
                corner[i * bands + k] -= l * border[side + i];
            }
        }
    }

    private void factorCorner() {
        for (int j = 0; j < bands; j++) {
            double inverse = 1 / Math.sqrt(corner[j * bands + j]);
            corner[j * bands + j] = inverse;
            for (int i = j + 1; i < bands; i++) {
                corner[i * bands + j] *= inverse;
            }
            for (int k = j + 1; k < bands; k++) {
                for (int i = k; i < bands; i++) {
                    corner[i * bands + k] -= corner[i * bands + j] * corner[k * bands + j];
                }
            }
        }
    }

    /** Replaces a right-hand side by the solution. */
    public void solve(double[] x) {
        for (int j = 0; j < body; j++) {
            int at = j * stride;
            double value = x[j] * band[at];
            x[j] = value;
            int reach = Math.min(bands, body - 1 - j);
            for (int d = 1; d <= reach; d++) {
                x[j + d] -= band[at + d] * value;
            }
            int side = j * bands;
            for (int k = 0; k < bands; k++) {
                x[body + k] -= border[side + k] * value;
            }
        }
        for (int j = 0; j < bands; j++) {
            x[body + j] *= corner[j * bands + j];
            for (int i = j + 1; i < bands; i++) {
                x[body + i] -= corner[i * bands + j] * x[body + j];
            }
        }
        solveTransposed(x);
    }

    /** Replaces a right-hand side b by the solution of Lᵀx = b: independent normal b give x the covariance of the inverse. */
    public void solveTransposed(double[] x) {
        for (int j = bands - 1; j >= 0; j--) {
            double value = x[body + j];
            for (int i = j + 1; i < bands; i++) {
                value -= corner[i * bands + j] * x[body + i];
            }
            x[body + j] = value * corner[j * bands + j];
        }
        for (int j = body - 1; j >= 0; j--) {
            int at = j * stride;
            double value = x[j];
            int reach = Math.min(bands, body - 1 - j);
            for (int d = 1; d <= reach; d++) {
                value -= band[at + d] * x[j + d];
            }
            int side = j * bands;
            for (int k = 0; k < bands; k++) {
                value -= border[side + k] * x[body + k];
            }
            x[j] = value * band[at];
        }
    }

    /** Natural logarithm of the determinant. */
    public double logDeterminant() {
        double sum = 0;
        for (int j = 0; j < body; j++) {
            sum -= 2 * Math.log(band[j * stride]);
        }
        for (int j = 0; j < bands; j++) {
            sum -= 2 * Math.log(corner[j * bands + j]);
        }
        return sum;
    }

    /**
     * The entries of the inverse within the bands, in the form that {@link #factor} takes. K. Takahashi, J. Fagan and M.-S.
     * Chin, "Formation of a sparse bus impedance matrix", 1973 (cited from memory).
     */
    public double[] inverseBands() {
        double[] z = new double[body * stride];
        double[] side = new double[body * bands];
        double[] end = cornerInverse();
        for (int j = body - 1; j >= 0; j--) {
            int reach = Math.min(bands, body - 1 - j);
            double inverse = band[j * stride];
            for (int k = 0; k < bands; k++) {
                double sum = 0;
                for (int d = 1; d <= reach; d++) {
                    sum += band[j * stride + d] * side[(j + d) * bands + k];
                }
                for (int m = 0; m < bands; m++) {
                    sum += border[j * bands + m] * end[m * bands + k];
                }
                side[j * bands + k] = -inverse * sum;
            }
            for (int i = reach; i >= 0; i--) {
                double sum = 0;
                for (int d = 1; d <= reach; d++) {
                    int low = j + Math.min(i, d);
                    sum += band[j * stride + d] * z[low * stride + Math.abs(i - d)];
                }
                int row = (j + i) * bands;
                for (int m = 0; m < bands; m++) {
                    sum += border[j * bands + m] * side[row + m];
                }
                z[j * stride + i] = (i == 0 ? inverse * inverse : 0) - inverse * sum;
            }
        }
        return wrapped(z, side, end);
    }

    private double[] cornerInverse() {
        double[] end = new double[bands * bands];
        double[] column = new double[bands];
        for (int c = 0; c < bands; c++) {
            Arrays.fill(column, 0);
            column[c] = 1;
            for (int i = 0; i < bands; i++) {
                for (int k = 0; k < i; k++) {
                    column[i] -= corner[i * bands + k] * column[k];
                }
                column[i] *= corner[i * bands + i];
            }
            for (int i = bands - 1; i >= 0; i--) {
                for (int k = i + 1; k < bands; k++) {
                    column[i] -= corner[k * bands + i] * column[k];
                }
                column[i] *= corner[i * bands + i];
            }
            for (int i = 0; i < bands; i++) {
                end[i * bands + c] = column[i];
            }
        }
        return end;
    }

    private double[] wrapped(double[] z, double[] side, double[] end) {
        double[] entries = new double[order * stride];
        for (int j = 0; j < order; j++) {
            for (int d = 0; d < stride; d++) {
                int i = j + d;
                double value;
                if (i < body) {
                    value = z[j * stride + d];
                } else if (j < body) {
                    value = side[j * bands + i - body];
                } else if (i < order) {
                    value = end[(i - body) * bands + j - body];
                } else {
                    value = side[(i - order) * bands + j - body];
                }
                entries[j * stride + d] = value;
            }
        }
        return entries;
    }
}
