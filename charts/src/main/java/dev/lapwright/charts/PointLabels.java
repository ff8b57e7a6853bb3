package dev.lapwright.charts;

import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYDataset;

/**
 * Labels beside points, clear of the points, of the lines that join them and of each other. A label that must be there is
 * drawn farther off with a line to its point; another is left out where it finds no room.
 */
final class PointLabels extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;
    private static final double[] DISTANCES = {9, 15, 24, 38, 56, 80, 110, 150, 200};
    private static final double[] ANGLES = {45, -45, 135, -135, 0, 180, 90, -90, 20, -20, 160, -160, 70, -70, 110, -110
    };
    private static final double CLEAR = 4;
    private static final double LEADER_FROM = 20;

    private final transient List<Label> labels;
    private final transient XYDataset data;
    private final boolean lines;
    private final double[] levels;
    private final ChartStyle style;

    /** What to write beside a point (in data units); the more important first. */
    record Label(double x, double y, String text, boolean must) {}

    /**
     * @param labels the more important first
     * @param data the points, which labels must keep clear of
     * @param lines whether lines join the points in order, to keep clear of too
     * @param levels horizontal lines that labels must keep clear of, in units of the range axis
     */
    PointLabels(List<Label> labels, XYDataset data, boolean lines, double[] levels, ChartStyle style) {
        this.labels = List.copyOf(labels);
        this.data = data;
        this.lines = lines;
        this.levels = levels.clone();
        this.style = style;
    }

    List<Label> labels() {
        return labels;
    }

    @Override
    public void draw(
            Graphics2D g2,
            XYPlot plot,
            Rectangle2D area,
            ValueAxis domain,
            ValueAxis range,
            int rendererIndex,
            PlotRenderingInfo info) {
        LabelSpace space = new LabelSpace();
        List<Point2D> taken = obstacles(area, domain, range);
        List<Point2D> points = points(area, domain, range);
        for (Label label : labels) {
            double x = domain.valueToJava2D(label.x, area, RectangleEdge.BOTTOM);
            double y = range.valueToJava2D(label.y, area, RectangleEdge.LEFT);
            place(g2, label, x, y, area, space, taken, points);
        }
    }

    private void place(
            Graphics2D g2,
            Label label,
            double x,
            double y,
            Rectangle2D area,
            LabelSpace space,
            List<Point2D> taken,
            List<Point2D> points) {
        int reach = label.must ? DISTANCES.length : 2;
        for (int k = 0; k < reach; k++) {
            for (double angle : ANGLES) {
                Note note = beside(g2, label, x, y, Math.toRadians(angle), DISTANCES[k]);
                Rectangle2D box = note.box(g2);
                boolean free = area.contains(box) && space.isFree(box, 2) && isClear(box, taken);
                if (free && (label.must || isNearest(box, x, y, points))) {
                    space.take(box);
                    if (DISTANCES[k] > LEADER_FROM) {
                        lead(g2, x, y, box);
                    }
                    note.draw(g2, style.palette().ink());
                    return;
                }
            }
        }
        if (label.must) {
            Note note = beside(g2, label, x, y, Math.PI / 4, DISTANCES[0]).within(g2, area.getMinX(), area.getMaxX());
            space.take(note.box(g2));
            note.drawOn(g2, style.palette().ink(), style.palette().background());
        }
    }

    private Note beside(Graphics2D g2, Label label, double x, double y, double angle, double distance) {
        double ux = Math.cos(angle);
        double uy = -Math.sin(angle);
        Note middle = new Note(label.text, 0, 0, TextAnchor.CENTER, label.must ? style.strong() : style.small());
        Rectangle2D box = middle.box(g2);
        double cx = x + ux * distance + Math.signum(Math.rint(2 * ux)) * box.getWidth() / 2;
        double cy = y + uy * distance + Math.signum(Math.rint(2 * uy)) * box.getHeight() / 2;
        return new Note(label.text, cx, cy, TextAnchor.CENTER, middle.font());
    }

    private void lead(Graphics2D g2, double x, double y, Rectangle2D box) {
        double endX = Math.max(box.getMinX(), Math.min(x, box.getMaxX()));
        double endY = Math.max(box.getMinY(), Math.min(y, box.getMaxY()));
        double length = Math.hypot(endX - x, endY - y);
        double skip = Math.min(1, DISTANCES[0] / length);
        g2.setPaint(style.palette().muted());
        g2.setStroke(ChartStyle.solid(1));
        g2.draw(new Line2D.Double(x + skip * (endX - x), y + skip * (endY - y), endX, endY));
    }

    private List<Point2D> points(Rectangle2D area, ValueAxis domain, ValueAxis range) {
        List<Point2D> points = new ArrayList<>();
        for (int series = 0; series < data.getSeriesCount(); series++) {
            for (int i = 0; i < data.getItemCount(series); i++) {
                points.add(new Point2D.Double(
                        domain.valueToJava2D(data.getXValue(series, i), area, RectangleEdge.BOTTOM),
                        range.valueToJava2D(data.getYValue(series, i), area, RectangleEdge.LEFT)));
            }
        }
        return points;
    }

    /** Points no more than 4 px apart along everything that labels must not cover. */
    private List<Point2D> obstacles(Rectangle2D area, ValueAxis domain, ValueAxis range) {
        List<Point2D> points = new ArrayList<>();
        for (int series = 0; series < data.getSeriesCount(); series++) {
            Point2D before = null;
            for (int i = 0; i < data.getItemCount(series); i++) {
                Point2D here = new Point2D.Double(
                        domain.valueToJava2D(data.getXValue(series, i), area, RectangleEdge.BOTTOM),
                        range.valueToJava2D(data.getYValue(series, i), area, RectangleEdge.LEFT));
                addBetween(points, before == null || !lines ? here : before, here);
                before = here;
            }
        }
        for (double level : levels) {
            double y = range.valueToJava2D(level, area, RectangleEdge.LEFT);
            addBetween(points, new Point2D.Double(area.getMinX(), y), new Point2D.Double(area.getMaxX(), y));
        }
        return points;
    }

    private static void addBetween(List<Point2D> points, Point2D from, Point2D to) {
        int steps = 1 + (int) (from.distance(to) / 4);
        for (int k = 0; k <= steps; k++) {
            points.add(new Point2D.Double(
                    from.getX() + (to.getX() - from.getX()) * k / steps,
                    from.getY() + (to.getY() - from.getY()) * k / steps));
        }
    }

    /** Whether a label is nearer to its own point than to any other, so that nobody takes it for the other's. */
    private static boolean isNearest(Rectangle2D box, double x, double y, List<Point2D> points) {
        double own = distance(box, x, y);
        for (Point2D point : points) {
            boolean other = point.distance(x, y) > 1;
            if (other && distance(box, point.getX(), point.getY()) < own + CLEAR) {
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

    private static boolean isClear(Rectangle2D box, List<Point2D> taken) {
        for (Point2D point : taken) {
            if (distance(box, point.getX(), point.getY()) < CLEAR) {
                return false;
            }
        }
        return true;
    }
}
