package dev.lapwright.charts.plot;

import dev.lapwright.charts.ChartStyle;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemSource;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.PlotState;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.title.PaintScaleLegend;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;

/** The layout of a chart: heading, line of facts and legend at the top left, margins, ground, grid, a scale of colours at the right. */
public final class ChartLayout {
    private static final int SCALE_STEPS = 100;
    private static final double SCALE_WIDTH = 16;

    private ChartLayout() {}

    /** A chart with its heading and facts. */
    public static JFreeChart chart(String heading, String facts, Plot plot, ChartStyle style) {
        plot.setOutlineVisible(false);
        JFreeChart chart = new JFreeChart(null, null, plot, false);
        chart.setBackgroundPaint(style.palette().background());
        chart.setPadding(new RectangleInsets(12, 14, 10, 30));
        TextTitle title = new Heading(heading, style.title());
        place(title, style, 2);
        chart.setTitle(title);
        TextTitle below = new Heading(facts, style.subtitle());
        place(below, style, 8);
        below.setPaint(style.palette().muted());
        chart.addSubtitle(below);
        return chart;
    }

    /** A chart of nothing, with a sentence that says why: a result is never lost for its picture. */
    public static JFreeChart message(String heading, String sentence, ChartStyle style) {
        return chart(heading, sentence, new EmptyPlot(), style);
    }

    private static final class EmptyPlot extends Plot {
        private static final long serialVersionUID = 1L;

        EmptyPlot() {
            setBackgroundPaint(null);
        }

        @Override
        public String getPlotType() {
            return "nothing to show";
        }

        @Override
        public void draw(Graphics2D g2, Rectangle2D area, Point2D anchor, PlotState parent, PlotRenderingInfo info) {
            // The facts beneath the heading say all.
        }
    }

    private static void place(TextTitle title, ChartStyle style, double bottom) {
        title.setPaint(style.palette().ink());
        title.setHorizontalAlignment(HorizontalAlignment.LEFT);
        title.setTextAlignment(HorizontalAlignment.LEFT);
        title.setPadding(new RectangleInsets(0, 2, bottom, 0));
        title.setExpandToFitSpace(true);
    }

    /** Plain ground and light grid lines for a plot with axes. */
    public static void style(XYPlot plot, ChartStyle style) {
        plot.setBackgroundPaint(null);
        plot.setOutlineVisible(false);
        plot.setDomainGridlinePaint(style.palette().grid());
        plot.setRangeGridlinePaint(style.palette().grid());
        plot.setDomainGridlineStroke(ChartStyle.solid(1));
        plot.setRangeGridlineStroke(ChartStyle.solid(1));
        plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
        plot.setInsets(RectangleInsets.ZERO_INSETS);
    }

    /** Facts in one line, with dots between them. */
    public static String facts(String... facts) {
        return String.join(" · ", facts);
    }

    /** A legend without a frame, at the left between the facts and the plot. */
    public static LegendTitle legend(LegendItemSource source, ChartStyle style) {
        LegendTitle legend = new WrappedLegend(source);
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
    public static PaintScaleLegend colourScale(ColourScale ramp, UnitAxis axis, ChartStyle style) {
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
