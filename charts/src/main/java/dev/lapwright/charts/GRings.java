package dev.lapwright.charts;

import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;

/** Light circles of equal acceleration at every half g, labelled where most labels are clear of points, and the lines of zero. */
final class GRings extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;

    /** Where to try the labels, degrees: first under braking in a left turn, where a lap has few points. */
    private static final double[] ANGLES = {-45, -60, -30, -135, -120, -150, 45, 60, 30, 135};

    private static final double CLEAR = 3;

    private final transient List<double[][]> data;
    private final ChartStyle style;

    /** @param data points that labels keep clear of, g: each [2][n] */
    GRings(List<double[][]> data, ChartStyle style) {
        this.data = List.copyOf(data);
        this.style = style;
    }

    @Override
    public void draw(
            Graphics2D g2,
            XYPlot plot,
            Rectangle2D area,
            ValueAxis across,
            ValueAxis along,
            int rendererIndex,
            PlotRenderingInfo info) {
        double x0 = across.valueToJava2D(0, area, RectangleEdge.BOTTOM);
        double y0 = along.valueToJava2D(0, area, RectangleEdge.LEFT);
        double perG = Math.abs(across.valueToJava2D(1, area, RectangleEdge.BOTTOM) - x0);
        double reach = Math.hypot(
                Math.max(across.getUpperBound(), -across.getLowerBound()),
                Math.max(along.getUpperBound(), -along.getLowerBound()));
        g2.setStroke(ChartStyle.solid(1));
        g2.setPaint(style.palette().grid());
        for (double g = GgDiagram.RING; g < reach; g += GgDiagram.RING) {
            double r = g * perG;
            g2.draw(new Ellipse2D.Double(x0 - r, y0 - r, 2 * r, 2 * r));
        }
        g2.setPaint(style.palette().muted());
        g2.draw(new Line2D.Double(area.getMinX(), y0, area.getMaxX(), y0));
        g2.draw(new Line2D.Double(x0, area.getMinY(), x0, area.getMaxY()));
        Obstacles points = new Obstacles(area, across, along);
        for (double[][] series : data) {
            points.addPoints(series);
        }
        List<Note> best = List.of();
        for (double angle : ANGLES) {
            List<Note> notes = notes(g2, area, Math.toRadians(angle), x0, y0, perG, reach);
            notes.removeIf(note -> !points.leaves(note.box(g2), CLEAR));
            best = notes.size() > best.size() ? notes : best;
        }
        for (Note note : best) {
            note.drawOn(g2, style.palette().muted(), style.palette().background());
        }
    }

    /** A label for each ring that has room for one at an angle. */
    private List<Note> notes(
            Graphics2D g2, Rectangle2D area, double angle, double x0, double y0, double perG, double reach) {
        List<Note> notes = new ArrayList<>();
        for (double g = GgDiagram.RING; g < reach; g += GgDiagram.RING) {
            double x = x0 + g * perG * Math.cos(angle);
            double y = y0 - g * perG * Math.sin(angle);
            Note note = new Note(Numbers.fixed(1).format(g) + " g", x, y, TextAnchor.CENTER, style.small());
            if (area.contains(note.box(g2))) {
                notes.add(note);
            }
        }
        return notes;
    }
}
