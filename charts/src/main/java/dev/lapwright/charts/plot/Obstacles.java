package dev.lapwright.charts.plot;

import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.ui.RectangleEdge;

/** Points and lines in a picture that labels must keep clear of. Made for one drawing. */
public final class Obstacles {
    private final Rectangle2D area;
    private final ValueAxis domain;
    private final ValueAxis range;
    private final List<Line2D> lines = new ArrayList<>();
    private final List<Point2D> points = new ArrayList<>();

    /** For things given in units of two axes. */
    public Obstacles(Rectangle2D area, ValueAxis domain, ValueAxis range) {
        this.area = area;
        this.domain = domain;
        this.range = range;
    }

    private Point2D pixel(double x, double y) {
        return new Point2D.Double(
                domain.valueToJava2D(x, area, RectangleEdge.BOTTOM), range.valueToJava2D(y, area, RectangleEdge.LEFT));
    }

    /** Points joined in order: [2][n]. */
    public void addLine(double[][] data) {
        Point2D before = null;
        for (int i = 0; i < data[0].length; i++) {
            Point2D here = pixel(data[0][i], data[1][i]);
            points.add(here);
            lines.add(new Line2D.Double(before == null ? here : before, here));
            before = here;
        }
    }

    /** Points not joined: [2][n]. */
    public void addPoints(double[][] data) {
        for (int i = 0; i < data[0].length; i++) {
            Point2D here = pixel(data[0][i], data[1][i]);
            points.add(here);
            lines.add(new Line2D.Double(here, here));
        }
    }

    /** A line across the whole area at a value of the range axis. */
    public void addLevel(double value) {
        double y = range.valueToJava2D(value, area, RectangleEdge.LEFT);
        lines.add(new Line2D.Double(area.getMinX(), y, area.getMaxX(), y));
    }

    /** A line up the whole area at a value of the domain axis. */
    public void addUpright(double value) {
        double x = domain.valueToJava2D(value, area, RectangleEdge.BOTTOM);
        lines.add(new Line2D.Double(x, area.getMinY(), x, area.getMaxY()));
    }

    /** Whether everything stays more than {@code clear} px away from a box. */
    public boolean leaves(Rectangle2D box, double clear) {
        Rectangle2D wide = new Rectangle2D.Double(
                box.getX() - clear, box.getY() - clear, box.getWidth() + 2 * clear, box.getHeight() + 2 * clear);
        for (Line2D line : lines) {
            if (line.intersects(wide)) {
                return false;
            }
        }
        return true;
    }

    /** Whether a box is nearer to (x, y) than to any other point, so that nobody takes its label for the other's. */
    public boolean isNearest(Rectangle2D box, double x, double y, double margin) {
        double own = distance(box, x, y);
        for (Point2D point : points) {
            boolean other = point.distance(x, y) > 1;
            if (other && distance(box, point.getX(), point.getY()) < own + margin) {
                return false;
            }
        }
        return true;
    }

    private static double distance(Rectangle2D box, double x, double y) {
        double dx = Math.max(0, Math.max(box.getMinX() - x, x - box.getMaxX()));
        double dy = Math.max(0, Math.max(box.getMinY() - y, y - box.getMaxY()));
        return Math.hypot(dx, dy);
    }
}
