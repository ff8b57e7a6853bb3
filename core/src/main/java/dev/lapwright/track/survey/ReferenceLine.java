package dev.lapwright.track.survey;

import dev.lapwright.numerics.ArcLengthCurve;
import dev.lapwright.numerics.CubicSpline;
import dev.lapwright.numerics.SplineKnots;

/**
 * A line through nodes at even steps of its arc length, about which the road is sought: positions, headings and curvatures of
 * the nodes, and where each surveyed point lies beside it.
 */
final class ReferenceLine {
    private static final int NEWTON = 4;

    private final boolean closed;
    /** Number of nodes; a closed line's last node is one step before its first. */
    private final int count;
    /** m. */
    private final double step;
    /** m. */
    private final double length;
    /** m, at the nodes. */
    private final double[] x;
    /** m, at the nodes. */
    private final double[] y;
    /** rad, continuous, at the nodes. */
    private final double[] heading;
    /** 1/m, at the nodes: that of the circle through a node and its neighbours. */
    private final double[] curvature;

    private final SplineKnots knots;
    /** Found when asked for. */
    private double[] cosines;

    private final CubicSpline splineX;
    private final CubicSpline splineY;

    boolean closed() {
        return closed;
    }

    int count() {
        return count;
    }

    double step() {
        return step;
    }

    double length() {
        return length;
    }

    double curvature(int node) {
        return curvature[node];
    }

    private ReferenceLine(double[] x, double[] y, double[] heading, double length, boolean closed) {
        this.x = x;
        this.y = y;
        this.heading = heading;
        this.length = length;
        this.closed = closed;
        count = x.length;
        step = length / (closed ? count : count - 1);
        curvature = circles();
        double[] place = new double[count];
        for (int i = 0; i < count; i++) {
            place[i] = i * step;
        }
        knots = new SplineKnots(place, closed ? length : Double.NaN);
        SplineKnots.Fit through = knots.fit(0);
        splineX = through.spline(x);
        splineY = through.spline(y);
    }

    /** Cosines of even parts of a round, one for each node; not copied. */
    double[] cosines() {
        if (cosines == null) {
            cosines = new double[count];
            for (int i = 0; i < count; i++) {
                cosines[i] = Math.cos(2 * Math.PI * i / count);
            }
        }
        return cosines;
    }

    /** The line as a curve by its arc length. */
    ArcLengthCurve curve() {
        return new ArcLengthCurve(knots, splineX, splineY);
    }

    /** The nodes' places as knots. */
    SplineKnots knots() {
        return knots;
    }

    /** The line through nodes that stand about evenly, sampled anew at steps of about this length (m). */
    static ReferenceLine through(double[] x, double[] y, boolean closed, double about) {
        double[] t = new double[x.length];
        for (int i = 1; i < t.length; i++) {
            t[i] = t[i - 1] + Math.max(1e-6, Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]));
        }
        int last = x.length - 1;
        double period = closed ? t[last] + Math.max(1e-6, Math.hypot(x[0] - x[last], y[0] - y[last])) : Double.NaN;
        SplineKnots knots = new SplineKnots(t, period);
        SplineKnots.Fit through = knots.fit(0);
        return sampled(new ArcLengthCurve(knots, through.spline(x), through.spline(y)), closed, about);
    }

    /** A curve sampled at steps of about this length (m). */
    static ReferenceLine sampled(ArcLengthCurve curve, boolean closed, double about) {
        double length = curve.length();
        int steps = Math.max(32, (int) Math.round(length / about));
        int count = closed ? steps : steps + 1;
        double[] x = new double[count];
        double[] y = new double[count];
        double[] heading = new double[count];
        for (int i = 0; i < count; i++) {
            ArcLengthCurve.Place place = curve.at(Math.min(length, i * length / steps));
            x[i] = place.x();
            y[i] = place.y();
            heading[i] = i == 0
                    ? place.heading()
                    : heading[i - 1] + Math.IEEEremainder(place.heading() - heading[i - 1], 2 * Math.PI);
        }
        return new ReferenceLine(x, y, heading, length, closed);
    }

    private double[] circles() {
        double[] k = new double[count];
        for (int i = 0; i < count; i++) {
            if (!closed && (i == 0 || i == count - 1)) {
                continue;
            }
            int a = (i + count - 1) % count;
            int c = (i + 1) % count;
            double ux = x[i] - x[a];
            double uy = y[i] - y[a];
            double vx = x[c] - x[i];
            double vy = y[c] - y[i];
            k[i] = 2
                    * (ux * vy - uy * vx)
                    / (Math.hypot(ux, uy) * Math.hypot(vx, vy) * Math.hypot(x[c] - x[a], y[c] - y[a]));
        }
        if (!closed) {
            k[0] = k[1];
            k[count - 1] = k[count - 2];
        }
        return k;
    }

    /** The same closed line with its start moved forward by a distance, m. */
    ReferenceLine startingAt(double distance) {
        double[] nx = new double[count];
        double[] ny = new double[count];
        for (int i = 0; i < count; i++) {
            double[] p = place(distance + i * step);
            nx[i] = p[0];
            ny[i] = p[1];
        }
        return through(nx, ny, true, step);
    }

    /** The line with each node moved to its left by an offset (m), sampled anew. */
    ReferenceLine moved(double[] offset) {
        double[] nx = new double[count];
        double[] ny = new double[count];
        for (int i = 0; i < count; i++) {
            nx[i] = x[i] - offset[i] * Math.sin(heading[i]);
            ny[i] = y[i] + offset[i] * Math.cos(heading[i]);
        }
        return through(nx, ny, closed, step);
    }

    /**
     * The foot of a point on the line, looked for near a place.
     *
     * @param near where it is looked for, m from the start
     * @param reach how far either way, m
     */
    double foot(double px, double py, double near, double reach) {
        int middle = (int) Math.round(near / step);
        int nodes = (int) Math.ceil(reach / step);
        double best = Double.POSITIVE_INFINITY;
        int found = middle;
        for (int k = middle - nodes; k <= middle + nodes; k++) {
            if (!closed && (k < 0 || k >= count)) {
                continue;
            }
            int i = Math.floorMod(k, count);
            double d = (x[i] - px) * (x[i] - px) + (y[i] - py) * (y[i] - py);
            if (d < best) {
                best = d;
                found = k;
            }
        }
        double u = found * step;
        for (int k = 0; k < NEWTON; k++) {
            double[] p = place(u);
            double along = (px - p[0]) * p[2] + (py - p[1]) * p[3];
            u += Math.max(-step, Math.min(step, along / (p[2] * p[2] + p[3] * p[3])));
            if (!closed) {
                u = Math.max(0, Math.min(length, u));
            }
        }
        return closed ? u - Math.floor(u / length) * length : u;
    }

    /** How far to the left of the line a point lies whose foot is known, m. */
    double beside(double px, double py, double foot) {
        double[] p = place(foot);
        return (p[2] * (py - p[1]) - p[3] * (px - p[0])) / Math.hypot(p[2], p[3]);
    }

    /** x, y, dx/ds and dy/ds at a distance, m. */
    double[] place(double s) {
        double wrapped = closed ? s - Math.floor(s / length) * length : Math.max(0, Math.min(length, s));
        int i = Math.min(knots.intervals() - 1, (int) (wrapped / step));
        double ahead = wrapped - i * step;
        return new double[] {
            splineX.value(i, ahead), splineY.value(i, ahead), splineX.slope(i, ahead), splineY.slope(i, ahead)
        };
    }
}
