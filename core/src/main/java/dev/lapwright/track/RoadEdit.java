package dev.lapwright.track;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Corrections of a road by hand: the radius of a corner at its apex, its bank and width, and the length of a straight, with the
 * rest refitted so that the circuit still closes. Immutable; each correction gives a new edit.
 *
 * <p>Of a corner's curvature that part is scaled which exceeds a straight's, with the turning of each of its pieces kept, so that
 * curvature stays continuous and greatest at the apex and every heading stays what it was. Closing is then linear: a piece of road whose length is
 * stretched by 1 + ε at the same headings moves the end by ε times its own displacement d. The least ∫ε²/w ds under
 * Σ(1 + ε)d = 0 is ε = w λ·t with t the direction of the road and two Lagrange multipliers λ. The weight w is 1 on a straight and
 * falls to {@value #CORNER_WEIGHT} in corners; what was corrected keeps its length. What altitude misses is spread over all slopes.
 */
public final class RoadEdit {
    /** Where a corner begins, 1/m, as {@link CornerFinder} has it. */
    private static final double STRAIGHT = CornerFinder.KEEP;

    private static final double CORNER_WEIGHT = 0.02;
    private static final double CLOSED = 1e-4;
    private static final int ROUNDS = 12;
    private static final double LEAST_STRETCH = 0.3;
    private static final double MOST_STRETCH = 3;
    /** Length over which a width changes beside a corner, m. */
    private static final double EASE = 20;
    /** A corner is no shorter than that, m. */
    private static final double LEAST_PART = 3;

    private final Track track;
    private final Stations stations;
    private final List<Change> changes;

    /** What is set; the last is left where it is not. */
    private enum Kind {
        RADIUS,
        BANK,
        WIDTH,
        STRAIGHT,
        MERGE,
        SPLIT;

        /** Whether it leaves the road as it is, and says how its corners are told apart. */
        boolean isTold() {
            return this == MERGE || this == SPLIT;
        }
    }

    private record Change(Kind kind, Corner corner, double value) {}

    /**
     * The road as corrected.
     *
     * @param track with its sectors and names moved along
     * @param farthestMove of any place of the road on the plane, both laid about their middles, m
     * @param leastStretch by which factor the most shortened piece of road not corrected changed
     * @param mostStretch by which factor the most lengthened one changed
     */
    public record Result(Track track, double farthestMove, double leastStretch, double mostStretch) {}

    private RoadEdit(Track track, Stations stations, List<Change> changes) {
        this.track = track;
        this.stations = stations;
        this.changes = List.copyOf(changes);
    }

    /** No correction yet. */
    public static RoadEdit of(Track track) {
        return new RoadEdit(track, track.stations(StationSpacing.DEFAULT), List.of());
    }

    private RoadEdit with(Kind kind, Corner corner, double value) {
        List<Change> more = new ArrayList<>(changes);
        more.add(new Change(kind, corner, value));
        return new RoadEdit(track, stations, more);
    }

    /** The same with a corner's smallest radius set, m. */
    public RoadEdit radius(Corner corner, double radius) {
        Check.inRange("radius of " + corner.label() + " (m)", radius, 3, 400);
        return with(Kind.RADIUS, corner, radius);
    }

    /** The same with the bank at a corner's apex set, rad, positive where it helps the corner. */
    public RoadEdit bank(Corner corner, double bank) {
        Check.inRange("bank of " + corner.label() + " (deg)", Math.toDegrees(bank), -57, 57);
        return with(Kind.BANK, corner, bank);
    }

    /** The same with the width of the whole road in a corner set, m; shared between the sides as before. */
    public RoadEdit width(Corner corner, double width) {
        Check.inRange("width of " + corner.label() + " (m)", width, 1, 100);
        return with(Kind.WIDTH, corner, width);
    }

    /** The same with the length of the straight that leads to a corner set, m. */
    public RoadEdit straightBefore(Corner corner, double length) {
        Check.inRange("straight before " + corner.label() + " (m)", length, 1, 50_000);
        return with(Kind.STRAIGHT, corner, length);
    }

    /**
     * The same with a corner and the one behind it told as one, though the road between them is straight enough for two.
     *
     * @throws InvalidValueException if there is none behind it, or it bends to the other side
     */
    public RoadEdit merged(Corner corner) {
        Corner next = next(corner);
        if (next == null || next.left() != corner.left()) {
            throw new InvalidValueException(
                    corner.label(),
                    next == null
                            ? "there is no corner behind it"
                            : "it bends to the " + side(corner) + " and " + next.label() + " to the " + side(next)
                                    + ": they are no one corner",
                    "merge corners that bend to one side, by the first of them");
        }
        return with(Kind.MERGE, corner, 0);
    }

    private static String side(Corner corner) {
        return corner.left() ? "left" : "right";
    }

    /** The corner behind another; null where there is none. */
    private Corner next(Corner corner) {
        List<Corner> corners = stations.corners();
        int behind = corners.indexOf(corner) + 1;
        boolean round = track.isClosed() && corners.size() > 1;
        return behind < corners.size() ? corners.get(behind) : round ? corners.get(0) : null;
    }

    /**
     * The same with a corner told as two.
     *
     * @param place at which the first ends and the second begins, m
     * @throws InvalidValueException if it does not lie well inside the corner
     */
    public RoadEdit split(Corner corner, double place) {
        boolean inside =
                corner.contains(place) && corner.contains(place - LEAST_PART) && corner.contains(place + LEAST_PART);
        if (!inside) {
            throw new InvalidValueException(
                    corner.label(),
                    Check.text(place) + " m is no place inside it",
                    "name one between " + Math.round(corner.entry()) + " and " + Math.round(corner.exit())
                            + " m, some metres from its ends");
        }
        return with(Kind.SPLIT, corner, place);
    }

    /** What is said of corners by the document and by these corrections, at the distances of the road as it was. */
    private List<Track.NamedPlace> told() {
        List<Track.NamedPlace> told = new ArrayList<>(track.cornerNames());
        for (Change change : changes) {
            if (change.kind == Kind.SPLIT) {
                told.add(new Track.NamedPlace(change.value, "", Track.NamedPlace.Mark.SPLIT));
            } else if (change.kind == Kind.MERGE) {
                merge(told, change.corner, next(change.corner));
            }
        }
        return told;
    }

    /** Two that were split are put together again; others are joined in the middle between them. */
    private void merge(List<Track.NamedPlace> told, Corner first, Corner second) {
        double gap = second.entry() - first.exit();
        gap += gap < 0 ? track.length() : 0;
        double seam = first.exit();
        boolean wasSplit = told.removeIf(
                place -> place.mark() == Track.NamedPlace.Mark.SPLIT && Math.abs(place.s() - seam) < LEAST_PART);
        if (!wasSplit) {
            told.add(new Track.NamedPlace((first.exit() + gap / 2) % track.length(), "", Track.NamedPlace.Mark.JOIN));
        }
    }

    /**
     * Makes the corrections and refits the rest.
     *
     * @throws InvalidValueException if a corner has no straight before it, or the rest would have to change beyond what is likely
     *     to be meant
     */
    public Result edited() {
        if (changes.stream().allMatch(change -> change.kind.isTold())) {
            return new Result(track.withCornerNames(told()), 0, 1, 1);
        }
        return new Refit().result();
    }

    /** Refit of the road about its corrections: columns of the stations while they are changed. */
    private final class Refit {
        private final int cells = stations.count() - 1;
        private final double[] s = stations.s();
        private final double[] was = stations.curvature();
        private final double[] curvature = stations.curvature();
        private final double[] slope = stations.slope();
        private final double[] bank = stations.bank();
        private final double[] left = stations.widthLeft();
        private final double[] right = stations.widthRight();
        private final double[] length = new double[cells];
        private final double[] stretch = new double[cells];
        /** Weight of closing, 0 where a correction holds. */
        private final double[] weight = new double[cells];

        Result result() {
            for (int i = 0; i < cells; i++) {
                length[i] = s[i + 1] - s[i];
                stretch[i] = 1;
                double bend = Math.abs(was[i] + was[i + 1]) / 2;
                weight[i] = Math.max(CORNER_WEIGHT, 1 - bend / STRAIGHT);
            }
            for (Change change : changes) {
                switch (change.kind) {
                    case RADIUS -> scale(change.corner, change.value);
                    case BANK -> tilt(change.corner, change.value);
                    case WIDTH -> widen(change.corner, change.value);
                    case STRAIGHT -> lengthen(change.corner, change.value);
                    case MERGE, SPLIT -> {
                        // They change no road.
                    }
                }
            }
            if (track.isClosed()) {
                close();
            }
            Track made = track();
            return new Result(
                    made,
                    farthest(made.stationsAtPoints()),
                    least(),
                    Arrays.stream(stretch).max().orElse(1));
        }

        private double least() {
            return Arrays.stream(stretch).min().orElse(1);
        }

        /** How much of a corner a station is: 0 at its ends, 1 at its apex. */
        private double share(int station, Corner corner) {
            double side = corner.left() ? 1 : -1;
            double peak = 1 / corner.minimumRadius();
            return Math.max(0, Math.min(1, (side * was[station] - STRAIGHT) / (peak - STRAIGHT)));
        }

        private boolean inside(int cell, Corner corner) {
            return corner.contains((s[cell] + s[cell + 1]) / 2);
        }

        private void scale(Corner corner, double radius) {
            // What exceeds the curvature of a straight is scaled, so that no flank becomes tighter than the apex.
            double factor = (1 / radius - STRAIGHT) / (1 / corner.minimumRadius() - STRAIGHT);
            double side = corner.left() ? 1 : -1;
            boolean[] done = new boolean[cells + 1];
            for (int i = 0; i < cells; i++) {
                if (inside(i, corner)) {
                    for (int k = i; k <= i + 1; k++) {
                        if (!done[k]) {
                            curvature[k] += side * (factor - 1) * Math.max(0, side * was[k] - STRAIGHT);
                            done[k] = true;
                        }
                    }
                }
            }
            for (int i = 0; i < cells; i++) {
                if (inside(i, corner)) {
                    double bend = curvature[i] + curvature[i + 1];
                    length[i] *= bend == 0 ? 1 : (was[i] + was[i + 1]) / bend;
                    weight[i] = 0;
                }
            }
        }

        private void tilt(Corner corner, double helping) {
            double side = corner.left() ? 1 : -1;
            for (int i = 0; i <= cells; i++) {
                if (corner.contains(s[i])) {
                    bank[i] += share(i, corner) * (side * helping - bank[i]);
                }
            }
        }

        private void widen(Corner corner, double width) {
            for (int i = 0; i <= cells; i++) {
                double share = Math.max(0, 1 - beyond(s[i], corner) / EASE);
                double both = left[i] + right[i];
                double leftShare = both > 0 ? left[i] / both : 0.5;
                left[i] += share * (leftShare * width - left[i]);
                right[i] += share * ((1 - leftShare) * width - right[i]);
            }
        }

        /** How far a place lies outside a corner, m. */
        private double beyond(double place, Corner corner) {
            if (corner.contains(place)) {
                return 0;
            }
            double before = corner.entry() - place;
            double behind = place - corner.exit();
            if (track.isClosed()) {
                before -= track.length() * Math.floor(before / track.length());
                behind -= track.length() * Math.floor(behind / track.length());
                return Math.min(before, behind);
            }
            return Math.max(before, behind);
        }

        private void lengthen(Corner corner, double wanted) {
            List<Corner> corners = stations.corners();
            int at = corners.indexOf(corner);
            boolean first = at == 0 && !track.isClosed();
            double from = first
                    ? 0
                    : corners.get((at + corners.size() - 1) % corners.size()).exit();
            double to = corner.entry();
            double now = to - from;
            if (track.isClosed() && now < 0) {
                now += track.length();
            }
            if (!(now >= 1)) {
                throw new InvalidValueException(
                        "straight before " + corner.label(),
                        "there is none: the corner before ends where this one begins",
                        "set a radius instead, or name another straight");
            }
            for (int i = 0; i < cells; i++) {
                double middle = (s[i] + s[i + 1]) / 2;
                boolean on = from <= to ? middle > from && middle < to : middle > from || middle < to;
                if (on) {
                    length[i] *= wanted / now;
                    weight[i] = 0;
                }
            }
            for (int i = 0; i <= cells; i++) {
                boolean on = from <= to ? s[i] > from && s[i] < to : s[i] > from || s[i] < to;
                curvature[i] *= on ? now / wanted : 1;
            }
        }

        private void close() {
            double turned = stations.totalTurning();
            for (int round = 0; round < ROUNDS; round++) {
                Stations laid = laid();
                spread(laid, turned);
                laid = laid();
                if (laid.planeGap() < CLOSED && Math.abs(laid.altitudeGap()) < CLOSED) {
                    return;
                }
                double rise = laid.altitudeGap() / laid.s()[cells];
                for (int i = 0; i <= cells; i++) {
                    slope[i] -= rise;
                }
                step(laid);
            }
            throw new InvalidValueException(
                    "circuit",
                    "it does not close again: " + Check.text(Math.rint(100 * laid().planeGap()) / 100) + " m are left",
                    "change less at a time, or set the length of a straight as well");
        }

        /** Takes off evenly what the rounding of the pieces turns too much. */
        private void spread(Stations laid, double turned) {
            double excess = (laid.totalTurning() - turned) / laid.s()[cells];
            for (int i = 0; i <= cells; i++) {
                curvature[i] -= excess;
            }
        }

        private void step(Stations laid) {
            double[] x = laid.x();
            double[] y = laid.y();
            double a = 0;
            double b = 0;
            double c = 0;
            for (int i = 0; i < cells; i++) {
                if (length[i] > 0) {
                    double dx = x[i + 1] - x[i];
                    double dy = y[i + 1] - y[i];
                    a += weight[i] * dx * dx / length[i];
                    b += weight[i] * dx * dy / length[i];
                    c += weight[i] * dy * dy / length[i];
                }
            }
            double determinant = a * c - b * b;
            if (!(determinant > 1e-9 * (a + c) * (a + c))) {
                throw new InvalidValueException(
                        "circuit",
                        "there is no road left to close it with",
                        "leave a straight in each direction uncorrected");
            }
            double gapX = x[cells] - x[0];
            double gapY = y[cells] - y[0];
            double east = (-gapX * c + gapY * b) / determinant;
            double north = (-gapY * a + gapX * b) / determinant;
            double[] by = new double[cells];
            for (int i = 0; i < cells; i++) {
                if (length[i] > 0) {
                    double dx = x[i + 1] - x[i];
                    double dy = y[i + 1] - y[i];
                    by[i] = weight[i] * (east * dx + north * dy) / length[i];
                }
            }
            for (int i = 0; i < cells; i++) {
                stretch[i] *= 1 + by[i];
                if (!(stretch[i] > LEAST_STRETCH && stretch[i] < MOST_STRETCH)) {
                    throw new InvalidValueException(
                            "circuit",
                            "to close it again the road at " + Math.round(s[i]) + " m would have to change to "
                                    + Math.round(100 * stretch[i]) + " % of its length",
                            "change less at a time, or set the length of a straight as well");
                }
                length[i] *= 1 + by[i];
            }
            for (int i = 0; i <= cells; i++) {
                double before = i > 0 ? by[i - 1] : by[cells - 1];
                double behind = i < cells ? by[i] : by[0];
                curvature[i] /= 1 + (before + behind) / 2;
            }
        }

        private List<TrackPoint> points() {
            double[] vertical = stations.verticalCurvature();
            double[] grip = stations.grip();
            double[] limit = stations.speedLimit();
            List<TrackPoint> points = new ArrayList<>(cells + 1);
            double at = 0;
            for (int i = 0; i <= cells; i++) {
                points.add(new TrackPoint(
                        at, curvature[i], slope[i], bank[i], vertical[i], grip[i], left[i], right[i], limit[i]));
                at += i < cells ? length[i] : 0;
            }
            return points;
        }

        private Stations laid() {
            return Track.open(track.name(), 0, points())
                    .laidOut(track.startHeading(), track.startAltitude())
                    .stationsAtPoints();
        }

        private Track track() {
            List<TrackPoint> points = points();
            Track laid = track.isClosed()
                    ? Track.closed(track.name(), points)
                    : Track.open(track.name(), track.entrySpeed(), points);
            double[] ends = track.sectorEnds();
            for (int i = 0; i < ends.length; i++) {
                ends[i] = moved(ends[i], points);
            }
            List<Track.NamedPlace> names = new ArrayList<>();
            for (Track.NamedPlace place : told()) {
                names.add(place.at(moved(place.s(), points)));
            }
            return laid.withSectorEnds(ends)
                    .withCornerNames(names)
                    .withLimits(track.limits().stream()
                            .map(limit -> limit.between(moved(limit.from(), points), moved(limit.to(), points)))
                            .toList())
                    .laidOut(track.startHeading(), track.startAltitude())
                    .withPath(track.path());
        }

        /** Where a distance of the old road is on the new one, m. */
        private double moved(double place, List<TrackPoint> points) {
            int i = 0;
            while (i + 1 < cells && s[i + 1] <= place) {
                i++;
            }
            double step = s[i + 1] - s[i];
            double share = step > 0 ? Math.min(1, (place - s[i]) / step) : 0;
            return points.get(i).s()
                    + share * (points.get(i + 1).s() - points.get(i).s());
        }

        private double farthest(Stations made) {
            double[] x = made.x();
            double[] y = made.y();
            double[] oldX = stations.x();
            double[] oldY = stations.y();
            double east = 0;
            double north = 0;
            double whole = s[cells];
            for (int i = 0; i < cells; i++) {
                double share = (s[i + 1] - s[i]) / whole;
                east += share * (x[i] - oldX[i]);
                north += share * (y[i] - oldY[i]);
            }
            double farthest = 0;
            for (int i = 0; i <= cells; i++) {
                farthest = Math.max(farthest, Math.hypot(x[i] - oldX[i] - east, y[i] - oldY[i] - north));
            }
            return farthest;
        }
    }
}
