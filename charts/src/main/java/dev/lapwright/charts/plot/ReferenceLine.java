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

/** A dashed line across the chart at the baseline, labelled where the data leave most room. */
public final class ReferenceLine extends AbstractXYAnnotation implements OwnLabels {
    private static final long serialVersionUID = 1L;
    private static final double GAP = 3;

    private final double level;
    private final String text;
    private final transient XYDataset data;
    private final ChartStyle style;

    public ReferenceLine(double level, String text, XYDataset data, ChartStyle style) {
        this.level = level;
        this.text = text;
        this.data = data;
        this.style = style;
    }

    public double level() {
        return level;
    }

    public String text() {
        return text;
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
        double y = range.valueToJava2D(level, area, RectangleEdge.LEFT);
        g2.setPaint(style.palette().ink());
        g2.setStroke(ChartStyle.dashed(1.2));
        g2.draw(new Line2D.Double(area.getMinX(), y, area.getMaxX(), y));
        for (PlacedText note : labels(g2, area, domain, range)) {
            note.drawOn(g2, style.palette().ink(), style.palette().background());
        }
    }

    @Override
    public List<PlacedText> labels(Graphics2D g2, Rectangle2D area, ValueAxis domain, ValueAxis range) {
        double y = range.valueToJava2D(level, area, RectangleEdge.LEFT);
        PlacedText best = null;
        double most = -1;
        for (double x : new double[] {area.getMinX() + GAP, area.getMaxX() - GAP}) {
            for (boolean above : new boolean[] {true, false}) {
                boolean left = x < area.getCenterX();
                TextAnchor anchor = above
                        ? left ? TextAnchor.BOTTOM_LEFT : TextAnchor.BOTTOM_RIGHT
                        : left ? TextAnchor.TOP_LEFT : TextAnchor.TOP_RIGHT;
                PlacedText note = new PlacedText(text, x, above ? y - GAP + 1 : y + GAP - 1, anchor, style.text());
                double room = room(note.box(g2), area, domain, range);
                if (area.contains(note.box(g2)) && room > most + 1) {
                    most = room;
                    best = note;
                }
            }
        }
        return text.isEmpty() || best == null ? List.of() : List.of(best);
    }

    /** How far the nearest line between points stays from a box, px. */
    private double room(Rectangle2D box, Rectangle2D area, ValueAxis domain, ValueAxis range) {
        double least = Double.MAX_VALUE;
        for (int series = 0; series < data.getSeriesCount(); series++) {
            double x0 = Double.NaN;
            double y0 = Double.NaN;
            for (int i = 0; i < data.getItemCount(series); i++) {
                double x = domain.valueToJava2D(data.getXValue(series, i), area, RectangleEdge.BOTTOM);
                double y = range.valueToJava2D(data.getYValue(series, i), area, RectangleEdge.LEFT);
                Line2D line = new Line2D.Double(i == 0 ? x : x0, i == 0 ? y : y0, x, y);
                double distance = line.intersects(box)
                        ? 0
                        : Math.min(
                                Math.min(
                                        line.ptSegDist(box.getMinX(), box.getMinY()),
                                        line.ptSegDist(box.getMaxX(), box.getMinY())),
                                Math.min(
                                        line.ptSegDist(box.getMinX(), box.getMaxY()),
                                        line.ptSegDist(box.getMaxX(), box.getMaxY())));
                least = Math.min(least, distance);
                x0 = x;
                y0 = y;
            }
        }
        return least;
    }
}
