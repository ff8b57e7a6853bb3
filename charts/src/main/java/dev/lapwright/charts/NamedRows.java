package dev.lapwright.charts;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;

/** A row for each adjustment: its name, and beneath it bars to the fastest and the slowest setting of its range. */
final class NamedRows extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;
    private static final double GAP = 4;

    private final transient List<GainBars> gains;
    private final double band;
    private final ChartStyle style;

    /** @param band reach of the shaded band either side of zero, s; NaN for none */
    NamedRows(List<GainBars> gains, double band, ChartStyle style) {
        this.gains = List.copyOf(gains);
        this.band = band;
        this.style = style;
    }

    /** Height of a row, px. */
    static int height(ChartStyle style) {
        return 2 * style.textSize() + 18;
    }

    /** A plot of rows over an axis of values; rows have no axis. */
    static XYPlot plot(List<String> names, UnitAxis values, ChartStyle style) {
        NumberAxis rows = new NumberAxis();
        rows.setVisible(false);
        rows.setRange(0, names.size());
        XYPlot plot = new XYPlot(null, values, rows, null);
        Sheet.plain(plot, style);
        plot.setRangeGridlinesVisible(false);
        // The label of a tick at the very end is half beyond it.
        plot.setInsets(new RectangleInsets(0, 1.2 * style.textSize(), 0, 0.8 * style.textSize()));
        return plot;
    }

    List<GainBars> gains() {
        return gains;
    }

    @Override
    public void draw(
            Graphics2D g2,
            XYPlot plot,
            Rectangle2D area,
            ValueAxis values,
            ValueAxis rows,
            int rendererIndex,
            PlotRenderingInfo info) {
        double zero = values.valueToJava2D(0, area, RectangleEdge.BOTTOM);
        double height = area.getHeight() / gains.size();
        if (!Double.isNaN(band)) {
            double left = Math.max(area.getMinX(), values.valueToJava2D(-band, area, RectangleEdge.BOTTOM));
            double right = Math.min(area.getMaxX(), values.valueToJava2D(band, area, RectangleEdge.BOTTOM));
            g2.setPaint(style.palette().band());
            g2.fill(new Rectangle2D.Double(left, area.getY(), right - left, area.getHeight()));
        }
        for (int row = 0; row < gains.size(); row++) {
            GainBars gain = gains.get(row);
            double top = area.getY() + row * height;
            g2.setPaint(style.palette().grid());
            g2.setStroke(ChartStyle.solid(1));
            g2.draw(new Line2D.Double(area.getX(), top, area.getMaxX(), top));
            new Note(gain.name(), area.getMinX() + GAP, top + 3, TextAnchor.TOP_LEFT, style.strong())
                    .drawOn(g2, style.palette().ink(), style.palette().background());
            double from = top + style.textSize() + 10;
            bar(g2, area, values, from, gain.best(), gain.bestAt(), style.colour(2), true);
            bar(g2, area, values, from, gain.worst(), gain.worstAt(), style.colour(3), false);
            if (gain.best() == 0 && gain.worst() == 0) {
                note(g2, area, "no difference", zero + GAP, from, false);
            }
        }
        g2.setPaint(style.palette().muted());
        g2.setStroke(ChartStyle.solid(1));
        g2.draw(new Line2D.Double(zero, area.getY(), zero, area.getMaxY()));
    }

    private void bar(
            Graphics2D g2,
            Rectangle2D area,
            ValueAxis values,
            double top,
            double value,
            String at,
            Color colour,
            boolean filled) {
        if (value == 0) {
            return;
        }
        double zero = values.valueToJava2D(0, area, RectangleEdge.BOTTOM);
        double end = values.valueToJava2D(value, area, RectangleEdge.BOTTOM);
        Rectangle2D face = new Rectangle2D.Double(Math.min(zero, end), top, Math.abs(end - zero), style.textSize());
        g2.setPaint(filled ? colour : style.palette().background());
        g2.fill(face);
        g2.setPaint(colour);
        g2.setStroke(ChartStyle.solid(1));
        g2.draw(face);
        String text = Numbers.signed(3).format(value) + (at.isEmpty() ? "" : " at " + at);
        note(g2, area, text, value < 0 ? face.getMinX() - GAP : face.getMaxX() + GAP, top, value < 0);
    }

    private void note(Graphics2D g2, Rectangle2D area, String text, double x, double top, boolean left) {
        TextAnchor anchor = left ? TextAnchor.CENTER_RIGHT : TextAnchor.CENTER_LEFT;
        new Note(text, x, top + style.textSize() / 2.0, anchor, style.small())
                .within(g2, area.getMinX(), area.getMaxX())
                .draw(g2, style.palette().ink());
    }
}
