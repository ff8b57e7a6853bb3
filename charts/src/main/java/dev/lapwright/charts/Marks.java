package dev.lapwright.charts;

import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.DefaultXYDataset;
import org.jfree.data.xy.XYDataset;

/** Marks of single points that mean something: the baseline, the fastest. */
final class Marks {
    /** Radius of the ring round a dot, px. */
    static final double RING = 7;
    /** Radius of the ring round the largest of the sized points, px. */
    static final double WIDE_RING = SizedPoints.LARGEST + 4;

    /** Half the width of the baseline's diamond, px. */
    static final double DIAMOND = 11;

    private Marks() {}

    /** A heavy ring. */
    static XYLineAndShapeRenderer fastest(ChartStyle style, double radius) {
        Shape ring = new Ellipse2D.Double(-radius, -radius, 2 * radius, 2 * radius);
        return outlined(ring, style, true);
    }

    /** An open diamond, large enough to stand round the point of the same setting. */
    static XYLineAndShapeRenderer baseline(ChartStyle style) {
        Path2D diamond = new Path2D.Double();
        diamond.moveTo(0, -DIAMOND);
        diamond.lineTo(DIAMOND, 0);
        diamond.lineTo(0, DIAMOND);
        diamond.lineTo(-DIAMOND, 0);
        diamond.closePath();
        return outlined(diamond, style, false);
    }

    /** A dataset of one point. */
    static XYDataset single(String name, double x, double y) {
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
}
