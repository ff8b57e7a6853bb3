package dev.lapwright.charts.map;

import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** The scale of a map: from metres on the plane (x east, y north) to px in a picture, one scale for both, north up, in the middle of an area. */
public final class MapScale {
    /** How far outside the window points still count, px: what is as wide as a road must reach its edge. */
    private static final double BEYOND = 60;

    /** Room for labels round the road, px. */
    private static final double MARGIN = 58;

    private final double pixelsPerMetre;
    private final double offsetX;
    private final double offsetY;

    /**
     * @param x east, m
     * @param y north, m
     * @param area to fit into, px
     */
    public MapScale(double[] x, double[] y, Rectangle2D area) {
        Rectangle2D bounds = new Rectangle2D.Double(x[0], y[0], 0, 0);
        for (int i = 1; i < x.length; i++) {
            bounds.add(x[i], y[i]);
        }
        // A straight run has no breadth: a metre keeps the scale finite.
        double width = Math.max(1, bounds.getWidth());
        double height = Math.max(1, bounds.getHeight());
        pixelsPerMetre = Math.min(area.getWidth() / width, area.getHeight() / height);
        offsetX = area.getCenterX() - pixelsPerMetre * bounds.getCenterX();
        offsetY = area.getCenterY() + pixelsPerMetre * bounds.getCenterY();
    }

    /**
     * The scale of a road that leaves room for labels round it, and for scale and north arrow beneath.
     *
     * @param margins how many widths of that room above and beneath together
     * @param foot room for scale and north arrow, px
     */
    public static MapScale labelled(double[] x, double[] y, Rectangle2D area, double margins, double foot) {
        return new MapScale(
                x,
                y,
                new Rectangle2D.Double(
                        area.getX() + MARGIN,
                        area.getY() + MARGIN / 2,
                        Math.max(1, area.getWidth() - 2 * MARGIN),
                        Math.max(1, area.getHeight() - margins * MARGIN - foot)));
    }

    public double pixelsPerMetre() {
        return pixelsPerMetre;
    }

    public double px(double x) {
        return offsetX + pixelsPerMetre * x;
    }

    public double py(double y) {
        return offsetY - pixelsPerMetre * y;
    }

    /** The stretches of a path that pass through a window: first and last index of each, two points or more. */
    public List<int[]> within(Rectangle2D window, double[] x, double[] y) {
        Rectangle2D wide = new Rectangle2D.Double(
                window.getX() - BEYOND,
                window.getY() - BEYOND,
                window.getWidth() + 2 * BEYOND,
                window.getHeight() + 2 * BEYOND);
        List<int[]> runs = new ArrayList<>();
        int from = -1;
        for (int i = 0; i <= x.length; i++) {
            boolean inside = i < x.length && wide.contains(px(x[i]), py(y[i]));
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
    public Path2D path(double[] x, double[] y, int from, int to) {
        Path2D path = new Path2D.Double();
        path.moveTo(px(x[from]), py(y[from]));
        for (int i = from + 1; i <= to; i++) {
            path.lineTo(px(x[i]), py(y[i]));
        }
        return path;
    }
}
