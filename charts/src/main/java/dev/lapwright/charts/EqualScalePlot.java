package dev.lapwright.charts;

import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.PlotState;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYItemRenderer;
import org.jfree.data.xy.XYDataset;

/** A plot whose two axes have the same scale: it takes no more of its area than that allows, in the middle. */
final class EqualScalePlot extends XYPlot {
    private static final long serialVersionUID = 1L;

    EqualScalePlot(XYDataset data, ValueAxis domain, ValueAxis range, XYItemRenderer renderer) {
        super(data, domain, range, renderer);
    }

    @Override
    public void draw(Graphics2D g2, Rectangle2D area, Point2D anchor, PlotState parent, PlotRenderingInfo info) {
        AxisSpace space = calculateAxisSpace(g2, area);
        double width = area.getWidth() - space.getLeft() - space.getRight();
        double height = area.getHeight() - space.getTop() - space.getBottom();
        double acrossUnits = getDomainAxis().getRange().getLength();
        double upUnits = getRangeAxis().getRange().getLength();
        double pixelsPerUnit = Math.min(width / acrossUnits, height / upUnits);
        double spareWidth = width - pixelsPerUnit * acrossUnits;
        double spareHeight = height - pixelsPerUnit * upUnits;
        Rectangle2D fitted = new Rectangle2D.Double(
                area.getX() + spareWidth / 2,
                area.getY() + spareHeight / 2,
                area.getWidth() - spareWidth,
                area.getHeight() - spareHeight);
        super.draw(g2, fitted, anchor, parent, info);
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
