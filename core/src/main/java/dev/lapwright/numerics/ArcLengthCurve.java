package dev.lapwright.numerics;

import java.util.Arrays;

/**
 * Plane curve of two cubic splines x(t) and y(t), parametrised by its arc length s, m. Lengths are integrals of the splines'
 * own derivatives by three-point Gauss-Legendre quadrature (Abramowitz and Stegun 25.4.30) over short pieces.
 */
public final class ArcLengthCurve {
    private static final double PIECE = 2;
    private static final double REACH = Math.sqrt(0.6);

    private final SplineKnots knots;
    private final CubicSpline x;
    private final CubicSpline y;
    private final int[] interval;
    private final double[] begin;
    private final double[] width;
    private final double[] arc;
    private final double[] knotArc;

    /**
     * Point of the curve.
     *
     * @param x m
     * @param y m
     * @param heading rad, counter-clockwise from the x axis, −π to π
     * @param curvature 1/m, positive to the left
     */
    public record Place(double x, double y, double heading, double curvature) {}

    /** The curve of two splines over the same knots. */
    public ArcLengthCurve(SplineKnots knots, CubicSpline x, CubicSpline y) {
        this.knots = knots;
        this.x = x;
        this.y = y;
        int pieces = 0;
        for (int i = 0; i < knots.intervals(); i++) {
            pieces += piecesOf(i);
        }
        interval = new int[pieces];
        begin = new double[pieces];
        width = new double[pieces];
        arc = new double[pieces + 1];
        knotArc = new double[knots.count()];
        int piece = 0;
        for (int i = 0; i < knots.intervals(); i++) {
            int count = piecesOf(i);
            knotArc[i] = arc[piece];
            for (int k = 0; k < count; k++, piece++) {
                interval[piece] = i;
                width[piece] = knots.step(i) / count;
                begin[piece] = k * width[piece];
                arc[piece + 1] = arc[piece] + length(i, begin[piece], width[piece]);
            }
        }
        if (!knots.isClosed()) {
            knotArc[knots.count() - 1] = arc[pieces];
        }
    }

    private int piecesOf(int index) {
        return Math.max(1, (int) Math.ceil(knots.step(index) / PIECE));
    }

    private double length(int index, double from, double extent) {
        double middle = from + extent / 2;
        return extent
                / 18
                * (5 * pace(index, middle - REACH * extent / 2)
                        + 8 * pace(index, middle)
                        + 5 * pace(index, middle + REACH * extent / 2));
    }

    private double pace(int index, double ahead) {
        return Math.hypot(x.slope(index, ahead), y.slope(index, ahead));
    }

    /** Length on the plane, once round if closed, m. */
    public double length() {
        return arc[arc.length - 1];
    }

    /** Arc length at each knot, m; a new array. */
    public double[] knotArcs() {
        return knotArc.clone();
    }

    /** The place at an arc length from 0 to the length. */
    public Place at(double s) {
        int found = Arrays.binarySearch(arc, s);
        int piece = Math.max(0, Math.min(interval.length - 1, found >= 0 ? found : -found - 2));
        int i = interval[piece];
        double ahead = width[piece] * (s - arc[piece]) / (arc[piece + 1] - arc[piece]);
        // Newton's method; the pace is close to 1 all along, so that three steps leave nothing.
        for (int step = 0; step < 3; step++) {
            double miss = s - arc[piece] - length(i, begin[piece], ahead);
            ahead += miss / pace(i, begin[piece] + ahead);
        }
        double u = begin[piece] + ahead;
        double dx = x.slope(i, u);
        double dy = y.slope(i, u);
        double pace = Math.hypot(dx, dy);
        double curvature = (dx * y.secondDerivative(i, u) - dy * x.secondDerivative(i, u)) / (pace * pace * pace);
        return new Place(x.value(i, u), y.value(i, u), Math.atan2(dy, dx), curvature);
    }
}
