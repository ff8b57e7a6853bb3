package dev.lapwright.fit;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Covariance of the summed scores, sensitivity g times error, with errors correlated along the lap: the double sum over all
 * pairs of cells c, d of g(c) g(d)ᵀ times the covariance of their errors. That covariance is the {@linkplain ErrorAutocorrelation
 * autocorrelation} at the lag between them times the errors' local size at both: errors are larger in some places, such as
 * where the car brakes. Where the products of neighbours are larger than that (White, 1980, with two neighbours), they count.
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

    private ScoreCovariance() {}

    /**
     * The covariance.
     *
     * @param sensitivities by cell and parameter
     * @param errors by cell, in order
     * @param counts whether a cell counts
     */
    static RealMatrix of(
            double[][] sensitivities, double[] errors, boolean[] counts, ErrorAutocorrelation correlation) {
        int n = errors.length;
        int p = sensitivities[0].length;
        double[] size = localSize(errors, counts);
        RealMatrix sum = new Array2DRowRealMatrix(p, p);
        double[] ahead = new double[p];
        for (int c = 0; c < n; c++) {
            if (!counts[c]) {
                continue;
            }
            Arrays.fill(ahead, 0);
            for (int lag = 1; lag <= correlation.reach() && c + lag < n; lag++) {
                int d = c + lag;
                double covariance = counts[d] ? size[c] * size[d] * correlation.at(lag) : 0;
                for (int i = 0; i < p && covariance != 0; i++) {
                    ahead[i] += covariance * sensitivities[d][i];
                }
            }
            double here = size[c] * size[c] * correlation.at(0);
            double[] g = sensitivities[c];
            for (int i = 0; i < p; i++) {
                for (int j = 0; j < p; j++) {
                    sum.addToEntry(i, j, here * g[i] * g[j] + g[i] * ahead[j] + ahead[i] * g[j]);
                }
            }
        }
        double[] stretch = new double[p];
        for (int j = 0; j < p; j++) {
            stretch[j] = beyond(j, sensitivities, errors, size, counts, correlation);
        }
        for (int i = 0; i < p; i++) {
            for (int j = 0; j < p; j++) {
                sum.multiplyEntry(i, j, stretch[i] * stretch[j]);
            }
        }
        return sum;
    }

    /** By how much the products of near errors exceed what their size and correlation say, at least 1; of a deviation. */
    private static double beyond(
            int j,
            double[][] sensitivities,
            double[] errors,
            double[] size,
            boolean[] counts,
            ErrorAutocorrelation correlation) {
        double told = 0;
        double seen = 0;
        for (int lag = 0; lag <= SEEN; lag++) {
            for (int c = 0; c + lag < errors.length; c++) {
                if (counts[c] && counts[c + lag]) {
                    double both = (lag == 0 ? 1 : 2) * sensitivities[c][j] * sensitivities[c + lag][j];
                    told += both * size[c] * size[c + lag] * correlation.at(lag);
                    seen += both * errors[c] * errors[c + lag];
                }
            }
        }
        return told > 0 ? Math.sqrt(Math.max(1, seen / told)) : 1;
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
