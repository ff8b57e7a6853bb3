package dev.lapwright.charts.plot;

import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CrosshairState;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYItemRendererState;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYDataset;

/** Marks at points, each series in one stroke of the pen: an SVG of a thousand marks stays small. */
public final class PointCloud extends XYLineAndShapeRenderer {
    private static final long serialVersionUID = 1L;

    public PointCloud() {
        super(false, true);
    }

    @Override
    public int getPassCount() {
        return 1;
    }

    @Override
    public void drawItem(
            Graphics2D g2,
            XYItemRendererState state,
            Rectangle2D area,
            PlotRenderingInfo info,
            XYPlot plot,
            ValueAxis domain,
            ValueAxis range,
            XYDataset data,
            int series,
            int item,
            CrosshairState crosshair,
            int pass) {
        if (item > 0) {
            return;
        }
        Shape mark = getItemShape(series, item);
        Path2D all = new Path2D.Double(Path2D.WIND_NON_ZERO);
        for (int i = 0; i < data.getItemCount(series); i++) {
            double x = domain.valueToJava2D(data.getXValue(series, i), area, plot.getDomainAxisEdge());
            double y = range.valueToJava2D(data.getYValue(series, i), area, plot.getRangeAxisEdge());
            all.append(AffineTransform.getTranslateInstance(x, y).createTransformedShape(mark), false);
        }
        g2.setPaint(getItemPaint(series, item));
        if (getItemShapeFilled(series, item)) {
            g2.fill(all);
        } else {
            g2.setStroke(getItemOutlineStroke(series, item));
            g2.draw(all);
        }
    }

    @Override
    public boolean equals(Object other) {
        return this == other;
    }

    @Override
    public int hashCode() {
        return System.identityHashCode(this);
    }
}
