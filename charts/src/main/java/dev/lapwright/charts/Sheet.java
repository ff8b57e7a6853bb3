package dev.lapwright.charts;

import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.RectangleInsets;

/** The sheet a chart stands on: a heading and a line of facts at the top left, margins, background. */
final class Sheet {
    private Sheet() {}

    /** A chart with its heading and facts. */
    static JFreeChart of(String heading, String facts, Plot plot, ChartStyle style) {
        plot.setOutlineVisible(false);
        JFreeChart chart = new JFreeChart(null, null, plot, false);
        chart.setBackgroundPaint(style.palette().background());
        chart.setPadding(new RectangleInsets(12, 14, 10, 26));
        TextTitle title = new TextTitle(heading, style.title());
        place(title, style, 2);
        chart.setTitle(title);
        TextTitle below = new TextTitle(facts, style.subtitle());
        place(below, style, 8);
        below.setPaint(style.palette().muted());
        chart.addSubtitle(below);
        return chart;
    }

    private static void place(TextTitle title, ChartStyle style, double bottom) {
        title.setPaint(style.palette().ink());
        title.setHorizontalAlignment(HorizontalAlignment.LEFT);
        title.setTextAlignment(HorizontalAlignment.LEFT);
        title.setPadding(new RectangleInsets(0, 2, bottom, 0));
        title.setExpandToFitSpace(true);
    }

    /** Plain ground and light grid lines for a plot with axes. */
    static void plain(XYPlot plot, ChartStyle style) {
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
    static String facts(String... facts) {
        return String.join(" · ", facts);
    }
}
