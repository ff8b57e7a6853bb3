package dev.lapwright.fit;

import java.util.Arrays;

/** One channel of a log along its own distance: straight between samples, with its integral. */
final class LoggedCurve {
    private final double[] d;
    private final double[] y;
    private final double[] integral;

    LoggedCurve(double[] distance, double[] values) {
        d = distance;
        y = values;
        integral = new double[d.length];
        for (int i = 1; i < d.length; i++) {
            integral[i] = integral[i - 1] + 0.5 * (d[i] - d[i - 1]) * (y[i - 1] + y[i]);
        }
    }

    /** Mean from one distance to another further on; beyond the samples the first or last value holds. */
    double mean(double from, double to) {
        return (integralTo(to) - integralTo(from)) / (to - from);
    }

    private double integralTo(double x) {
        if (x <= d[0]) {
            return (x - d[0]) * y[0];
        }
        int last = d.length - 1;
        if (x >= d[last]) {
            return integral[last] + (x - d[last]) * y[last];
        }
        int i = Arrays.binarySearch(d, x);
        i = Math.min(i >= 0 ? i : -i - 2, last - 1);
        double ds = d[i + 1] - d[i];
        double w = ds > 0 ? (x - d[i]) / ds : 0;
        double here = y[i] + w * (y[i + 1] - y[i]);
        return integral[i] + 0.5 * (x - d[i]) * (y[i] + here);
    }
}
