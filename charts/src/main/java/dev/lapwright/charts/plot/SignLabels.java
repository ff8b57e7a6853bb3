package dev.lapwright.charts.plot;

import dev.lapwright.charts.ChartStyle;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.TextAnchor;

/** Labels at the left edge of a panel that say what values above and below zero mean. */
public final class SignLabels extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;
    private static final double GAP = 4;
    /** A lower panel, in heights of a line, has no room for both: its axis has the signs. */
    private static final double LEAST_LINES = 3.5;

    private final String above;
    private final String below;
    private final ChartStyle style;

    public SignLabels(String above, String below, ChartStyle style) {
        this.above = above;
        this.below = below;
        this.style = style;
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
        double x = area.getMinX() + GAP;
        if (area.getHeight() < LEAST_LINES * style.textSize()) {
            return;
        }
        new PlacedText(above, x, area.getMinY() + 1, TextAnchor.TOP_LEFT, style.small())
                .drawOn(g2, style.palette().muted(), style.palette().background());
        new PlacedText(below, x, area.getMaxY() - 1, TextAnchor.BOTTOM_LEFT, style.small())
                .drawOn(g2, style.palette().muted(), style.palette().background());
    }
}
