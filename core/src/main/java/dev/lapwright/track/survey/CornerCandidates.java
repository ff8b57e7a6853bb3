package dev.lapwright.track.survey;

import dev.lapwright.track.survey.PlainRoad.PlainCorner;
import java.util.ArrayList;
import java.util.List;

/** The corners that the curvature of a closed smooth road seems to have: its peaks, two of one side where the valley between is deep. */
final class CornerCandidates {
    /** Least peak over the root mean square of the curvature. */
    private static final double LEAST_PEAK = 0.15;
    /** Two peaks are two corners if the valley between is below this share of the lower. */
    private static final double VALLEY = 0.7;
    /** Where a transition's middle is looked for, and its length from: shares of the peak. */
    private static final double HALF = 0.5;

    private static final double QUARTER = 0.25;

    private final double[] curvature;
    private final double step;
    private final int count;

    private CornerCandidates(double[] curvature, double step) {
        this.curvature = curvature;
        this.step = step;
        count = curvature.length;
    }

    /**
     * Corners in their order, the first behind the longest gap; places are from the first node and may be beyond a whole round.
     *
     * @param curvature at even steps round the lap, 1/m
     * @param step m
     */
    static List<PlainCorner> of(double[] curvature, double step) {
        return new CornerCandidates(curvature, step).found();
    }

    private List<PlainCorner> found() {
        double squares = 0;
        for (double k : curvature) {
            squares += k * k / count;
        }
        double least = LEAST_PEAK * Math.sqrt(squares);
        int start = straightest();
        List<PlainCorner> corners = new ArrayList<>();
        int from = start;
        for (int i = start + 1; i <= start + count; i++) {
            if (i == start + count || at(i) * at(from) <= 0) {
                corners.addAll(within(from, i, least));
                from = i;
            }
        }
        return fromTheLongestGap(corners);
    }

    private double at(int i) {
        return curvature[Math.floorMod(i, count)];
    }

    private int straightest() {
        int found = 0;
        for (int i = 1; i < count; i++) {
            found = Math.abs(curvature[i]) < Math.abs(curvature[found]) ? i : found;
        }
        return found;
    }

    /** Corners of a run that bends one way. */
    private List<PlainCorner> within(int from, int to, double least) {
        List<Integer> peaks = new ArrayList<>();
        for (int i = from; i < to; i++) {
            double here = Math.abs(at(i));
            boolean rises = i == from || here > Math.abs(at(i - 1));
            boolean falls = i == to - 1 || here >= Math.abs(at(i + 1));
            if (rises && falls && here > least) {
                peaks.add(i);
            }
        }
        while (peaks.size() > 1) {
            int shallow = -1;
            double highest = VALLEY;
            for (int p = 0; p + 1 < peaks.size(); p++) {
                double lower = Math.min(Math.abs(at(peaks.get(p))), Math.abs(at(peaks.get(p + 1))));
                double valley = Math.abs(at(valley(peaks.get(p), peaks.get(p + 1)))) / lower;
                shallow = valley > highest ? p : shallow;
                highest = Math.max(highest, valley);
            }
            if (shallow < 0) {
                break;
            }
            boolean first = Math.abs(at(peaks.get(shallow))) < Math.abs(at(peaks.get(shallow + 1)));
            peaks.remove(first ? shallow : shallow + 1);
        }
        List<PlainCorner> corners = new ArrayList<>();
        for (int p = 0; p < peaks.size(); p++) {
            int low = p == 0 ? from : valley(peaks.get(p - 1), peaks.get(p));
            int high = p == peaks.size() - 1 ? to : valley(peaks.get(p), peaks.get(p + 1));
            corners.add(corner(low, peaks.get(p), high));
        }
        return corners;
    }

    private int valley(int from, int to) {
        int found = from;
        for (int i = from; i <= to; i++) {
            found = Math.abs(at(i)) < Math.abs(at(found)) ? i : found;
        }
        return found;
    }

    private PlainCorner corner(int low, int peak, int high) {
        double turning = 0;
        for (int i = low; i < high; i++) {
            turning += at(i) * step;
        }
        double top = at(peak);
        double before = crossing(peak, low, -1, HALF);
        double behind = crossing(peak, high, 1, HALF);
        double width = Math.max(behind - before, 2) * step;
        double curvature = turning / width;
        if (Math.abs(curvature) > Math.abs(top)) {
            curvature = top;
            width = turning / top;
        }
        double over = crossing(peak, low, -1, 1 - QUARTER)
                - crossing(peak, low, -1, QUARTER)
                + crossing(peak, high, 1, QUARTER)
                - crossing(peak, high, 1, 1 - QUARTER);
        double middle = (before + behind) / 2 * step;
        return new PlainCorner(middle - width / 2, middle + width / 2, curvature, over * step);
    }

    /** Node, with its fraction, at which the curvature has fallen to a share of its peak; the end of its stretch if it does not. */
    private double crossing(int peak, int end, int way, double share) {
        double level = share * Math.abs(at(peak));
        for (int i = peak; i != end; i += way) {
            double here = Math.abs(at(i));
            double next = Math.abs(at(i + way));
            if (next <= level && here > level) {
                return i + way * (here - level) / (here - next);
            }
        }
        return end;
    }

    private List<PlainCorner> fromTheLongestGap(List<PlainCorner> corners) {
        int first = 0;
        double longest = Double.NEGATIVE_INFINITY;
        double round = count * step;
        for (int i = 0; i < corners.size(); i++) {
            PlainCorner before = corners.get((i + corners.size() - 1) % corners.size());
            PlainCorner here = corners.get(i);
            double gap =
                    here.from() - here.transition() / 2 - before.to() - before.transition() / 2 + (i == 0 ? round : 0);
            first = gap > longest ? i : first;
            longest = Math.max(longest, gap);
        }
        List<PlainCorner> ordered = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            PlainCorner c = corners.get((first + i) % corners.size());
            double moved = first + i >= corners.size() ? round : 0;
            ordered.add(new PlainCorner(c.from() + moved, c.to() + moved, c.curvature(), c.transition()));
        }
        return ordered;
    }
}
