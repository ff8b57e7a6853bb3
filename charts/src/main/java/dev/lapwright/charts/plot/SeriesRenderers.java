package dev.lapwright.charts.plot;

import dev.lapwright.charts.ChartStyle;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.DefaultXYDataset;
import org.jfree.data.xy.XYDataset;

/** Renderers of lines and marks in the style's colours and strokes: series, single points that mean something, a road's edges. */
public final class SeriesRenderers {
    /** Radius of the ring round a dot, px. */
    public static final double RING = 7;

    /** Half the width of the baseline's diamond, px. */
    public static final double DIAMOND = 11;

    /** Width of the edges of a road and of its centre line, px. */
    private static final double THIN = 1;

    private static final double LEGEND_LENGTH = 44;

    private static final Shape DOT = new Ellipse2D.Double(-3.5, -3.5, 7, 7);

    private SeriesRenderers() {}

    /** Long enough to show how a line is dashed. */
    public static Shape legendLine() {
        return new Line2D.Double(-LEGEND_LENGTH / 2, 0, LEGEND_LENGTH / 2, 0);
    }

    /** The dot of a point. */
    public static Shape dot() {
        return DOT;
    }

    /** A renderer of plain lines for {@code count} series. */
    public static XYLineAndShapeRenderer of(int count, ChartStyle style) {
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
    public static XYLineAndShapeRenderer withPoints(XYDataset data, ChartStyle style, boolean points) {
        XYLineAndShapeRenderer lines = of(data.getSeriesCount(), style);
        for (int i = 0; i < data.getSeriesCount(); i++) {
            lines.setSeriesShapesVisible(i, points);
            lines.setSeriesShape(i, DOT);
            lines.setSeriesShapesFilled(i, true);
        }
        return lines;
    }

    /** A heavy ring. */
    public static XYLineAndShapeRenderer fastest(ChartStyle style, double radius) {
        Shape ring = new Ellipse2D.Double(-radius, -radius, 2 * radius, 2 * radius);
        return outlined(ring, style, true);
    }

    /** An open diamond, large enough to stand round the point of the same setting. */
    public static XYLineAndShapeRenderer baseline(ChartStyle style) {
        return outlined(diamond(), style, false);
    }

    /** A heavy diamond with a ground of its own, to be seen on every colour of a map. */
    public static XYLineAndShapeRenderer baselineOnMap(ChartStyle style) {
        return outlined(diamond(), style, true);
    }

    private static Shape diamond() {
        Path2D diamond = new Path2D.Double();
        diamond.moveTo(0, -DIAMOND);
        diamond.lineTo(DIAMOND, 0);
        diamond.lineTo(0, DIAMOND);
        diamond.lineTo(-DIAMOND, 0);
        diamond.closePath();
        return diamond;
    }

    /** A dataset of one point. */
    public static XYDataset single(String name, double x, double y) {
        DefaultXYDataset data = new DefaultXYDataset();
        data.addSeries(name, new double[][] {{x}, {y}});
        return data;
    }

    private static XYLineAndShapeRenderer outlined(Shape shape, ChartStyle style, boolean filled) {
        XYLineAndShapeRenderer marker = new XYLineAndShapeRenderer(false, true);
        marker.setSeriesShape(0, shape);
        marker.setSeriesPaint(0, style.palette().ink());
        marker.setSeriesFillPaint(0, style.palette().background());
        marker.setSeriesShapesFilled(0, filled);
        marker.setUseFillPaint(true);
        marker.setDrawOutlines(true);
        marker.setSeriesOutlineStroke(0, ChartStyle.solid(filled ? 2.5 : 1.5));
        return marker;
    }

    /** The road's own path: fine dashes. */
    public static Stroke centreLine() {
        return ChartStyle.dashed(THIN);
    }

    /** A renderer of the centre line, the left edge and the right edge; the last is not in the legend. */
    public static XYLineAndShapeRenderer road(ChartStyle style) {
        XYLineAndShapeRenderer road = of(3, style);
        road.setSeriesPaint(0, style.palette().muted());
        road.setSeriesStroke(0, centreLine());
        for (int edge = 1; edge <= 2; edge++) {
            road.setSeriesPaint(edge, style.palette().ink());
            road.setSeriesStroke(edge, ChartStyle.solid(THIN));
        }
        road.setSeriesVisibleInLegend(2, false);
        return road;
    }
}
