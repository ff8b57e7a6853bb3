package dev.lapwright.charts;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;

/** The number of each gear upon its line, in the middle of the stretch that is used. */
final class GearNumbers extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;
    /** Where on its line an unused gear is named, as a share of the rev limit. */
    private static final double UNUSED_AT = 0.9;

    private final transient GearCurves gears;
    private final ChartStyle style;

    GearNumbers(GearCurves gears, ChartStyle style) {
        this.gears = gears;
        this.style = style;
    }

    @Override
    public void draw(
            Graphics2D g2,
            XYPlot plot,
            Rectangle2D area,
            ValueAxis speed,
            ValueAxis engine,
            int rendererIndex,
            PlotRenderingInfo info) {
        for (int gear = 1; gear <= gears.count(); gear++) {
            double from = gears.from(gear);
            double to = gears.to(gear);
            double used = (from + to) / 2;
            double most = Math.min(UNUSED_AT * gears.limitSpeed(gear), 0.97 * speed.getUpperBound() / Numbers.kmh(1));
            double at = Double.isNaN(used) ? most : used;
            new Note(
                            Integer.toString(gear),
                            speed.valueToJava2D(Numbers.kmh(at), area, RectangleEdge.BOTTOM),
                            engine.valueToJava2D(gears.rpm(gear, at), area, RectangleEdge.LEFT),
                            TextAnchor.CENTER,
                            style.strong())
                    .drawOn(g2, style.palette().ink(), style.palette().background());
        }
    }
}
