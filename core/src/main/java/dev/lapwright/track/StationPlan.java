package dev.lapwright.track;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Graded mesh of stations on a track: even where curvature is smooth, and ever closer, with the square of the distance, towards
 * the places where the derivative of a bend's curvature jumps. There a car leaves its cornering limit with e - e0 growing as
 * s^1.5 (the speed it may add is the square root of the grip it has left), and stations spaced as i² keep a one-step
 * integrator at its full order where even spacing would hold it at 1.5 (graded meshes: e.g. Brunner, Collocation Methods
 * for Volterra Equations, 2004, section 6.2).
 *
 * <p>Where nearly all points lie closer than stations need, they are samples of a smooth path, as those of a line found or of a survey: a change
 * of course from one to the next is no jump. There, where values vary linearly over several points to a small tolerance, those between are passed over.
 * A chord lies on one side of what it spans, all along a bend; so the turning that it leaves out is given back to the stations at its ends, half to each.
 */
final class StationPlan {
    /** Length of the zone of growing steps beside such a place, in units of the spacing in curves. */
    private static final double GRADED_STEPS = 5;
    /** A change of the curvature's course counts if it would alter the curvature by this share within 10 m. */
    private static final double KINK_SHARE = 0.02;

    /** At the default spacing no step in a bend is longer than this share of its radius. */
    private static final double STEP_PER_RADIUS = 0.06;

    /** First step of a straight at the default spacing, m, and growth of the steps over the distance from its end. */
    private static final double STRAIGHT_FIRST = 2.5;

    private static final double STRAIGHT_GROWTH = 0.05;
    /** Keeps a whole number of steps whole where distances carry rounding. */
    private static final double ROUNDING = 1e-6;

    private static final double STANDING_FIRST = 0.05;
    private static final double STANDING_GROWTH = 0.12;
    /** A station this near the start is the start, m. */
    private static final double NEAR_START = 1e-3;

    private static final double STRAIGHT_CURVATURE = 1e-7;

    /** At the default spacing no step over points that are passed over turns farther, rad. */
    private static final double PASSED_TURN = 0.04;
    /**
     * At the default spacing points are passed over that lie so near to the line between those kept: in curvature, 1/m; in slope and bank, rad; in
     * grip; in width, m. It keeps the laps of lines found within half a millisecond of those with all points.
     */
    private static final double PASSED_CURVATURE = 5e-6;

    /** Share of the length that lies between close points where a path is sampled. */
    private static final double SAMPLED_SHARE = 0.9;

    private static final double PASSED_ANGLE = 1e-4;
    private static final double PASSED_GRIP = 2e-4;
    private static final double PASSED_WIDTH = 0.1;

    private final Track track;
    private final StationSpacing spacing;
    private final List<TrackPoint> points;
    private final boolean sampled;
    private final List<TrackPoint> laid = new ArrayList<>();
    /** Distances of points that stay: corners known begin and end there. */
    private final Set<Double> marked = new HashSet<>();

    private final List<Passed> passed = new ArrayList<>();

    /**
     * Chord over points that were passed over.
     *
     * @param station where it begins
     * @param missing turning that it leaves out, rad
     */
    private record Passed(int station, double missing) {}

    StationPlan(Track track, StationSpacing spacing) {
        this.track = track;
        for (Corner corner : track.knownCorners()) {
            marked.add(corner.entry());
            marked.add(corner.exit());
        }
        this.spacing = spacing;
        this.points = track.points();
        sampled = isSampled();
    }

    Stations lay() {
        int last = points.size() - 1;
        boolean passing = track.isClosed() && last >= 3 && isPassedStraight();
        int first = passing ? 1 : 0;
        int end = passing ? last - 1 : last;
        List<TrackPoint> overStart = passing ? layAcrossStart(last) : List.of();
        laid.add(points.get(0));
        for (TrackPoint p : overStart) {
            if (p.s() > track.length()) {
                laid.add(p.at(p.s() - track.length()));
            }
        }
        if (passing) {
            laid.add(points.get(1));
        }
        int i = first;
        while (i < end) {
            int next = passingOver(i, end);
            TrackPoint a = points.get(i);
            TrackPoint b = points.get(next);
            if (b.s() > a.s() && next == i + 1) {
                boolean standingStart = i == 0 && !track.isClosed();
                boolean graded = !isDense(i);
                layInterval(a, b, standingStart || (graded && isKink(i)), graded && isKink(next));
            }
            if (next > i + 1) {
                passed.add(new Passed(laid.size() - 1, missing(i, next)));
            }
            laid.add(b);
            i = next;
        }
        if (passing) {
            for (TrackPoint p : overStart) {
                if (p.s() < track.length()) {
                    laid.add(p);
                }
            }
            laid.add(points.get(last));
        }
        giveBack();
        return new Stations(track, laid);
    }

    /** Turning of the points from one to another beyond that of the chord between the two, rad. */
    private double missing(int from, int to) {
        double turning = 0;
        for (int i = from; i < to; i++) {
            turning += turning(points.get(i), points.get(i + 1));
        }
        return turning - turning(points.get(from), points.get(to));
    }

    private static double turning(TrackPoint a, TrackPoint b) {
        return 0.5 * (b.s() - a.s()) * (a.curvature() + b.curvature());
    }

    private void giveBack() {
        int last = laid.size() - 1;
        double[] missing = new double[laid.size()];
        for (Passed chord : passed) {
            missing[chord.station()] += chord.missing();
            missing[chord.station() + 1] += chord.missing();
        }
        if (track.isClosed()) {
            missing[0] += missing[last];
            missing[last] = missing[0];
        }
        for (int i = 0; i <= last; i++) {
            if (missing[i] != 0) {
                // Half of it, over half of the cells beside.
                double length = cell(i - 1) + cell(i);
                laid.set(i, laid.get(i).bending(laid.get(i).curvature() + missing[i] / length));
            }
        }
    }

    /** Length of the cell behind a station; round the start of a closed track, none beyond an open end. */
    private double cell(int i) {
        int cells = laid.size() - 1;
        if (!track.isClosed() && (i < 0 || i >= cells)) {
            return 0;
        }
        int k = Math.floorMod(i, cells);
        return laid.get(k + 1).s() - laid.get(k).s();
    }

    /** The point after one that is the next station to be, the points between passed over; the very next where none is. */
    private int passingOver(int from, int end) {
        int to = from + 1;
        while (to < end
                && isDense(from)
                && isDense(to)
                && !marked.contains(points.get(to).s())
                && mayPass(from, to + 1)) {
            to++;
        }
        return to;
    }

    /** Whether the interval that begins at a point, on a path that is sampled, is no longer than a step in a bend. */
    private boolean isDense(int i) {
        return sampled && isShort(i);
    }

    private boolean isShort(int i) {
        double length = points.get(i + 1).s() - points.get(i).s();
        return length > 0 && length <= spacing.curved();
    }

    private boolean isSampled() {
        double close = 0;
        for (int i = 0; i + 1 < points.size(); i++) {
            close += isShort(i) ? points.get(i + 1).s() - points.get(i).s() : 0;
        }
        return close > SAMPLED_SHARE * track.length();
    }

    private boolean mayPass(int from, int to) {
        TrackPoint a = points.get(from);
        TrackPoint b = points.get(to);
        double finer = spacing.curved() / StationSpacing.DEFAULT.curved();
        double length = b.s() - a.s();
        double tightest = Math.max(Math.abs(a.curvature()), Math.abs(b.curvature()));
        boolean tooLong = length > spacing.straight()
                || length * tightest > PASSED_TURN * finer
                || (!track.isClosed() && length > STANDING_GROWTH * finer * a.s());
        if (tooLong) {
            return false;
        }
        for (int i = from + 1; i < to; i++) {
            TrackPoint p = points.get(i);
            // Curvature tells most; the rest is looked at where it does not.
            double curvature = TrackPoint.curvatureBetween(a, b, p.s());
            if (!(Math.abs(p.curvature() - curvature) <= PASSED_CURVATURE * finer * finer)
                    || !isBetween(p, TrackPoint.between(a, b, p.s()), finer * finer)) {
                return false;
            }
        }
        return true;
    }

    private static boolean isBetween(TrackPoint p, TrackPoint line, double share) {
        return Math.abs(p.curvature() - line.curvature()) <= PASSED_CURVATURE * share
                && Math.abs(p.verticalCurvature() - line.verticalCurvature()) <= PASSED_CURVATURE * share
                && Math.abs(p.slope() - line.slope()) <= PASSED_ANGLE * share
                && Math.abs(p.bank() - line.bank()) <= PASSED_ANGLE * share
                && Math.abs(p.grip() - line.grip()) <= PASSED_GRIP * share
                && Math.abs(p.widthLeft() - line.widthLeft()) <= PASSED_WIDTH * share
                && Math.abs(p.widthRight() - line.widthRight()) <= PASSED_WIDTH * share
                && p.speedLimit() == line.speedLimit();
    }

    /** Whether a closed track's first point lies on the line between its neighbours, so that nothing happens there. */
    private boolean isPassedStraight() {
        int last = points.size() - 1;
        TrackPoint before = points.get(last - 1);
        TrackPoint after = points.get(1).at(points.get(1).s() + track.length());
        return before.s() < track.length()
                && after.s() > track.length()
                && points.get(last).isNear(TrackPoint.between(before, after, track.length()));
    }

    /**
     * Stations between the last point but one and the first but one, the line between them laid as one, so that the other
     * stations do not depend on where on it the lap starts.
     */
    private List<TrackPoint> layAcrossStart(int last) {
        TrackPoint after = points.get(1).at(points.get(1).s() + track.length());
        layInterval(points.get(last - 1), after, isKink(last - 1), isKink(1));
        List<TrackPoint> across = new ArrayList<>(laid);
        laid.clear();
        across.removeIf(p -> Math.abs(p.s() - track.length()) < NEAR_START);
        return across;
    }

    private boolean isKink(int i) {
        TrackPoint here = points.get(i);
        if (Math.abs(here.curvature()) < 5e-4) {
            return false;
        }
        double before = slopeOfCurvature(i, -1);
        double after = slopeOfCurvature(i, 1);
        if (Double.isInfinite(before) || Double.isInfinite(after)) {
            return true;
        }
        return Math.abs(after - before) * 10 > KINK_SHARE * Math.abs(here.curvature());
    }

    /** Change of curvature with distance on the side of point i given by step; infinite at a jump or an open end. */
    private double slopeOfCurvature(int i, int step) {
        int last = points.size() - 1;
        int from = i;
        if (from + step < 0 || from + step > last) {
            if (!track.isClosed()) {
                return Double.POSITIVE_INFINITY;
            }
            from = step > 0 ? 0 : last;
        }
        TrackPoint a = points.get(from);
        TrackPoint b = points.get(from + step);
        if (a.s() == b.s()) {
            return a.curvature() == b.curvature() ? 0 : Double.POSITIVE_INFINITY;
        }
        return (b.curvature() - a.curvature()) / (b.s() - a.s());
    }

    private void layInterval(TrackPoint a, TrackPoint b, boolean gradedStart, boolean gradedEnd) {
        double length = b.s() - a.s();
        boolean straight = Math.abs(a.curvature()) < STRAIGHT_CURVATURE && Math.abs(b.curvature()) < STRAIGHT_CURVATURE;
        double tightest = Math.max(Math.abs(a.curvature()), Math.abs(b.curvature()));
        double curved = spacing.curved() * Math.min(1, STEP_PER_RADIUS / (StationSpacing.DEFAULT.curved() * tightest));
        double step = straight ? spacing.straight() : curved;
        if (straight && !gradedEnd) {
            layStraight(a, b, gradedStart);
            return;
        }
        if (length <= step && !gradedStart && !gradedEnd) {
            return;
        }
        // A graded zone reaches the even step at its far end: nodes zone·(i/m)², last step ≈ 2·zone/m.
        double zone = GRADED_STEPS * StationSpacing.DEFAULT.curved();
        int zones = (gradedStart ? 1 : 0) + (gradedEnd ? 1 : 0);
        double zoneLength = zones == 0 ? 0 : Math.min(zone, length / zones);
        int zoneCells = (int) Math.max(3, Math.ceil(2 * zoneLength / curved - ROUNDING));
        double from = a.s();
        double to = b.s();
        if (gradedStart) {
            for (int i = 1; i < zoneCells; i++) {
                add(a, b, from + zoneLength * i * i / (zoneCells * (double) zoneCells));
            }
            from += zoneLength;
        }
        if (gradedEnd) {
            to -= zoneLength;
        }
        boolean middle = to - from > 1e-9 * length;
        if (gradedStart && (middle || gradedEnd)) {
            add(a, b, from);
        }
        if (middle) {
            int cells = (int) Math.ceil((to - from) / step - ROUNDING);
            for (int i = 1; i < cells; i++) {
                add(a, b, from + (to - from) * i / cells);
            }
            if (gradedEnd) {
                add(a, b, to);
            }
        }
        if (gradedEnd) {
            for (int i = zoneCells - 1; i >= 1; i--) {
                add(a, b, b.s() - zoneLength * i * i / (zoneCells * (double) zoneCells));
            }
        }
    }

    /**
     * Steps that grow from both ends: at the ends the car is slow, and a step's length over v² says how much a step changes
     * the speed. From a standing start v² grows from nothing with the distance, and so do the steps.
     */
    private void layStraight(TrackPoint a, TrackPoint b, boolean standingStart) {
        double half = 0.5 * (b.s() - a.s());
        List<Double> before = standingStart
                ? growing(half, STANDING_FIRST, STANDING_GROWTH)
                : growing(half, STRAIGHT_FIRST, STRAIGHT_GROWTH);
        for (double d : before) {
            add(a, b, a.s() + d);
        }
        List<Double> after = growing(half, STRAIGHT_FIRST, STRAIGHT_GROWTH);
        // The middle is there already.
        for (int i = after.size() - 2; i >= 0; i--) {
            add(a, b, b.s() - after.get(i));
        }
    }

    /** Distances of stations from an end, the last of them {@code half}. */
    private List<Double> growing(double half, double first, double growth) {
        double scale = spacing.straight() / StationSpacing.DEFAULT.straight();
        List<Double> places = new ArrayList<>();
        double d = 0;
        while (d < half) {
            d += Math.min(spacing.straight(), scale * (first + growth * d));
            places.add(d);
        }
        // Stretched so that a whole number of steps meets the middle.
        double stretch = half / d;
        places.replaceAll(place -> place * stretch);
        return places;
    }

    private void add(TrackPoint a, TrackPoint b, double s) {
        laid.add(TrackPoint.between(a, b, s));
    }
}
