package dev.lapwright.track;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * Path of a track composed of segments. Where slope, bank, grip or width differ between neighbours the change is eased over a given
 * length centred on the joint, vertical curvature rising over its first half and falling over its second, so that it is a triangle and
 * never infinite: the vertical curve and the superelevation run-off of road design, in their simplest form.
 *
 * <p>Where curvature jumps, as from a straight into an arc, a transition may be laid over the joint: curvature is linear over a
 * given length, at most half of either neighbour, which turns as much as before. A clothoid shifts what it joins by about L²/24R
 * (any survey textbook); straights change as little as brings the end back to where it was.
 */
public final class SegmentPath {
    private static final int EASE_POINTS = 8;

    private static final int SHIFTS = 3;
    /** Length of a transition where nobody gives one, m: so far a car goes in half a second as it turns in. Ours, no source. */
    public static final double USUAL_TRANSITION = 20;

    private final List<Segment> segments;
    private final boolean closed;
    private final double easeLength;
    /** Length of the curvature's change where it would jump, m. */
    private final double transition;

    private final boolean usual;

    private final double[] joints;
    private final double[] easeHalf;

    /**
     * @param segments in driving order, at least one
     * @param closed whether the last joins the first
     * @param easeLength length over which slope, bank, grip and width change between neighbours, m
     */
    public SegmentPath(List<Segment> segments, boolean closed, double easeLength) {
        this(segments, closed, easeLength, 0, false);
    }

    private SegmentPath(List<Segment> segments, boolean closed, double easeLength, double transition, boolean usual) {
        this.easeLength = easeLength;
        this.transition = transition;
        this.usual = usual;
        if (segments.isEmpty()) {
            throw new InvalidValueException("segments", "there are none", "give at least one segment");
        }
        Check.inRange("easeLengthM", easeLength, 1, 500);
        this.segments = List.copyOf(segments);
        this.closed = closed;
        int n = segments.size();
        joints = new double[n + 1];
        easeHalf = new double[n + 1];
        for (int i = 0; i < n; i++) {
            joints[i + 1] = joints[i] + segments.get(i).length();
        }
        for (int i = 0; i <= n; i++) {
            double before = segments.get((i + n - 1) % n).length();
            double after = segments.get(i % n).length();
            boolean openEnd = !closed && (i == 0 || i == n);
            easeHalf[i] = openEnd ? 0 : Math.min(easeLength, Math.min(before, after)) / 2;
        }
    }

    /** The same with transitions of a length (m) wherever curvature would jump; 0 for none. */
    public SegmentPath withTransitions(double length) {
        return withTransitions(length, false);
    }

    /**
     * The same with transitions of {@value #USUAL_TRANSITION} m wherever curvature would jump, for a car's path has no jumps; as it is
     * where none do, or where its straights cannot make up for the shift of its arcs.
     *
     * @param tolerance greatest gap that a closed path may have, m
     */
    public SegmentPath withUsualTransitions(double tolerance) {
        if (!hasJumps()) {
            return this;
        }
        SegmentPath bent = withTransitions(USUAL_TRANSITION, true);
        return !closed || bent.gap() <= Math.max(gap(), tolerance) ? bent : this;
    }

    private double gap() {
        Stations.Place place = end();
        return Math.hypot(place.x(), place.y());
    }

    private SegmentPath withTransitions(double length, boolean nobodyGaveOne) {
        Check.inRange("transitionLengthM", length, 0, 200);
        SegmentPath bent = new SegmentPath(segments, closed, easeLength, length, nobodyGaveOne);
        for (int i = 0; i < SHIFTS && closed && length > 0; i++) {
            bent = bent.endingAs(this);
        }
        return bent;
    }

    /** Whether curvature jumps at a joint. */
    public boolean hasJumps() {
        for (int i = closed ? 0 : 1; i < segments.size(); i++) {
            if (segmentBefore(i).endCurvature() != segments.get(i).startCurvature()) {
                return true;
            }
        }
        return false;
    }

    /** The same with its straights changed, the longer the more, so that it ends where another path does. */
    private SegmentPath endingAs(SegmentPath other) {
        Stations.Place wanted = other.end();
        Stations.Place here = end();
        double gapX = here.x() - wanted.x();
        double gapY = here.y() - wanted.y();
        double heading = 0;
        double[][] along = new double[segments.size()][];
        double a = 0;
        double b = 0;
        double c = 0;
        for (int i = 0; i < segments.size(); i++) {
            Segment segment = segments.get(i);
            if (segment.startCurvature() == 0 && segment.endCurvature() == 0) {
                double flat = Math.cos(segment.road().slope());
                along[i] = new double[] {flat * Math.cos(heading), flat * Math.sin(heading)};
                a += segment.length() * along[i][0] * along[i][0];
                b += segment.length() * along[i][0] * along[i][1];
                c += segment.length() * along[i][1] * along[i][1];
            }
            heading += segment.length() * (segment.startCurvature() + segment.endCurvature()) / 2;
        }
        double determinant = a * c - b * b;
        if (!(determinant > 1e-9 * (a + c) * (a + c))) {
            return this;
        }
        double east = (-gapX * c + gapY * b) / determinant;
        double north = (-gapY * a + gapX * b) / determinant;
        List<Segment> changed = new ArrayList<>();
        for (int i = 0; i < segments.size(); i++) {
            Segment segment = segments.get(i);
            double share = along[i] == null ? 0 : east * along[i][0] + north * along[i][1];
            changed.add(
                    share == 0
                            ? segment
                            : new Segment(
                                    segment.length() * Math.max(0.5, 1 + share), 0, 0, segment.road(), segment.name()));
        }
        return new SegmentPath(changed, closed, easeLength, transition, usual);
    }

    private Stations.Place end() {
        Track open = Track.open("path", 0, points());
        return open.stations(StationSpacing.DEFAULT).placeAt(open.length());
    }

    /**
     * The circuit, if its end meets its start.
     *
     * @param tolerance greatest gap on the plane and in altitude, m
     * @throws InvalidValueException saying by how much the path misses
     */
    public Track closedTrack(String name, double tolerance) {
        return said(Track.closed(name, points())).requireClosed(tolerance);
    }

    /** The open run, entered at a speed in m/s. */
    public Track openTrack(String name, double entrySpeed) {
        return said(Track.open(name, entrySpeed, points()));
    }

    private Track said(Track track) {
        return track.withCornerNames(names()).withUsualTransitions(usual ? transition : 0);
    }

    private List<Track.NamedPlace> names() {
        List<Track.NamedPlace> names = new ArrayList<>();
        for (int i = 0; i < segments.size(); i++) {
            if (!segments.get(i).name().isEmpty()) {
                names.add(new Track.NamedPlace(
                        0.5 * (joints[i] + joints[i + 1]), segments.get(i).name()));
            }
        }
        return names;
    }

    private List<TrackPoint> points() {
        int n = segments.size();
        double length = joints[n];
        List<TrackPoint> points = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            TreeSet<Double> places = new TreeSet<>();
            addEase(places, i, joints[i], length);
            addEase(places, i + 1, joints[i + 1], length);
            List<Double> inside = new ArrayList<>(places.subSet(joints[i] + 1e-9, true, joints[i + 1] - 1e-9, true));
            points.add(at(i, joints[i]));
            for (double s : inside) {
                points.add(at(i, s));
            }
            TrackPoint end = at(i, joints[i + 1]);
            TrackPoint next = i + 1 < n ? at(i + 1, joints[i + 1]) : null;
            if (next == null || !next.equals(end)) {
                points.add(end);
            }
        }
        return transition > 0 ? bent(points) : points;
    }

    /** Lays a transition over each joint where curvature jumps. */
    private List<TrackPoint> bent(List<TrackPoint> points) {
        int n = segments.size();
        List<TrackPoint> path = points;
        for (int i = closed ? 0 : 1; i < n; i++) {
            double from = segmentBefore(i).endCurvature();
            double to = segments.get(i).startCurvature();
            double half = Math.min(
                            transition,
                            Math.min(segmentBefore(i).length(), segments.get(i).length()) / 2)
                    / 2;
            if (from != to) {
                path = bent(path, joints[i], half, from, to);
                if (i == 0) {
                    path = bent(path, joints[n], half, from, to);
                }
            }
        }
        return path;
    }

    private List<TrackPoint> bent(List<TrackPoint> path, double joint, double half, double from, double to) {
        double length = joints[segments.size()];
        List<TrackPoint> changed = new ArrayList<>();
        double low = Math.max(0, joint - half);
        double high = Math.min(length, joint + half);
        boolean started = false;
        boolean ended = false;
        for (int i = 0; i < path.size(); i++) {
            TrackPoint p = path.get(i);
            if (!started && p.s() >= low) {
                started = true;
                if (p.s() > low) {
                    changed.add(TrackPoint.between(path.get(i - 1), p, low));
                }
            }
            if (started && !ended && p.s() >= high) {
                ended = true;
                if (p.s() > high) {
                    changed.add(TrackPoint.between(path.get(i - 1), p, high));
                }
            }
            boolean repeated =
                    !changed.isEmpty() && changed.get(changed.size() - 1).s() == p.s() && p.s() > low && p.s() < high;
            if (!repeated) {
                changed.add(p);
            }
        }
        for (int i = 0; i < changed.size(); i++) {
            TrackPoint p = changed.get(i);
            if (p.s() >= low && p.s() <= high) {
                double share = (p.s() - joint) / (2 * half) + 0.5;
                changed.set(i, p.bending(from + share * (to - from)));
            }
        }
        return changed;
    }

    private void addEase(TreeSet<Double> places, int joint, double centre, double length) {
        if (!changesAt(joint)) {
            return;
        }
        for (int k = 0; k <= EASE_POINTS; k++) {
            double s = centre + easeHalf[joint] * (2.0 * k / EASE_POINTS - 1);
            places.add(Math.max(0, Math.min(length, s)));
        }
    }

    private boolean changesAt(int joint) {
        if (easeHalf[joint] == 0) {
            return false;
        }
        Segment.Road a = segmentBefore(joint).road();
        Segment.Road b = segmentAfter(joint).road();
        return a.slope() != b.slope()
                || a.bank() != b.bank()
                || a.grip() != b.grip()
                || a.widthLeft() != b.widthLeft()
                || a.widthRight() != b.widthRight();
    }

    private Segment segmentBefore(int joint) {
        int n = segments.size();
        return segments.get((joint + n - 1) % n);
    }

    private Segment segmentAfter(int joint) {
        return segments.get(joint % segments.size());
    }

    private TrackPoint at(int segment, double s) {
        Segment here = segments.get(segment);
        double w = (s - joints[segment]) / here.length();
        // Both ends must give the neighbour's number exactly, or every joint would look like a jump.
        double curvature = w <= 0
                ? here.startCurvature()
                : w >= 1
                        ? here.endCurvature()
                        : here.startCurvature() + w * (here.endCurvature() - here.startCurvature());
        int joint = s - joints[segment] < joints[segment + 1] - s ? segment : segment + 1;
        double half = easeHalf[joint];
        double t = half > 0 ? (s - joints[joint]) / (2 * half) + 0.5 : joint == segment ? 1 : 0;
        double share = t <= 0 ? 0 : t >= 1 ? 1 : t < 0.5 ? 2 * t * t : 1 - 2 * (1 - t) * (1 - t);
        double rate = t <= 0 || t >= 1 ? 0 : (t < 0.5 ? 4 * t : 4 * (1 - t)) / (2 * half);
        Segment.Road a = half > 0 ? segmentBefore(joint).road() : here.road();
        Segment.Road b = half > 0 ? segmentAfter(joint).road() : here.road();
        return new TrackPoint(
                s,
                curvature,
                a.slope() + share * (b.slope() - a.slope()),
                a.bank() + share * (b.bank() - a.bank()),
                rate * (b.slope() - a.slope()),
                a.grip() + share * (b.grip() - a.grip()),
                a.widthLeft() + share * (b.widthLeft() - a.widthLeft()),
                a.widthRight() + share * (b.widthRight() - a.widthRight()),
                here.road().speedLimit());
    }

    /** True if the path is to be closed. */
    public boolean isClosed() {
        return closed;
    }
}
