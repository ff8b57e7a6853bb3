package dev.lapwright.charts;

import org.jfree.chart.LegendItemSource;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.title.PaintScaleLegend;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;

/** Legends in the style of the house: no frame, to the left, between the facts and the chart. */
final class Legends {
    private static final int SCALE_STEPS = 100;
    private static final double SCALE_WIDTH = 16;

    private Legends() {}

    static LegendTitle above(LegendItemSource source, ChartStyle style) {
        LegendTitle legend = new LegendTitle(source);
        legend.setPosition(RectangleEdge.TOP);
        legend.setHorizontalAlignment(HorizontalAlignment.LEFT);
        legend.setItemFont(style.text());
        legend.setItemPaint(style.palette().ink());
        legend.setFrame(BlockBorder.NONE);
        legend.setBackgroundPaint(null);
        legend.setItemLabelPadding(new RectangleInsets(2, 4, 2, 14));
        legend.setPadding(new RectangleInsets(0, 0, 6, 0));
        return legend;
    }

    /** A scale of colours at the right, its values beside it. */
    static PaintScaleLegend scale(ValueRamp ramp, UnitAxis axis, ChartStyle style) {
        axis.setRange(ramp.getLowerBound(), ramp.getUpperBound());
        axis.setAxisLineVisible(false);
        PaintScaleLegend legend = new PaintScaleLegend(ramp, axis);
        legend.setPosition(RectangleEdge.RIGHT);
        legend.setAxisLocation(AxisLocation.BOTTOM_OR_RIGHT);
        legend.setSubdivisionCount(SCALE_STEPS);
        legend.setStripWidth(SCALE_WIDTH);
        legend.setStripOutlineVisible(true);
        legend.setStripOutlinePaint(style.palette().muted());
        legend.setStripOutlineStroke(ChartStyle.solid(1));
        legend.setBackgroundPaint(null);
        legend.setFrame(BlockBorder.NONE);
        legend.setMargin(new RectangleInsets(40, 12, 40, 0));
        return legend;
    }
}
