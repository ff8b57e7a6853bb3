package dev.lapwright.numerics;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.Arrays;

/**
 * Monotone piecewise cubic interpolant y(x): goes through the points with continuous slope, rises and falls only where they do,
 * and is constant beyond the ends.
 *
 * <p>Source: slopes by the weighted harmonic mean of Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300, which keeps
 * the monotonicity of Fritsch and Carlson (1980). A single point is a constant.
 */
public final class MonotoneCubic {
    private final double[] x;
    private final double[] y;
    private final double[] slope;

    /**
     * @param x abscissas, strictly rising; copied
     * @param y ordinates, one for each; copied
     */
    public MonotoneCubic(double[] x, double[] y) {
        if (x.length == 0 || x.length != y.length) {
            throw new InvalidValueException(
                    "table", x.length + " abscissas for " + y.length + " values", "give one value for each");
        }
        Check.rising("table", x);
        for (double value : y) {
            Check.finite("table value", value);
        }
        this.x = x.clone();
        this.y = y.clone();
        slope = slopes(x, y);
    }

    private static double[] slopes(double[] x, double[] y) {
        int n = x.length;
        double[] d = new double[n];
        if (n == 1) {
            return d;
        }
        double[] h = new double[n - 1];
        double[] secant = new double[n - 1];
        for (int i = 0; i + 1 < n; i++) {
            h[i] = x[i + 1] - x[i];
            secant[i] = (y[i + 1] - y[i]) / h[i];
        }
        if (n == 2) {
            Arrays.fill(d, secant[0]);
            return d;
        }
        for (int i = 1; i + 1 < n; i++) {
            if (secant[i - 1] * secant[i] > 0) {
                double w1 = 2 * h[i] + h[i - 1];
                double w2 = h[i] + 2 * h[i - 1];
                d[i] = (w1 + w2) / (w1 / secant[i - 1] + w2 / secant[i]);
            }
        }
        d[0] = endSlope(h[0], h[1], secant[0], secant[1]);
        d[n - 1] = endSlope(h[n - 2], h[n - 3], secant[n - 2], secant[n - 3]);
        return d;
    }

    /** One-sided three-point slope, held to what keeps the end piece monotone. */
    private static double endSlope(double h0, double h1, double s0, double s1) {
        double d = ((2 * h0 + h1) * s0 - h0 * s1) / (h0 + h1);
        if (d * s0 <= 0) {
            return 0;
        }
        return s0 * s1 <= 0 && Math.abs(d) > 3 * Math.abs(s0) ? 3 * s0 : d;
    }

    /** Value at {@code at}; beyond the ends the nearest end's value. */
    public double value(double at) {
        int last = x.length - 1;
        if (!(at > x[0])) {
            return y[0];
        }
        if (at >= x[last]) {
            return y[last];
        }
        int i = Arrays.binarySearch(x, at);
        i = i >= 0 ? i : -i - 2;
        double h = x[i + 1] - x[i];
        double t = (at - x[i]) / h;
        double u = 1 - t;
        return y[i] * (1 + 2 * t) * u * u
                + y[i + 1] * t * t * (3 - 2 * t)
                + h * t * u * (slope[i] * u - slope[i + 1] * t);
    }

    /** First abscissa. */
    public double first() {
        return x[0];
    }

    /** Last abscissa. */
    public double last() {
        return x[x.length - 1];
    }

    /** Abscissas, a copy. */
    public double[] abscissas() {
        return x.clone();
    }

    /** Ordinates, a copy. */
    public double[] ordinates() {
        return y.clone();
    }
}
