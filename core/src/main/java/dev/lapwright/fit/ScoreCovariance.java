package dev.lapwright.fit;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Covariance of the summed scores, sensitivity g times error, with errors correlated along the lap: the double sum over all
 * pairs of cells c, d and of runs a, b of g<sub>a</sub>(c) g<sub>b</sub>(d)ᵀ times the covariance of their errors. That covariance is the
 * {@linkplain ErrorAutocorrelation autocorrelation} at the lag between them times the errors' local size at both, times the correlation of
 * the two runs' errors at one place: errors are larger in some places, such as where the car brakes, and runs share them in part.
 * Where the products of neighbours are larger than that (White, 1980, with two neighbours), they count.
 *
 * <p>What tells two setups apart is the difference of their runs, in which only shared errors cancel: the runs' mean says nothing of
 * the rest.
 *
 * <p>The usual long-run covariance of the products (Newey and West, 1987) assumes that the sensitivities change more slowly than
 * the errors. They do not: a corner is over before an error has decayed, and that estimate came to up to twice the scatter.
 */
final class ScoreCovariance {
    /** Cells to each side whose errors tell the local size. */
    private static final int NEAR = 4;
    /** As how many cells of the whole lap's size it begins: a few errors tell little. */
    private static final double BEFORE = 3;

    /** Cells apart up to which the products themselves are looked at. */
    private static final int SEEN = 2;

    private final double[][][] sensitivities;
    private final double[][] errors;
    private final boolean[][] counts;
    private final ErrorAutocorrelation correlation;
    private final double[][] size;
    private final double[][] shared;
    private final int runs;
    private final int n;
    private final int p;

    private ScoreCovariance(
            double[][][] sensitivities, double[][] errors, boolean[][] counts, ErrorAutocorrelation correlation) {
        this.sensitivities = sensitivities;
        this.errors = errors;
        this.counts = counts;
        this.correlation = correlation;
        runs = errors.length;
        n = errors[0].length;
        p = sensitivities[0][0].length;
        size = new double[runs][];
        for (int a = 0; a < runs; a++) {
            size[a] = localSize(errors[a], counts[a]);
        }
        shared = shared();
    }

    /**
     * The covariance.
     *
     * @param sensitivities by run, cell and parameter
     * @param errors by run and cell, in order
     * @param counts whether a cell counts, by run and cell
     */
    static RealMatrix of(
            double[][][] sensitivities, double[][] errors, boolean[][] counts, ErrorAutocorrelation correlation) {
        return new ScoreCovariance(sensitivities, errors, counts, correlation).sum();
    }

    /** Correlation of the errors of each two runs at one place. */
    private double[][] shared() {
        double[][] shared = new double[runs][runs];
        for (int a = 0; a < runs; a++) {
            for (int b = 0; b < runs; b++) {
                double cross = 0;
                double squareA = 0;
                double squareB = 0;
                for (int c = 0; c < n; c++) {
                    if (counts[a][c] && counts[b][c] && size[a][c] > 0 && size[b][c] > 0) {
                        double x = errors[a][c] / size[a][c];
                        double y = errors[b][c] / size[b][c];
                        cross += x * y;
                        squareA += x * x;
                        squareB += y * y;
                    }
                }
                shared[a][b] = a == b ? 1 : squareA * squareB > 0 ? cross / Math.sqrt(squareA * squareB) : 0;
            }
        }
        return shared;
    }

    private RealMatrix sum() {
        double[][][] sized = new double[runs][n][p];
        double[][][] mixed = new double[runs][n][p];
        for (int c = 0; c < n; c++) {
            for (int a = 0; a < runs; a++) {
                for (int j = 0; j < p && counts[a][c]; j++) {
                    sized[a][c][j] = size[a][c] * sensitivities[a][c][j];
                }
            }
            for (int a = 0; a < runs; a++) {
                for (int b = 0; b < runs; b++) {
                    for (int j = 0; j < p; j++) {
                        mixed[a][c][j] += shared[a][b] * sized[b][c][j];
                    }
                }
            }
        }
        RealMatrix sum = new Array2DRowRealMatrix(p, p);
        double[] ahead = new double[p];
        for (int a = 0; a < runs; a++) {
            for (int c = 0; c < n; c++) {
                if (!counts[a][c]) {
                    continue;
                }
                Arrays.fill(ahead, 0);
                for (int lag = 1; lag <= correlation.reach() && c + lag < n; lag++) {
                    double at = correlation.at(lag);
                    for (int i = 0; i < p; i++) {
                        ahead[i] += at * mixed[a][c + lag][i];
                    }
                }
                double[] g = sized[a][c];
                double[] here = mixed[a][c];
                for (int i = 0; i < p; i++) {
                    for (int j = 0; j < p; j++) {
                        double even = 0.5 * correlation.at(0) * (g[i] * here[j] + here[i] * g[j]);
                        sum.addToEntry(i, j, even + g[i] * ahead[j] + ahead[i] * g[j]);
                    }
                }
            }
        }
        double[] stretch = new double[p];
        for (int j = 0; j < p; j++) {
            stretch[j] = beyond(j, sized, mixed);
        }
        for (int i = 0; i < p; i++) {
            for (int j = 0; j < p; j++) {
                sum.multiplyEntry(i, j, stretch[i] * stretch[j]);
            }
        }
        return sum;
    }

    /** By how much the products of near errors exceed what their size and correlation say, at least 1; of a deviation. */
    private double beyond(int j, double[][][] sized, double[][][] mixed) {
        double told = 0;
        double seen = 0;
        for (int lag = 0; lag <= SEEN; lag++) {
            for (int c = 0; c + lag < n; c++) {
                double times = lag == 0 ? 1 : 2;
                for (int a = 0; a < runs; a++) {
                    told += times * sized[a][c][j] * mixed[a][c + lag][j] * correlation.at(lag);
                }
                seen += times * score(c, j) * score(c + lag, j);
            }
        }
        return told > 0 ? Math.sqrt(Math.max(1, seen / told)) : 1;
    }

    /** Score of a cell, all runs together. */
    private double score(int c, int j) {
        double score = 0;
        for (int a = 0; a < runs; a++) {
            score += counts[a][c] ? sensitivities[a][c][j] * errors[a][c] : 0;
        }
        return score;
    }

    /** Root mean square of the errors near each cell, a few of the whole lap's counted in. */
    private static double[] localSize(double[] errors, boolean[] counts) {
        int n = errors.length;
        double[] squares = new double[n + 1];
        int[] known = new int[n + 1];
        for (int c = 0; c < n; c++) {
            squares[c + 1] = squares[c] + (counts[c] ? errors[c] * errors[c] : 0);
            known[c + 1] = known[c] + (counts[c] ? 1 : 0);
        }
        double whole = known[n] > 0 ? squares[n] / known[n] : 0;
        double[] size = new double[n];
        for (int c = 0; c < n; c++) {
            int from = Math.max(0, c - NEAR);
            int to = Math.min(n, c + NEAR + 1);
            double near = squares[to] - squares[from];
            int of = known[to] - known[from];
            size[c] = Math.sqrt((near + BEFORE * whole) / (of + BEFORE));
        }
        return size;
    }
}
