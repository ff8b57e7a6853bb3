package dev.lapwright.charts;

import java.awt.geom.Rectangle2D;

/** From metres on the plane (x east, y north) to px in a picture, one scale for both, north up, in the middle of an area. */
final class MapScale {
    private final double pixelsPerMetre;
    private final double offsetX;
    private final double offsetY;

    /**
     * @param x east, m
     * @param y north, m
     * @param area to fit into, px
     */
    MapScale(double[] x, double[] y, Rectangle2D area) {
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

    double pixelsPerMetre() {
        return pixelsPerMetre;
    }

    double px(double x) {
        return offsetX + pixelsPerMetre * x;
    }

    double py(double y) {
        return offsetY - pixelsPerMetre * y;
    }
}
