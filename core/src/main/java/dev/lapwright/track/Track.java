package dev.lapwright.track;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Circuit or open run as a function of distance s. Immutable.
 *
 * <p>The path is given by {@link TrackPoint}s in order of distance, with linear variation between them. A closed track ends
 * where it starts: its last point carries the same values as its first.
 */
public final class Track {
    /** Deviations within which nine of ten of a normal distribution lie: how a band of {@link #curvatureDeviationAt} is told. */
    public static final double NINE_OF_TEN = 1.645;

    private static final double HEADING_TOLERANCE_DEG = 0.5;

    private final String name;
    private final boolean closed;
    private final Start start;
    private final List<TrackPoint> points;
    private final Marks marks;

    /** Kinds of line that a track's path may be. */
    public enum Path {
        /** The road's own line, with its widths to either side: a line may be sought between them. */
        ROAD("road"),
        /** The line that a car drove: where the road's edges are is not known. */
        DRIVEN("driven");

        private final String word;

        Path(String word) {
            this.word = word;
        }

        /** As a document says it. */
        public String word() {
            return word;
        }
    }

    /**
     * Place at which something is said of corners: the name of the one that lies there, or how they are told apart.
     *
     * @param s distance, m
     * @param name of the corner there; empty where none is given
     * @param mark how corners are told apart there
     */
    public record NamedPlace(double s, String name, Mark mark) {
        /** How corners are told apart at a place. */
        public enum Mark {
            /** By curvature, as everywhere. */
            NONE,
            /** One corner ends there and another begins, though the road bends on. */
            SPLIT,
            /** The corners before and behind, which bend to one side, are one, though the road between is straight enough for two. */
            JOIN
        }

        public NamedPlace {
            Check.inRange("corner name's place (m)", s, 0, 200_000);
        }

        /** The name of a corner. */
        public NamedPlace(double s, String name) {
            this(s, name, Mark.NONE);
        }

        /** The same at another distance, m. */
        public NamedPlace at(double place) {
            return new NamedPlace(place, name, mark);
        }
    }

    /** How it begins: speed, m/s, heading, rad, and altitude, m. */
    private record Start(double speed, double heading, double altitude) {}

    /**
     * What is said of a road beside its geometry. Arrays are this track's own.
     *
     * @param deviation of the curvature at the points, 1/m; empty where it is not known
     * @param doubt what is stated beside it
     * @param line whether it is a line that was sought between a road's edges
     * @param transition length of the transitions that were laid where curvature would have jumped, though nobody gave one, m; 0 for
     *     none
     */
    private record Marks(
            double[] sectorEnds,
            List<NamedPlace> cornerNames,
            List<Corner> corners,
            List<TrackLimit> limits,
            Path path,
            double[] deviation,
            RoadDoubt doubt,
            boolean line,
            double transition) {
        private static Marks of(double[] sectorEnds) {
            return new Marks(
                    sectorEnds, List.of(), List.of(), List.of(), Path.ROAD, new double[0], RoadDoubt.NONE, false, 0);
        }

        private Marks with(List<NamedPlace> names, List<Corner> known) {
            return new Marks(sectorEnds, names, known, limits, path, deviation, doubt, line, transition);
        }

        private Marks ending(double[] ends) {
            return new Marks(ends, cornerNames, corners, limits, path, deviation, doubt, line, transition);
        }

        private Marks limited(List<TrackLimit> others) {
            return new Marks(sectorEnds, cornerNames, corners, others, path, deviation, doubt, line, transition);
        }

        private Marks of(Path kind) {
            return new Marks(sectorEnds, cornerNames, corners, limits, kind, deviation, doubt, line, transition);
        }

        private Marks known(double[] to) {
            return new Marks(sectorEnds, cornerNames, corners, limits, path, to, doubt, line, transition);
        }

        private Marks laid(double length) {
            return new Marks(sectorEnds, cornerNames, corners, limits, path, deviation, doubt, line, length);
        }

        private Marks doubted(RoadDoubt stated) {
            return new Marks(sectorEnds, cornerNames, corners, limits, path, deviation, stated, line, transition);
        }

        private Marks ofLine() {
            return new Marks(sectorEnds, cornerNames, corners, limits, path, deviation, doubt, true, transition);
        }
    }

    private Track(String name, boolean closed, Start start, List<TrackPoint> points, Marks marks) {
        this.name = name;
        this.closed = closed;
        this.start = start;
        this.points = List.copyOf(points);
        this.marks = marks;
    }

    /**
     * A closed circuit.
     *
     * @param points from s = 0 to the length; the last must carry the values of the first
     */
    public static Track closed(String name, List<TrackPoint> points) {
        checkPoints(points);
        TrackPoint first = points.get(0);
        TrackPoint last = points.get(points.size() - 1);
        if (!first.equals(last.at(0))) {
            points = new ArrayList<>(points);
            points.add(first.at(last.s()));
        }
        return new Track(name, true, new Start(0, 0, 0), points, Marks.of(thirds(last.s())));
    }

    /**
     * An open run.
     *
     * @param entrySpeed speed at s = 0, m/s; zero is a standing start
     */
    public static Track open(String name, double entrySpeed, List<TrackPoint> points) {
        checkPoints(points);
        Check.inRange("entry speed (m/s)", entrySpeed, 0, 150);
        double length = points.get(points.size() - 1).s();
        return new Track(name, false, new Start(entrySpeed, 0, 0), points, Marks.of(thirds(length)));
    }

    private static void checkPoints(List<TrackPoint> points) {
        if (points.size() < 2) {
            throw new InvalidValueException("track", points.size() + " points are too few", "give at least 2");
        }
        if (points.get(0).s() != 0) {
            throw new InvalidValueException(
                    "track", "the first point is at " + Check.text(points.get(0).s()) + " m", "start at 0 m");
        }
        for (int i = 1; i < points.size(); i++) {
            if (!(points.get(i).s() >= points.get(i - 1).s())) {
                throw new InvalidValueException(
                        "track point " + (i + 1),
                        "distance " + Check.text(points.get(i).s()) + " m lies before the point above it",
                        "list the points in order of distance");
            }
        }
        Check.inRange("track length (m)", points.get(points.size() - 1).s(), 10, 200_000);
    }

    private static double[] thirds(double length) {
        return new double[] {length / 3, 2 * length / 3, length};
    }

    /**
     * This track, if its end meets its start on the plane, in altitude and in heading (to 0.5°).
     *
     * @param tolerance greatest gap on the plane and in altitude, m
     * @throws InvalidValueException saying by how much it misses
     */
    public Track requireClosed(double tolerance) {
        Check.inRange("closureToleranceM", tolerance, 1e-6, 50);
        Stations laid = stations(StationSpacing.DEFAULT);
        double turns = Math.rint(laid.totalTurning() / (2 * Math.PI));
        // Rounded to what is printed, and never a negative zero.
        double headingMiss = 0.0 + Math.rint(100 * Math.toDegrees(laid.totalTurning() - 2 * Math.PI * turns)) / 100;
        boolean closes = laid.planeGap() <= tolerance
                && Math.abs(laid.altitudeGap()) <= tolerance
                && Math.abs(headingMiss) <= HEADING_TOLERANCE_DEG;
        if (!closes) {
            throw new InvalidValueException(
                    "circuit",
                    String.format(
                            Locale.ROOT,
                            "it does not close: its end misses its start by %.2f m on the plane, %.2f m in altitude and"
                                    + " %.2f° in heading",
                            laid.planeGap(),
                            laid.altitudeGap(),
                            headingMiss),
                    "change lengths, radii or slopes, or allow it with closureToleranceM (now " + Check.text(tolerance)
                            + " m; 0.5° in heading)");
        }
        return this;
    }

    /** The same track with timing sectors that end at these distances (m, rising; the last is the length). */
    public Track withSectorEnds(double... ends) {
        Check.rising("sectorEndsM", ends);
        boolean fits = ends.length > 0 && ends[0] > 0 && Math.abs(ends[ends.length - 1] - length()) <= 1;
        if (!fits) {
            throw new InvalidValueException(
                    "sectorEndsM",
                    "the sectors do not cover the track",
                    "list rising distances above 0 of which the last is the length, " + Check.text(length()) + " m");
        }
        double[] exact = ends.clone();
        exact[exact.length - 1] = length();
        return with(marks.ending(exact));
    }

    private Track with(Marks other) {
        return new Track(name, closed, start, points, other);
    }

    /** The same track with names for the corners that lie at these distances. */
    public Track withCornerNames(List<NamedPlace> names) {
        return with(marks.with(List.copyOf(names), marks.corners()));
    }

    /**
     * The same track with these corners, instead of those found by its curvature: for a line along a road, whose corners are
     * the road's. A mirrored track, or one with another start, finds its own again.
     */
    public Track withCorners(List<Corner> known) {
        for (Corner corner : known) {
            Check.inRange("corner's entry (m)", corner.entry(), 0, length());
            Check.inRange("corner's exit (m)", corner.exit(), 0, length());
        }
        return with(marks.with(marks.cornerNames(), List.copyOf(known)));
    }

    /**
     * The same track with limits of their own for stretches of it. Where several hold, the last in the list does.
     *
     * @throws InvalidValueException if one lies beyond the end, or on an open run ends before it begins
     */
    public Track withLimits(List<TrackLimit> limits) {
        for (TrackLimit limit : limits) {
            Check.inRange("track limit's start (m)", limit.from(), 0, length());
            Check.inRange("track limit's end (m)", limit.to(), 0, length());
            if (!closed && limit.to() < limit.from()) {
                throw new InvalidValueException(
                        "track limit",
                        "it ends at " + Check.text(limit.to()) + " m, before it begins at " + Check.text(limit.from())
                                + " m",
                        "let it end behind its start; only a circuit goes on over its start line");
            }
        }
        return with(marks.limited(List.copyOf(limits)));
    }

    /** The same track, its path said to be the road's own line or one that a car drove. */
    public Track withPath(Path kind) {
        return with(marks.of(kind));
    }

    /**
     * The same track laid out from another direction and altitude.
     *
     * @param heading at s = 0, rad, counter-clockwise from the x axis (east)
     * @param altitude at s = 0, m
     */
    public Track laidOut(double heading, double altitude) {
        Check.finite("start heading (rad)", heading);
        Check.inRange("start altitude (m)", altitude, -500, 6000);
        return new Track(name, closed, new Start(start.speed(), heading, altitude), points, marks);
    }

    /** The mirror image: every left turn becomes a right turn. Heading is mirrored about the x axis. */
    public Track mirrored() {
        List<TrackPoint> mirror = new ArrayList<>(points.size());
        for (TrackPoint p : points) {
            mirror.add(new TrackPoint(
                    p.s(),
                    -p.curvature(),
                    p.slope(),
                    -p.bank(),
                    p.verticalCurvature(),
                    p.grip(),
                    p.widthRight(),
                    p.widthLeft(),
                    p.speedLimit()));
        }
        Start turned = new Start(start.speed(), -start.heading(), start.altitude());
        Marks kept = marks.with(marks.cornerNames(), List.of())
                .limited(marks.limits().stream().map(TrackLimit::mirrored).toList());
        return new Track(name, closed, turned, mirror, kept);
    }

    /** The same closed circuit with its start line moved forward by {@code distance} (m). Sectors become thirds. */
    public Track startingAt(double distance) {
        if (!closed) {
            throw new InvalidValueException("track", "an open run has only one start", "use a closed circuit");
        }
        double length = length();
        Check.inRange("start (m)", distance, 0, length);
        List<TrackPoint> moved = new ArrayList<>(points.size() + 2);
        moved.add(pointAt(distance).at(0));
        for (TrackPoint p : points) {
            if (p.s() > distance) {
                moved.add(p.at(p.s() - distance));
            }
        }
        for (TrackPoint p : points) {
            if (p.s() <= distance) {
                moved.add(p.at(p.s() + length - distance));
            }
        }
        moved.add(pointAt(distance).at(length));
        double heading = stations(StationSpacing.DEFAULT).headingAt(distance);
        List<NamedPlace> names = new ArrayList<>();
        for (NamedPlace n : marks.cornerNames()) {
            names.add(n.at((n.s() - distance + length) % length));
        }
        List<TrackLimit> limits = marks.limits().stream()
                .map(limit -> limit.between(
                        (limit.from() - distance + length) % length, (limit.to() - distance + length) % length))
                .toList();
        return new Track(
                name,
                true,
                new Start(0, heading, start.altitude()),
                moved,
                marks.ending(thirds(length))
                        .with(List.copyOf(names), List.of())
                        .limited(limits)
                        .known(new double[0]));
    }

    /** The track's values at a distance (m) within its length, by linear variation; after a jump. */
    public TrackPoint pointAt(double distance) {
        Check.inRange("distance (m)", distance, 0, length());
        int low = before(distance);
        return TrackPoint.between(points.get(low), points.get(low + 1), distance);
    }

    /** The last point, but for the very last, that does not lie behind a distance; after a jump. */
    private int before(double distance) {
        int low = 0;
        int high = points.size() - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (points.get(middle).s() <= distance) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** The stations at which a lap is solved. Depends on the track alone, never on the car. */
    public Stations stations(StationSpacing spacing) {
        return new StationPlan(this, spacing).lay();
    }

    /** The track's own points as stations, for a track whose points already lie as a solver needs them. */
    public Stations stationsAtPoints() {
        return new Stations(this, points);
    }

    /** Name for people. */
    public String name() {
        return name;
    }

    /** True for a circuit, false for an open run such as a hillclimb. */
    public boolean isClosed() {
        return closed;
    }

    /** Speed at the start of an open run, m/s. */
    public double entrySpeed() {
        return start.speed();
    }

    /** Heading at s = 0, rad, counter-clockwise from the x axis (east). */
    public double startHeading() {
        return start.heading();
    }

    /** Altitude at s = 0, m. */
    public double startAltitude() {
        return start.altitude();
    }

    /** Length of the path along the road surface, m. */
    public double length() {
        return points.get(points.size() - 1).s();
    }

    /** The points that define the track; unmodifiable. */
    public List<TrackPoint> points() {
        return points;
    }

    /** Distances at which the timing sectors end, m; the last is the length. A copy. */
    public double[] sectorEnds() {
        return marks.sectorEnds().clone();
    }

    /** Names given to corners. */
    public List<NamedPlace> cornerNames() {
        return marks.cornerNames();
    }

    /**
     * The same track with what is not known of its curvature: the standard deviation at each of its points, 1/m. It is lost where
     * points are made anew.
     *
     * @param deviation as many as points; copied
     */
    public Track withCurvatureDeviation(double[] deviation) {
        if (deviation.length != points.size()) {
            throw new InvalidValueException(
                    "curvature deviation",
                    deviation.length + " values for " + points.size() + " points",
                    "give one for each point");
        }
        for (double value : deviation) {
            Check.inRange("curvature deviation (1/m)", value, 0, 1);
        }
        return with(marks.known(deviation.clone()));
    }

    /** Standard deviation of the curvature at each of the points, 1/m; empty where it is not known. A copy. */
    public double[] curvatureDeviation() {
        return marks.deviation().clone();
    }

    /** Length over which errors of the curvature go together, m. */
    public double curvatureErrorLength() {
        return marks.doubt().errorLength().orElse(RoadDoubt.USUAL_ERROR_LENGTH);
    }

    /** The same track with doubt as stated. */
    public Track doubting(RoadDoubt doubt) {
        return with(marks.doubted(doubt));
    }

    /** What is stated of how well it is known, beside the deviation of its curvature. */
    public RoadDoubt doubt() {
        return marks.doubt();
    }

    /** The same, said to be a line that was sought between a road's edges. */
    public Track asLine() {
        return with(marks.ofLine());
    }

    /** Whether it is a line that was sought between a road's edges. */
    public boolean isLine() {
        return marks.line();
    }

    /**
     * The same track off by factors at each of its points: its corners are those it has now, its path is laid out anew.
     *
     * @param curvature factor at each point; not modified
     * @param grip factor at each point; not modified
     */
    public Track deviating(double[] curvature, double[] grip) {
        List<TrackPoint> off = new ArrayList<>(points.size());
        for (int i = 0; i < points.size(); i++) {
            off.add(points.get(i).deviating(curvature[i], grip[i]));
        }
        List<Corner> corners =
                marks.corners().isEmpty() ? stations(StationSpacing.DEFAULT).corners() : marks.corners();
        return new Track(name, closed, start, off, marks.with(marks.cornerNames(), corners));
    }

    /** Standard deviation of the curvature at a distance (m) within its length, 1/m; NaN where it is not known. */
    public double curvatureDeviationAt(double distance) {
        Check.inRange("distance (m)", distance, 0, length());
        double[] deviation = marks.deviation();
        if (deviation.length == 0) {
            return Double.NaN;
        }
        int i = before(distance);
        double step = points.get(i + 1).s() - points.get(i).s();
        double share = step > 0 ? Math.min(1, (distance - points.get(i).s()) / step) : 0;
        return deviation[i] + share * (deviation[i + 1] - deviation[i]);
    }

    /** The same, with the word that transitions were laid where curvature would have jumped, though nobody gave their length (m). */
    Track withUsualTransitions(double length) {
        return with(marks.laid(length));
    }

    /** Length of the transitions that were laid where curvature would have jumped, though nobody gave one, m; 0 for none. */
    public double usualTransitions() {
        return marks.transition();
    }

    /** Limits of their own for stretches of it; unmodifiable. */
    public List<TrackLimit> limits() {
        return marks.limits();
    }

    /** Whether the path is the road's own line or one that a car drove. */
    public Path path() {
        return marks.path();
    }

    /** Corners given to it; empty where they are found by curvature. */
    List<Corner> knownCorners() {
        return marks.corners();
    }
}
