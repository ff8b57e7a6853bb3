package dev.lapwright.charts;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;

/**
 * The data of an SVG path with no more points than are seen: corners of a line that lie within a tolerance of the line without
 * them are left out (Douglas and Peucker, 1973). Paths with curves are left as they are.
 */
final class ThinnedPath {
    /** Far below the width of any line, px. */
    private static final double TOLERANCE = 0.15;

    private static final int LEAST_POINTS = 4;

    private ThinnedPath() {}

    static String of(String data) {
        for (int i = 0; i < data.length(); i++) {
            char c = data.charAt(i);
            if (Character.isLetter(c) && "MLZ".indexOf(c) < 0) {
                return data;
            }
        }
        StringBuilder thin = new StringBuilder();
        List<String> run = new ArrayList<>();
        int at = 0;
        while (at < data.length()) {
            char letter = data.charAt(at);
            int next = at + 1;
            while (next < data.length() && !Character.isLetter(data.charAt(next))) {
                next++;
            }
            if (letter != 'L') {
                end(thin, run);
            }
            if (letter == 'Z') {
                thin.append('Z');
            } else {
                run.add(data.substring(at + 1, next).trim());
            }
            at = next;
        }
        end(thin, run);
        return thin.toString();
    }

    private static void end(StringBuilder thin, List<String> run) {
        if (run.isEmpty()) {
            return;
        }
        boolean[] kept = kept(run);
        boolean first = true;
        for (int i = 0; i < run.size(); i++) {
            if (kept[i]) {
                thin.append(first ? 'M' : 'L').append(run.get(i));
                first = false;
            }
        }
        run.clear();
    }

    private static boolean[] kept(List<String> run) {
        int n = run.size();
        boolean[] kept = new boolean[n];
        if (n < LEAST_POINTS) {
            Arrays.fill(kept, true);
            return kept;
        }
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            String[] pair = run.get(i).split("[,\\s]+");
            x[i] = Double.parseDouble(pair[0]);
            y[i] = Double.parseDouble(pair[1]);
        }
        kept[0] = true;
        kept[n - 1] = true;
        Deque<int[]> spans = new ArrayDeque<>();
        spans.push(new int[] {0, n - 1});
        while (!spans.isEmpty()) {
            int[] span = spans.pop();
            int far = span[0];
            double most = TOLERANCE;
            for (int i = span[0] + 1; i < span[1]; i++) {
                double away = distance(x, y, i, span[0], span[1]);
                if (away > most) {
                    most = away;
                    far = i;
                }
            }
            if (far != span[0]) {
                kept[far] = true;
                spans.push(new int[] {span[0], far});
                spans.push(new int[] {far, span[1]});
            }
        }
        return kept;
    }

    /** Distance of a point from the stretch between two others. */
    private static double distance(double[] x, double[] y, int i, int a, int b) {
        double dx = x[b] - x[a];
        double dy = y[b] - y[a];
        double length = dx * dx + dy * dy;
        double along = length > 0 ? ((x[i] - x[a]) * dx + (y[i] - y[a]) * dy) / length : 0;
        double on = Math.max(0, Math.min(1, along));
        return Math.hypot(x[i] - x[a] - on * dx, y[i] - y[a] - on * dy);
    }
}
