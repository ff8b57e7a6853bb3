package dev.lapwright.charts.svg;

import java.awt.geom.PathIterator;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.function.DoubleFunction;

/**
 * The data of an SVG path with no more points than are seen: points of a line that lie within a tolerance of the line without
 * them are left out (Douglas and Peucker, 1973). Curves are kept as they are; a subpath with a coordinate that is no finite
 * number ends before it.
 */
final class SvgPath {
    /** Far below the width of any line, px. */
    private static final double TOLERANCE = 0.1;

    private final DoubleFunction<String> number;
    private final StringBuilder data = new StringBuilder();
    private double[] x = new double[64];
    private double[] y = new double[64];
    private int points;

    private SvgPath(DoubleFunction<String> number) {
        this.number = number;
    }

    /** The attribute {@code d}; empty where there is nothing to draw. */
    static String of(PathIterator path, DoubleFunction<String> number) {
        SvgPath svg = new SvgPath(number);
        double[] c = new double[6];
        boolean broken = false;
        for (; !path.isDone(); path.next()) {
            int kind = path.currentSegment(c);
            int numbers = kind == PathIterator.SEG_CLOSE ? 0 : kind == PathIterator.SEG_QUADTO ? 4 : 2;
            numbers = kind == PathIterator.SEG_CUBICTO ? 6 : numbers;
            boolean finite = Arrays.stream(c, 0, numbers).allMatch(Double::isFinite);
            if (kind == PathIterator.SEG_MOVETO || (broken && finite && numbers > 0)) {
                svg.endLine();
                broken = !finite;
                if (finite) {
                    svg.add(c[numbers - 2], c[numbers - 1]);
                }
            } else if (!finite) {
                broken = true;
            } else if (kind == PathIterator.SEG_LINETO) {
                svg.add(c[0], c[1]);
            } else if (kind == PathIterator.SEG_CLOSE) {
                if (!broken) {
                    svg.endLine();
                    svg.data.append('Z');
                }
            } else {
                svg.curve(kind == PathIterator.SEG_QUADTO ? 'Q' : 'C', c, numbers);
            }
        }
        svg.endLine();
        return svg.data.toString();
    }

    private void add(double px, double py) {
        if (points == x.length) {
            x = Arrays.copyOf(x, 2 * points);
            y = Arrays.copyOf(y, 2 * points);
        }
        x[points] = px;
        y[points++] = py;
    }

    /** Writes the points since the last move as one line, thinned. */
    private void endLine() {
        if (points == 0) {
            return;
        }
        boolean[] kept = kept();
        data.append('M');
        for (int i = 0; i < points; i++) {
            if (kept[i]) {
                data.append(i == 0 ? "" : " ")
                        .append(number.apply(x[i]))
                        .append(',')
                        .append(number.apply(y[i]));
            }
        }
        points = 0;
    }

    private void curve(char letter, double[] c, int numbers) {
        if (points > 0) {
            endLine();
        }
        data.append(letter);
        for (int i = 0; i < numbers; i += 2) {
            data.append(i == 0 ? "" : " ")
                    .append(number.apply(c[i]))
                    .append(',')
                    .append(number.apply(c[i + 1]));
        }
    }

    private boolean[] kept() {
        boolean[] kept = new boolean[points];
        kept[0] = true;
        kept[points - 1] = true;
        Deque<int[]> spans = new ArrayDeque<>();
        spans.push(new int[] {0, points - 1});
        while (!spans.isEmpty()) {
            int[] span = spans.pop();
            int far = span[0];
            double most = TOLERANCE;
            for (int i = span[0] + 1; i < span[1]; i++) {
                double away = distance(i, span[0], span[1]);
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
    private double distance(int i, int a, int b) {
        double dx = x[b] - x[a];
        double dy = y[b] - y[a];
        double length = dx * dx + dy * dy;
        double along = length > 0 ? ((x[i] - x[a]) * dx + (y[i] - y[a]) * dy) / length : 0;
        double on = Math.max(0, Math.min(1, along));
        return Math.hypot(x[i] - x[a] - on * dx, y[i] - y[a] - on * dy);
    }
}
