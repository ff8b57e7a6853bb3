package dev.lapwright.numerics;

/**
 * Cubic spline y(t), held as its values and second derivatives at the knots. A place is given as the interval and the distance
 * beyond the knot that begins it.
 */
public final class CubicSpline {
    private final SplineKnots knots;
    private final double[] value;
    private final double[] second;

    /**
     * The spline with these values and second derivatives.
     *
     * @param value at each knot; copied
     * @param second second derivative at each knot; copied
     */
    public CubicSpline(SplineKnots knots, double[] value, double[] second) {
        this.knots = knots;
        this.value = value.clone();
        this.second = second.clone();
    }

    /** Value at a knot. */
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

    /** Value at a distance beyond the knot that begins an interval. */
    public double value(int interval, double ahead) {
        return value[interval] + ahead * (linear(interval) + ahead * (second[interval] / 2 + ahead * cubic(interval)));
    }

    /** First derivative at a distance beyond the knot that begins an interval. */
    public double slope(int interval, double ahead) {
        return linear(interval) + ahead * (second[interval] + 3 * ahead * cubic(interval));
    }

    /** Second derivative at a distance beyond the knot that begins an interval. */
    public double secondDerivative(int interval, double ahead) {
        return second[interval] + 6 * ahead * cubic(interval);
    }
}
