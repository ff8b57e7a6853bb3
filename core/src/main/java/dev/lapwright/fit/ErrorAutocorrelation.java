package dev.lapwright.fit;

import java.util.Arrays;

/**
 * Autocorrelation function of the errors along a lap, by lag in cells: sample autocorrelations up to the order of an
 * autoregression fitted by the Yule-Walker equations (Levinson-Durbin recursion, order by Akaike's criterion), extrapolated by it
 * beyond (Brockwell and Davis, Time Series: Theory and Methods, chapters 5, 8 and 9; from memory).
 */
final class ErrorAutocorrelation {
    private static final int MOST_ORDER = 12;
    /** Greatest reflection coefficient, so that the extrapolation decays. */
    private static final double MOST_REFLECTION = 0.98;
    /** Correlations smaller than this for as many lags as the greatest order end the function. */
    private static final double NOTHING = 1e-3;

    private final double[] correlations;

    private ErrorAutocorrelation(double[] correlations) {
        this.correlations = correlations;
    }

    /**
     * Of errors in order along the lap.
     *
     * @param counts whether a cell's error is known; where not it is nought
     */
    static ErrorAutocorrelation of(double[] errors, boolean[] counts) {
        return of(new double[][] {errors}, new boolean[][] {counts});
    }

    /** Of errors of several runs, each over its own size: one function for all. */
    static ErrorAutocorrelation of(double[][] runs, boolean[][] known) {
        int length = runs[0].length;
        int order = Math.max(1, Math.min(MOST_ORDER, length / 20));
        double[] r = new double[order + 1];
        int n = 0;
        for (int a = 0; a < runs.length; a++) {
            double[] one = sample(runs[a], known[a], order);
            for (int lag = 0; lag <= order; lag++) {
                r[lag] += one[lag] / runs.length;
            }
            for (boolean is : known[a]) {
                n += is ? 1 : 0;
            }
        }
        double[] phi = {};
        double[] best = {};
        double variance = 1;
        double least = Double.POSITIVE_INFINITY;
        for (int p = 1; p <= order; p++) {
            double gap = r[p];
            for (int i = 0; i < p - 1; i++) {
                gap -= phi[i] * r[p - 1 - i];
            }
            double reflection = Math.max(-MOST_REFLECTION, Math.min(MOST_REFLECTION, gap / variance));
            double[] next = Arrays.copyOf(phi, p);
            next[p - 1] = reflection;
            for (int i = 0; i < p - 1; i++) {
                next[i] = phi[i] - reflection * phi[p - 2 - i];
            }
            phi = next;
            variance *= 1 - reflection * reflection;
            double akaike = n * Math.log(variance) + 2 * p;
            if (akaike < least) {
                least = akaike;
                best = phi;
            }
        }
        return new ErrorAutocorrelation(extrapolated(r, best, length));
    }

    private static double[] sample(double[] errors, boolean[] counts, int most) {
        double[] r = new double[most + 1];
        for (int lag = 0; lag <= most; lag++) {
            double sum = 0;
            int pairs = 0;
            for (int c = lag; c < errors.length; c++) {
                if (counts[c] && counts[c - lag]) {
                    sum += errors[c] * errors[c - lag];
                    pairs++;
                }
            }
            r[lag] = pairs > 0 ? sum / pairs : 0;
        }
        double square = r[0];
        for (int lag = 0; lag <= most; lag++) {
            r[lag] = square > 0 ? r[lag] / square : lag == 0 ? 1 : 0;
        }
        return r;
    }

    private static double[] extrapolated(double[] r, double[] phi, int length) {
        double[] all = new double[length];
        int used = 1;
        all[0] = 1;
        int quiet = 0;
        for (int lag = 1; lag < length && quiet < MOST_ORDER && phi.length > 0; lag++) {
            if (lag <= phi.length) {
                all[lag] = r[lag];
            } else {
                for (int i = 0; i < phi.length; i++) {
                    all[lag] += phi[i] * all[lag - 1 - i];
                }
            }
            quiet = Math.abs(all[lag]) < NOTHING ? quiet + 1 : 0;
            used = lag + 1;
        }
        return Arrays.copyOf(all, used);
    }

    /** Lag beyond which the correlation is zero, cells. */
    int reach() {
        return correlations.length - 1;
    }

    /** Correlation at a lag, cells. */
    double at(int lag) {
        return lag < correlations.length ? correlations[lag] : 0;
    }
}
