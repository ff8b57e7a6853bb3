package dev.lapwright.curve;

/** A cubic spline by its values and second derivatives at the knots. */
public final class CubicSpline {
    private final SplineKnots knots;
    private final double[] value;
    private final double[] second;

    public CubicSpline(SplineKnots knots, double[] value, double[] second) {
        this.knots = knots;
        this.value = value.clone();
        this.second = second.clone();
    }

    public double valueAtKnot(int knot) {
        return value[knot];
    }

    private double linear(int interval) {
        int end = (interval + 1) % value.length;
        double h = knots.step(interval);
        return (value[end] - value[interval]) / h - h * (2 * second[interval] + second[end]) / 6;
    }

    private double cubic(int interval) {
        return (second[(interval + 1) % value.length] - second[interval]) / (6 * knots.step(interval));
    }

    /** Value at a distance behind the knot that begins an interval. */
    public double value(int interval, double ahead) {
        return value[interval] + ahead * (linear(interval) + ahead * (second[interval] / 2 + ahead * cubic(interval)));
    }

    public double slope(int interval, double ahead) {
        return linear(interval) + ahead * (second[interval] + 3 * ahead * cubic(interval));
    }

    public double bend(int interval, double ahead) {
        return second[interval] + 6 * ahead * cubic(interval);
    }
}
