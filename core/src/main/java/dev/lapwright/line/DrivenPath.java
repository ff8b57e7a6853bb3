package dev.lapwright.line;

import dev.lapwright.curve.CubicSpline;
import dev.lapwright.curve.PlanCurve;
import dev.lapwright.curve.SplineKnots;
import dev.lapwright.track.Corner;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.List;

/**
 * The path of a line as a track of its own: cubic splines through the points at their offsets, with the road's slope, bank,
 * crests and grip as the car finds them there.
 *
 * <p>The road is taken as straight across: a point at offset n lies n tan φ lower than the path. So the line's slope holds
 * what it climbs across the bank. Its vertical curvature is that of the road, scaled by how much shorter or longer the
 * line is there; what changes of bank add to it is left out.
 */
final class DrivenPath {
    private final RoadNodes road;
    private final double[] offsets;
    private final double[] place;
    final double[] x;
    final double[] y;

    DrivenPath(RoadNodes road, double[] offsets) {
        this.road = road;
        this.offsets = offsets;
        int n = road.count;
        x = new double[n];
        y = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = road.x[i] + offsets[i] * road.normalX[i];
            y[i] = road.y[i] + offsets[i] * road.normalY[i];
        }
        place = new double[road.s.length];
    }

    /** Distance along the line at each of the road's nodes, m; on a closed road one more, the length. */
    double[] places() {
        return place;
    }

    Track track(String name) {
        int n = road.count;
        SplineKnots knots = byChords();
        CubicSpline sx = knots.fit(0).spline(x);
        CubicSpline sy = knots.fit(0).spline(y);
        PlanCurve curve = new PlanCurve(knots, sx, sy);
        SplineKnots arcs = new SplineKnots(curve.knotArcs(), road.closed ? curve.length() : Double.NaN);
        double[] z = new double[n];
        for (int i = 0; i < n; i++) {
            z[i] = road.z[i] - offsets[i] * Math.tan(road.point[i].bank());
        }
        CubicSpline sz = arcs.fit(0).spline(z);
        int stations = road.s.length;
        List<TrackPoint> points = new ArrayList<>(stations);
        double[] rise = new double[n];
        for (int i = 0; i < n; i++) {
            rise[i] = at(sz, arcs, i);
        }
        for (int i = 0; i < stations; i++) {
            if (i > 0) {
                double mean = 0.5 * (rise[i - 1] + rise[i % n]);
                place[i] = place[i - 1] + arcs.step(i - 1) * Math.sqrt(1 + mean * mean);
            }
        }
        for (int i = 0; i < stations; i++) {
            points.add(point(i, sx, sy, knots, rise[i % n]));
        }
        Track driven = road.closed ? Track.closed(name, points) : Track.open(name, road.track.entrySpeed(), points);
        return driven.laidOut(heading(sx, sy, knots, 0), Math.max(-500, Math.min(6000, z[0])))
                .withSectorEnds(along(road.track.sectorEnds(), place[stations - 1]))
                .withCornerNames(names())
                .withCorners(corners(points));
    }

    private SplineKnots byChords() {
        int n = road.count;
        double[] t = new double[n];
        for (int i = 1; i < n; i++) {
            t[i] = t[i - 1] + Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
        }
        double last = Math.hypot(x[0] - x[n - 1], y[0] - y[n - 1]);
        return new SplineKnots(t, road.closed ? t[n - 1] + last : Double.NaN);
    }

    /** Slope of a spline at a knot; the last of an open run lies at the end of the interval before it. */
    private static double at(CubicSpline spline, SplineKnots knots, int knot) {
        return knot < knots.intervals() ? spline.slope(knot, 0) : spline.slope(knot - 1, knots.step(knot - 1));
    }

    private static double heading(CubicSpline sx, CubicSpline sy, SplineKnots knots, int knot) {
        return Math.atan2(at(sy, knots, knot), at(sx, knots, knot));
    }

    private TrackPoint point(int station, CubicSpline sx, CubicSpline sy, SplineKnots knots, double rise) {
        int i = station % road.count;
        TrackPoint p = road.point[i];
        double dx = at(sx, knots, i);
        double dy = at(sy, knots, i);
        double pace = Math.hypot(dx, dy);
        double bendX = i < knots.intervals() ? sx.bend(i, 0) : 0;
        double bendY = i < knots.intervals() ? sy.bend(i, 0) : 0;
        double curvature = (dx * bendY - dy * bendX) / (pace * pace * pace);
        double flatter = 1 / Math.sqrt(1 + rise * rise);
        double across = Math.IEEEremainder(Math.atan2(dy, dx) - road.heading[i], 2 * Math.PI);
        int before = Math.max(0, station - 1);
        int after = Math.min(place.length - 1, station + 1);
        double quicker = (road.s[after] - road.s[before]) / (place[after] - place[before]);
        return new TrackPoint(
                place[station],
                curvature * flatter,
                Math.atan(rise),
                p.bank() * Math.cos(across) + p.slope() * Math.sin(across),
                p.verticalCurvature() * quicker * quicker,
                p.grip(),
                Math.max(0, p.widthLeft() - offsets[i]),
                Math.max(0, p.widthRight() + offsets[i]),
                p.speedLimit());
    }

    /** Distances along the line of places on the road. */
    private double[] along(double[] distances, double length) {
        double[] found = new double[distances.length];
        for (int k = 0; k < distances.length; k++) {
            found[k] = k == distances.length - 1 ? length : along(distances[k]);
        }
        return found;
    }

    /** Distance along the line (m) abreast of a place on the road. */
    double along(double distance) {
        double[] s = road.s;
        double share = Math.max(0, Math.min(s.length - 1, distance / s[s.length - 1] * (s.length - 1)));
        int i = Math.min(s.length - 2, (int) share);
        return place[i] + (share - i) * (place[i + 1] - place[i]);
    }

    private List<Track.NamedPlace> names() {
        List<Track.NamedPlace> names = new ArrayList<>();
        for (Track.NamedPlace name : road.track.cornerNames()) {
            names.add(new Track.NamedPlace(along(name.s()), name.name()));
        }
        return names;
    }

    /** The node nearest to a distance along the road (m): there a lap has a station. */
    private int nearest(double distance) {
        return (int) Math.rint(distance / road.s[road.s.length - 1] * (road.s.length - 1));
    }

    /**
     * The road's corners, abreast: the same stretches of road on whatever line, so that none is lost where a line runs
     * straighter than the road. Apex and radius are the line's own.
     */
    private List<Corner> corners(List<TrackPoint> points) {
        List<Corner> corners = new ArrayList<>();
        double length = place[place.length - 1];
        for (Corner c : road.corners) {
            double entry = place[nearest(c.entry())];
            double exit = place[nearest(c.exit())];
            double sharpest = 0;
            double apex = Math.min(length, along(c.apex()));
            for (TrackPoint p : points) {
                boolean within = entry <= exit ? p.s() >= entry && p.s() <= exit : p.s() >= entry || p.s() <= exit;
                double bend = c.left() ? p.curvature() : -p.curvature();
                if (within && bend > sharpest) {
                    sharpest = bend;
                    apex = p.s();
                }
            }
            corners.add(new Corner(c.number(), c.name(), entry, apex, exit, c.left(), 1 / sharpest));
        }
        return corners;
    }
}
