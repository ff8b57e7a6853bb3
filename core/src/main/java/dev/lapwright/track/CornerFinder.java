package dev.lapwright.track;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/**
 * Corner detection by curvature with hysteresis: a corner is a stretch bending one way by more than {@link #KEEP} that
 * somewhere exceeds {@link #ENTER} and turns the car by at least {@link #MIN_TURN}. Common practice, no source. Where a person says otherwise
 * ({@link Track.NamedPlace.Mark}), that holds.
 */
final class CornerFinder {
    /** A radius of 400 m: gentler bends are straights to a racing driver. */
    static final double ENTER = 1 / 400.0;
    /** A radius of 800 m. */
    static final double KEEP = 1 / 800.0;
    /** Least turn of a corner, rad (5°). */
    static final double MIN_TURN = Math.toRadians(5);

    private CornerFinder() {}

    static List<Corner> find(Track track, double[] s, double[] curvature) {
        int cells = s.length - 1;
        double length = s[cells] - s[0];
        int start = track.isClosed() ? straightestCell(curvature, cells) : 0;
        List<double[]> found = new ArrayList<>();
        int i = 0;
        while (i < cells) {
            int sign = bend(curvature, (start + i) % cells);
            if (sign == 0) {
                i++;
                continue;
            }
            int from = i;
            while (i < cells && bend(curvature, (start + i) % cells) == sign) {
                i++;
            }
            addIfCorner(found, s, curvature, start, from, i, length);
        }
        for (Track.NamedPlace place : track.cornerNames()) {
            if (place.mark() == Track.NamedPlace.Mark.JOIN) {
                join(found, place.s(), track.isClosed() ? length : Double.NaN);
            }
        }
        for (Track.NamedPlace place : track.cornerNames()) {
            if (place.mark() == Track.NamedPlace.Mark.SPLIT) {
                split(found, place.s(), s, curvature);
            }
        }
        found.sort((a, b) -> Double.compare(a[1], b[1]));
        List<Corner> corners = new ArrayList<>(found.size());
        for (double[] f : found) {
            int number = corners.size() + 1;
            String name = nameFor(track, f[0], f[2]);
            corners.add(new Corner(number, name, f[0], f[1], f[2], f[3] > 0, 1 / Math.abs(f[3])));
        }
        return List.copyOf(corners);
    }

    /** How far a place lies ahead of another, m; round the start of a circuit, and beyond all on an open run where it lies behind. */
    private static double ahead(double from, double to, double length) {
        return to >= from ? to - from : Double.isNaN(length) ? Double.POSITIVE_INFINITY : to - from + length;
    }

    private static boolean holds(double[] corner, double at) {
        return corner[0] <= corner[2] ? at > corner[0] && at < corner[2] : at > corner[0] || at < corner[2];
    }

    /** Makes one of the corners before and behind a place that bend to one side; of others, and within one, it says nothing. */
    private static void join(List<double[]> found, double at, double length) {
        if (found.size() < 2 || found.stream().anyMatch(corner -> holds(corner, at))) {
            return;
        }
        double[] before = Collections.min(found, Comparator.comparingDouble(corner -> ahead(corner[2], at, length)));
        double[] behind = Collections.min(found, Comparator.comparingDouble(corner -> ahead(at, corner[0], length)));
        boolean apart =
                Double.isInfinite(ahead(before[2], at, length)) || Double.isInfinite(ahead(at, behind[0], length));
        if (before == behind || apart || before[3] * behind[3] < 0) {
            return;
        }
        double[] tighter = Math.abs(before[3]) >= Math.abs(behind[3]) ? before : behind;
        found.remove(before);
        found.remove(behind);
        found.add(new double[] {before[0], tighter[1], behind[2], tighter[3]});
    }

    /** Makes two of the corner that a place lies in; where it lies in none it says nothing. */
    private static void split(List<double[]> found, double at, double[] s, double[] curvature) {
        for (double[] corner : List.copyOf(found)) {
            if (holds(corner, at)) {
                double[] first = part(corner[0], at, s, curvature);
                double[] second = part(at, corner[2], s, curvature);
                if (first != null && second != null) {
                    found.remove(corner);
                    found.add(first);
                    found.add(second);
                }
                return;
            }
        }
    }

    /** A part of a corner, with its own apex; null where no station lies in it. */
    private static double[] part(double from, double to, double[] s, double[] curvature) {
        int cells = s.length - 1;
        double peak = 0;
        double peakFrom = 0;
        double peakTo = 0;
        int first = 0;
        while (first < cells && s[first] < from) {
            first++;
        }
        for (int j = 0; j <= cells; j++) {
            int i = (first + j) % cells;
            double along = s[i] >= from ? s[i] : s[i] + s[cells];
            if (along > (to >= from ? to : to + s[cells])) {
                break;
            }
            if (Math.abs(curvature[i]) > Math.abs(peak) * (1 + 1e-9)) {
                peak = curvature[i];
                peakFrom = along;
            }
            if (Math.abs(curvature[i]) >= Math.abs(peak) * (1 - 1e-9)) {
                peakTo = along;
            }
        }
        double apex = 0.5 * (peakFrom + peakTo);
        return peak == 0 ? null : new double[] {from, apex > s[cells] ? apex - s[cells] : apex, to, peak};
    }

    private static void addIfCorner(
            List<double[]> found, double[] s, double[] curvature, int start, int from, int to, double length) {
        int cells = s.length - 1;
        double peak = 0;
        double turn = 0;
        double peakFrom = 0;
        double peakTo = 0;
        for (int j = from; j <= to; j++) {
            int cell = (start + j) % cells;
            double k = j == to ? curvature[(start + to - 1) % cells + 1] : curvature[cell];
            double at = j == to ? s[(start + to - 1) % cells + 1] : s[cell];
            if (at < s[(start + from) % cells]) {
                at += length;
            }
            if (Math.abs(k) > Math.abs(peak) * (1 + 1e-9)) {
                peak = k;
                peakFrom = at;
            }
            if (Math.abs(k) >= Math.abs(peak) * (1 - 1e-9)) {
                peakTo = at;
            }
            if (j < to) {
                turn += 0.5 * (curvature[cell] + curvature[cell + 1]) * (s[cell + 1] - s[cell]);
            }
        }
        if (Math.abs(peak) >= ENTER && Math.abs(turn) >= MIN_TURN) {
            double entry = s[(start + from) % cells];
            double exit = s[(start + to - 1) % cells + 1];
            double apex = 0.5 * (peakFrom + peakTo);
            found.add(new double[] {entry, apex > s[cells] ? apex - length : apex, exit, peak});
        }
    }

    private static int bend(double[] curvature, int cell) {
        double mean = 0.5 * (curvature[cell] + curvature[cell + 1]);
        return mean > KEEP ? 1 : mean < -KEEP ? -1 : 0;
    }

    private static int straightestCell(double[] curvature, int cells) {
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < cells; i++) {
            double k = Math.abs(curvature[i]) + Math.abs(curvature[i + 1]);
            if (k < least) {
                least = k;
                best = i;
            }
        }
        return best;
    }

    private static String nameFor(Track track, double entry, double exit) {
        for (Track.NamedPlace place : track.cornerNames()) {
            boolean inside =
                    entry <= exit ? place.s() >= entry && place.s() <= exit : place.s() >= entry || place.s() <= exit;
            if (inside && !place.name().isEmpty()) {
                return place.name();
            }
        }
        return "";
    }
}
