package dev.lapwright.track.survey;

/** The path of a curvature known at even steps; between them it is linear. Positions by Simpson's rule in each step. */
final class DeadReckoning {
    private final double step;
    private final double[] x;
    private final double[] y;
    private final double[] heading;

    /**
     * @param curvature 1/m, at even steps from the start; not kept
     * @param step m
     */
    DeadReckoning(double[] curvature, double step) {
        this.step = step;
        int n = curvature.length;
        x = new double[n];
        y = new double[n];
        heading = new double[n];
        for (int i = 0; i + 1 < n; i++) {
            double middle = heading[i] + step * (3 * curvature[i] + curvature[i + 1]) / 8;
            heading[i + 1] = heading[i] + step * (curvature[i] + curvature[i + 1]) / 2;
            x[i + 1] = x[i] + step / 6 * (Math.cos(heading[i]) + 4 * Math.cos(middle) + Math.cos(heading[i + 1]));
            y[i + 1] = y[i] + step / 6 * (Math.sin(heading[i]) + 4 * Math.sin(middle) + Math.sin(heading[i + 1]));
        }
    }

    int count() {
        return x.length;
    }

    double step() {
        return step;
    }

    double length() {
        return step * (x.length - 1);
    }

    double x(int index) {
        return x[index];
    }

    double y(int index) {
        return y[index];
    }

    double turning() {
        return heading[heading.length - 1];
    }

    /** From the end to the start, m. */
    double gap() {
        return Math.hypot(x[x.length - 1], y[y.length - 1]);
    }
}
