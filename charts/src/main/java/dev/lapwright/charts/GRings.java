package dev.lapwright.charts;

import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;

/** Light circles of equal acceleration at every half g, labelled, and the two lines of zero. */
final class GRings extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;

    private final ChartStyle style;

    GRings(ChartStyle style) {
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
        for (double g = GgDiagram.RING; g < reach; g += GgDiagram.RING) {
            label(g2, area, g, x0, y0, g * perG);
        }
    }

    /** At 45 degrees under braking in a left turn, where a lap has the fewest points; left out beyond the edge. */
    private void label(Graphics2D g2, Rectangle2D area, double g, double x0, double y0, double r) {
        double reach = r * Math.sqrt(0.5);
        Note note =
                new Note(Numbers.fixed(1).format(g) + " g", x0 + reach, y0 + reach, TextAnchor.CENTER, style.small());
        if (area.contains(note.box(g2))) {
            note.drawOn(g2, style.palette().muted(), style.palette().background());
        }
    }
}
