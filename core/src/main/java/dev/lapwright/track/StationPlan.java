package dev.lapwright.track;

import java.util.ArrayList;
import java.util.List;

/**
 * Graded mesh of stations on a track: even where curvature is smooth, and ever closer, with the square of the distance, towards
 * the places where the derivative of a bend's curvature jumps. There a car leaves its cornering limit with e - e0 growing as
 * s^1.5 (the speed it may add is the square root of the grip it has left), and stations spaced as i² keep a one-step
 * integrator at its full order where even spacing would hold it at 1.5 (graded meshes: e.g. Brunner, Collocation Methods
 * for Volterra Equations, 2004, section 6.2).
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

    private final Track track;
    private final StationSpacing spacing;
    private final List<TrackPoint> points;
    private final List<TrackPoint> laid = new ArrayList<>();

    StationPlan(Track track, StationSpacing spacing) {
        this.track = track;
        this.spacing = spacing;
        this.points = track.points();
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
        for (int i = first; i < end; i++) {
            TrackPoint a = points.get(i);
            TrackPoint b = points.get(i + 1);
            if (b.s() > a.s()) {
                boolean standingStart = i == 0 && !track.isClosed();
                layInterval(a, b, standingStart || isKink(i), isKink(i + 1));
            }
            laid.add(b);
        }
        if (passing) {
            for (TrackPoint p : overStart) {
                if (p.s() < track.length()) {
                    laid.add(p);
                }
            }
            laid.add(points.get(last));
        }
        return new Stations(track, laid);
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
