package dev.lapwright.charts;

import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** The stretches of a path on a map that pass through a window. */
final class Runs {
    /** How far outside the window points still count, px: what is as wide as a road must reach its edge. */
    private static final double BEYOND = 60;

    private Runs() {}

    /** First and last index of each stretch of two points or more. */
    static List<int[]> within(Rectangle2D window, MapScale scale, double[] x, double[] y) {
        Rectangle2D wide = new Rectangle2D.Double(
                window.getX() - BEYOND,
                window.getY() - BEYOND,
                window.getWidth() + 2 * BEYOND,
                window.getHeight() + 2 * BEYOND);
        List<int[]> runs = new ArrayList<>();
        int from = -1;
        for (int i = 0; i <= x.length; i++) {
            boolean inside = i < x.length && wide.contains(scale.px(x[i]), scale.py(y[i]));
            if (inside && from < 0) {
                from = i;
            } else if (!inside && from >= 0) {
                if (i - from > 1) {
                    runs.add(new int[] {from, i - 1});
                }
                from = -1;
            }
        }
        return runs;
    }

    /** The path between two points as a line to draw. */
    static Path2D path(MapScale scale, double[] x, double[] y, int from, int to) {
        Path2D path = new Path2D.Double();
        path.moveTo(scale.px(x[from]), scale.py(y[from]));
        for (int i = from + 1; i <= to; i++) {
            path.lineTo(scale.px(x[i]), scale.py(y[i]));
        }
        return path;
    }
}
