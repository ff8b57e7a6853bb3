package dev.lapwright.charts;

import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYDataset;

/** Lines of series in the style's colours and strokes. */
final class Lines {
    private static final double LEGEND_LENGTH = 44;

    private static final Shape DOT = new Ellipse2D.Double(-3.5, -3.5, 7, 7);

    private Lines() {}

    /** Long enough to show how a line is dashed. */
    static Shape legendLine() {
        return new Line2D.Double(-LEGEND_LENGTH / 2, 0, LEGEND_LENGTH / 2, 0);
    }

    /** The dot of a point. */
    static Shape dot() {
        return DOT;
    }

    /** A renderer of plain lines for {@code count} series. */
    static XYLineAndShapeRenderer of(int count, ChartStyle style) {
        XYLineAndShapeRenderer lines = new XYLineAndShapeRenderer(true, false);
        // One path for each series, or dashes would start anew at every point.
        lines.setDrawSeriesLineAsPath(true);
        lines.setLegendLine(legendLine());
        for (int i = 0; i < count; i++) {
            lines.setSeriesPaint(i, style.colour(i));
            lines.setSeriesStroke(i, ChartStyle.line(i));
        }
        return lines;
    }

    /** Lines for all series of a dataset, with a dot at each point if wanted. */
    static XYLineAndShapeRenderer withPoints(XYDataset data, ChartStyle style, boolean points) {
        XYLineAndShapeRenderer lines = of(data.getSeriesCount(), style);
        for (int i = 0; i < data.getSeriesCount(); i++) {
            lines.setSeriesShapesVisible(i, points);
            lines.setSeriesShape(i, DOT);
            lines.setSeriesShapesFilled(i, true);
        }
        return lines;
    }
}
