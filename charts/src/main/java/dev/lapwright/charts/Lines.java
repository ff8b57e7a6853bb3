package dev.lapwright.charts;

import java.awt.geom.Line2D;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;

/** Lines of series in the style's colours and strokes. */
final class Lines {
    private static final double LEGEND_LENGTH = 44;

    private Lines() {}

    /** A renderer of plain lines for {@code count} series. */
    static XYLineAndShapeRenderer of(int count, ChartStyle style) {
        XYLineAndShapeRenderer lines = new XYLineAndShapeRenderer(true, false);
        // One path for each series, or dashes would start anew at every point.
        lines.setDrawSeriesLineAsPath(true);
        lines.setLegendLine(new Line2D.Double(-LEGEND_LENGTH / 2, 0, LEGEND_LENGTH / 2, 0));
        for (int i = 0; i < count; i++) {
            lines.setSeriesPaint(i, style.colour(i));
            lines.setSeriesStroke(i, ChartStyle.line(i));
        }
        return lines;
    }
}
