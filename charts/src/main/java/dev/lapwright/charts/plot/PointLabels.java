package dev.lapwright.charts.plot;

import dev.lapwright.charts.ChartStyle;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
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
public final class PointLabels extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;
    /** How far beyond the mark a label may stand, px; one that may be left out only as far as the first two. */
    private static final double[] DISTANCES = {2, 7, 16, 30, 48, 72, 102, 142, 192};

    private static final double[] ANGLES = {45, -45, 135, -135, 0, 180, 90, -90, 20, -20, 160, -160, 70, -70, 110, -110
    };
    private static final double CLEAR = 4;
    private static final double LEADER_FROM = 12;

    private final transient List<Label> labels;
    private final transient XYDataset data;
    private final boolean lines;
    private final double[] levels;
    private final ChartStyle style;

    /**
     * What to write beside a point.
     *
     * @param x in data units
     * @param y in data units
     * @param text what to write
     * @param must whether it is drawn at any price
     * @param clear radius of the mark at the point, px
     */
    public record Label(double x, double y, String text, boolean must, double clear) {}

    /**
     * @param labels the more important first
     * @param data the points, which labels must keep clear of
     * @param lines whether lines join the points in order, to keep clear of too
     * @param levels horizontal lines that labels must keep clear of, in units of the range axis
     */
    public PointLabels(List<Label> labels, XYDataset data, boolean lines, double[] levels, ChartStyle style) {
        this.labels = List.copyOf(labels);
        this.data = data;
        this.lines = lines;
        this.levels = levels.clone();
        this.style = style;
    }

    public List<Label> labels() {
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
        Obstacles obstacles = new Obstacles(area, domain, range);
        for (int series = 0; series < data.getSeriesCount(); series++) {
            if (lines) {
                obstacles.addLine(values(series));
            } else {
                obstacles.addPoints(values(series));
            }
        }
        for (double level : levels) {
            obstacles.addLevel(level);
        }
        LabelSpace space = new LabelSpace();
        for (Label label : labels) {
            double x = domain.valueToJava2D(label.x, area, RectangleEdge.BOTTOM);
            double y = range.valueToJava2D(label.y, area, RectangleEdge.LEFT);
            place(g2, label, x, y, area, space, obstacles);
        }
    }

    private double[][] values(int series) {
        double[][] values = new double[2][data.getItemCount(series)];
        for (int i = 0; i < values[0].length; i++) {
            values[0][i] = data.getXValue(series, i);
            values[1][i] = data.getYValue(series, i);
        }
        return values;
    }

    private void place(
            Graphics2D g2, Label label, double x, double y, Rectangle2D area, LabelSpace space, Obstacles obstacles) {
        int reach = label.must ? DISTANCES.length : 2;
        for (int k = 0; k < reach; k++) {
            for (double angle : ANGLES) {
                PlacedText note = beside(g2, label, x, y, Math.toRadians(angle), label.clear + DISTANCES[k]);
                Rectangle2D box = note.box(g2);
                boolean free = area.contains(box) && space.isFree(box, 2) && obstacles.leaves(box, CLEAR);
                Line2D leader = DISTANCES[k] > LEADER_FROM ? leader(label, x, y, box) : null;
                free &= leader == null || !space.isCrossedBy(leader);
                if (free && (label.must || obstacles.isNearest(box, x, y, CLEAR))) {
                    space.take(box);
                    if (leader != null) {
                        space.takeLine(leader);
                        g2.setPaint(style.palette().muted());
                        g2.setStroke(ChartStyle.solid(1));
                        g2.draw(leader);
                    }
                    note.draw(g2, style.palette().ink());
                    return;
                }
            }
        }
        if (label.must) {
            PlacedText note =
                    beside(g2, label, x, y, Math.PI / 4, label.clear).within(g2, area.getMinX(), area.getMaxX());
            space.take(note.box(g2));
            note.drawOn(g2, style.palette().ink(), style.palette().background());
        }
    }

    private PlacedText beside(Graphics2D g2, Label label, double x, double y, double angle, double distance) {
        double ux = Math.cos(angle);
        double uy = -Math.sin(angle);
        PlacedText middle =
                new PlacedText(label.text, 0, 0, TextAnchor.CENTER, label.must ? style.strong() : style.small());
        Rectangle2D box = middle.box(g2);
        double cx = x + ux * distance + Math.signum(Math.rint(2 * ux)) * box.getWidth() / 2;
        double cy = y + uy * distance + Math.signum(Math.rint(2 * uy)) * box.getHeight() / 2;
        return new PlacedText(label.text, cx, cy, TextAnchor.CENTER, middle.font());
    }

    /** From the edge of the mark to the nearest place of the label. */
    private static Line2D leader(Label label, double x, double y, Rectangle2D box) {
        double endX = Math.max(box.getMinX(), Math.min(x, box.getMaxX()));
        double endY = Math.max(box.getMinY(), Math.min(y, box.getMaxY()));
        double skip = Math.min(1, (label.clear + 1) / Math.hypot(endX - x, endY - y));
        return new Line2D.Double(x + skip * (endX - x), y + skip * (endY - y), endX, endY);
    }
}
