package dev.lapwright.line;

import dev.lapwright.track.Corner;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.List;

/**
 * Path of a line as a track of its own, from its offsets: curvature by {@link LineCurvature}, with the road's slope, bank,
 * vertical curvature and grip as the car finds them there. A spline through the points would overshoot where the curvature
 * jumps, and the tightest places decide a lap.
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
        LineCurvature shape = new LineCurvature(road);
        shape.at(offsets);
        int n = road.count;
        int stations = road.s.length;
        double[] curvature = shape.curvature;
        if (!road.closed) {
            // No circle goes through an end and two neighbours; the bend goes on.
            curvature[0] = curvature[1];
            curvature[n - 1] = curvature[n - 2];
        }
        double[] z = new double[n];
        for (int i = 0; i < n; i++) {
            z[i] = road.z[i] - offsets[i] * Math.tan(road.point[i].bank());
        }
        double[] plan = new double[stations - 1];
        for (int i = 1; i < stations; i++) {
            int p = i - 1;
            int q = i % n;
            double k = 0.5 * (curvature[p] + curvature[q]);
            double chord = shape.chord[p];
            // Arc over chord: 1 + (κ a)²/24 and smaller terms.
            plan[p] = chord * (1 + k * k * chord * chord / 24);
            place[i] = place[p] + Math.hypot(plan[p], z[q] - z[p]);
        }
        List<TrackPoint> points = new ArrayList<>(stations);
        for (int i = 0; i < stations; i++) {
            points.add(point(i, curvature[i % n], rise(i, z, plan)));
        }
        Track driven = road.closed ? Track.closed(name, points) : Track.open(name, road.track.entrySpeed(), points);
        if (road.track.curvatureDeviation().length > 0) {
            // The line bends with its road: what is not known of that is not known of the line.
            double[] deviation = new double[stations];
            for (int i = 0; i < stations; i++) {
                deviation[i] = road.track.curvatureDeviationAt(road.s[i]);
            }
            driven = driven.withCurvatureDeviation(deviation);
        }
        return driven.asLine()
                .doubting(road.track.doubt())
                .laidOut(heading(0), Math.max(-500, Math.min(6000, z[0])))
                .withSectorEnds(along(road.track.sectorEnds(), place[stations - 1]))
                .withCornerNames(names())
                .withCorners(corners(points));
    }

    /** Rise over run at a station, by the parabola through its neighbours; at an open end by the chord. */
    private double rise(int station, double[] z, double[] plan) {
        int n = road.count;
        int cells = plan.length;
        boolean first = station == 0 && !road.closed;
        boolean last = station == cells && !road.closed;
        int i = station % n;
        int p = (i + n - 1) % n;
        int q = (i + 1) % n;
        double before = first ? 0 : plan[(station + cells - 1) % cells];
        double after = last ? 0 : plan[station % cells];
        double up = first ? 0 : (z[i] - z[p]) / before;
        double on = last ? 0 : (z[q] - z[i]) / after;
        return first ? on : last ? up : (up * after + on * before) / (before + after);
    }

    /** Heading of the line at a node, by the parabola through its neighbours; at an open end by the chord. */
    private double heading(int i) {
        int n = road.count;
        int p = road.closed ? (i + n - 1) % n : Math.max(0, i - 1);
        int q = road.closed ? (i + 1) % n : Math.min(n - 1, i + 1);
        double a = Math.hypot(x[i] - x[p], y[i] - y[p]);
        double b = Math.hypot(x[q] - x[i], y[q] - y[i]);
        double before = a > 0 ? b / a : 0;
        double after = b > 0 ? a / b : 0;
        boolean end = p == i || q == i;
        double dx = end ? x[q] - x[p] : before * (x[i] - x[p]) + after * (x[q] - x[i]);
        double dy = end ? y[q] - y[p] : before * (y[i] - y[p]) + after * (y[q] - y[i]);
        return Math.atan2(dy, dx);
    }

    private TrackPoint point(int station, double curvature, double rise) {
        int i = station % road.count;
        TrackPoint p = road.point[i];
        double across = Math.IEEEremainder(heading(i) - road.heading[i], 2 * Math.PI);
        double quicker = step(road.s, station) / step(place, station);
        return new TrackPoint(
                place[station],
                curvature / Math.sqrt(1 + rise * rise),
                Math.atan(rise),
                p.bank() * Math.cos(across) + p.slope() * Math.sin(across),
                p.verticalCurvature() * quicker * quicker,
                p.grip(),
                Math.max(0, p.widthLeft() - offsets[i]),
                Math.max(0, p.widthRight() + offsets[i]),
                p.speedLimit());
    }

    /** From the station before to the one behind; round the start of a closed road, whose end is its start again. */
    private double step(double[] distances, int station) {
        int last = distances.length - 1;
        boolean seam = road.closed && (station == 0 || station == last);
        if (seam) {
            return distances[last] - distances[last - 1] + distances[1];
        }
        return distances[Math.min(last, station + 1)] - distances[Math.max(0, station - 1)];
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
            names.add(name.at(along(name.s())));
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
