package dev.lapwright.track;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Place where the uncertainty of a track's curvature leaves open what a driver would find: a corner or none, one or two.
 *
 * @param kind of question
 * @param s where, m
 * @param corner that it is about; of two the first
 */
public record DoubtfulPlace(Kind kind, double s, Corner corner) {
    /** Corners farther apart than this are two whatever lies between, m. Common practice, no source. */
    private static final double APART = 120;

    private static final double STEP = 2.5;

    /** Questions that it leaves open. */
    public enum Kind {
        /** The bend may be gentler than any corner. */
        CORNER_OR_NONE("a corner or none?"),
        /** One way round: what lies between the two peaks may be as tight as a corner, or straight. */
        ONE_OR_TWO("one corner or two?");

        private final String question;

        Kind(String question) {
            this.question = question;
        }

        /** In words. */
        public String question() {
            return question;
        }
    }

    /** Those of a track, in driving order; none where the deviation of its curvature is not known. */
    public static List<DoubtfulPlace> of(Stations stations) {
        Track track = stations.track();
        List<DoubtfulPlace> found = new ArrayList<>();
        if (track.curvatureDeviation().length == 0) {
            return found;
        }
        List<Corner> corners = stations.corners();
        for (int i = 0; i < corners.size(); i++) {
            Corner corner = corners.get(i);
            double apex = within(track, corner.apex());
            if (1 / corner.minimumRadius() - reach(track, apex) < CornerFinder.ENTER) {
                found.add(new DoubtfulPlace(Kind.CORNER_OR_NONE, apex, corner));
            }
            addDip(found, track, corner);
            boolean last = i == corners.size() - 1;
            if (corners.size() > 1 && (!last || track.isClosed())) {
                addGap(found, track, corner, corners.get((i + 1) % corners.size()));
            }
        }
        found.sort(Comparator.comparingDouble(DoubtfulPlace::s));
        return List.copyOf(found);
    }

    private static double within(Track track, double s) {
        double length = track.length();
        return track.isClosed() ? s - length * Math.floor(s / length) : Math.max(0, Math.min(length, s));
    }

    private static double reach(Track track, double s) {
        return Track.NINE_OF_TEN * track.curvatureDeviationAt(s);
    }

    private static double extent(Track track, double from, double to) {
        double extent = to - from;
        return extent < 0 && track.isClosed() ? extent + track.length() : extent;
    }

    /** Two corners one way whose gap may bend as tightly as a corner all along. */
    private static void addGap(List<DoubtfulPlace> found, Track track, Corner first, Corner second) {
        double extent = extent(track, first.exit(), second.entry());
        if (first.left() != second.left() || !(extent >= 0 && extent < APART)) {
            return;
        }
        double side = first.left() ? 1 : -1;
        for (double d = 0; d <= extent; d += STEP) {
            double s = within(track, first.exit() + d);
            if (side * track.pointAt(s).curvature() + reach(track, s) < CornerFinder.KEEP) {
                return;
            }
        }
        found.add(new DoubtfulPlace(Kind.ONE_OR_TWO, within(track, first.exit() + extent / 2), first));
    }

    /** A corner with two peaks whose dip between them may be straight. */
    private static void addDip(List<DoubtfulPlace> found, Track track, Corner corner) {
        double extent = extent(track, corner.entry(), corner.exit());
        double side = corner.left() ? 1 : -1;
        int n = (int) Math.max(4, extent / STEP);
        double[] k = new double[n + 1];
        double[] before = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            k[i] = side
                    * track.pointAt(within(track, corner.entry() + extent * i / n))
                            .curvature();
            before[i] = i == 0 ? k[0] : Math.max(before[i - 1], k[i]);
        }
        double behind = 0;
        double deepest = 0;
        int at = -1;
        for (int i = n; i >= 0; i--) {
            behind = Math.max(behind, k[i]);
            double depth = Math.min(before[i], behind) - k[i];
            if (depth > deepest) {
                deepest = depth;
                at = i;
            }
        }
        if (at < 0) {
            return;
        }
        double s = within(track, corner.entry() + extent * at / n);
        boolean seen = deepest > reach(track, s);
        if (seen && k[at] - reach(track, s) < CornerFinder.KEEP) {
            found.add(new DoubtfulPlace(Kind.ONE_OR_TWO, s, corner));
        }
    }
}
