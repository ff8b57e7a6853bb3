package dev.lapwright.charts.log;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.distance.DistancePanels;
import dev.lapwright.charts.distance.SpeedAxis;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.SeriesRenderers;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.fit.FitResult;
import dev.lapwright.lap.Lap;
import java.awt.BasicStroke;
import java.awt.Shape;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.plot.SeriesRenderingOrder;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.data.Range;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * Logged and simulated speed (km/h) over distance (m), the mean of the laps against the car as given and as fitted; beneath
 * it what the log has more than either (km/h), and where laps were left out of the fit.
 */
public final class FitSpeedChart {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.WIDE;

    private static final int LOGGED = 0;
    private static final int FITTED = 1;
    private static final int GIVEN = 3;
    /** Cells in which the laps weigh less than this are marked. */
    private static final double COUNTS = 0.5;
    /** Least height of the axis of differences to either side, km/h. */
    private static final double LEAST_SPAN = 4;

    private static final double ROOM_BELOW = 1.2;
    private static final double ROOM_ABOVE = 1.15;

    private FitSpeedChart() {}

    /** The chart of a fit. */
    public static JFreeChart of(FitResult result, ChartStyle style) {
        DistancePanels panels = new DistancePanels(result.after().stations(), new double[0], style);
        XYPlot speeds = speeds(result, style);
        panels.add(speeds, 350);
        XYPlot differences = differences(result, style);
        panels.add(differences, 200);
        int laps = result.laps().size();
        String facts = ChartLayout.facts(
                result.car().name(),
                laps + (laps == 1 ? " lap" : " laps"),
                "rms difference " + oneDecimal(result.agreement().residuals().rmsBefore()) + " km/h as given, "
                        + oneDecimal(result.agreement().residuals().rmsAfter()) + " km/h fitted");
        JFreeChart chart = ChartLayout.chart(
                "Logged and simulated speed: " + result.track().name(), facts, panels.plot(), style);
        chart.addLegend(ChartLayout.legend(() -> legend(speeds, differences, style), style));
        return chart;
    }

    /** The lines of the speeds, and what the bars mean where there are any. */
    private static LegendItemCollection legend(XYPlot speeds, XYPlot differences, ChartStyle style) {
        LegendItemCollection items = new LegendItemCollection();
        items.addAll(speeds.getLegendItems());
        if (differences.getDatasetCount() > 1) {
            Shape bar = new Rectangle2D.Double(-12, -3, 24, 6);
            items.add(new LegendItem(
                    "left out of the fit",
                    null,
                    null,
                    null,
                    bar,
                    style.palette().muted()));
        }
        return items;
    }

    private static String oneDecimal(double speed) {
        return NumberText.fixed(1).format(NumberText.kmh(speed));
    }

    private static String time(double seconds) {
        return Double.isFinite(seconds) ? ": " + NumberText.lapTime(seconds) : "";
    }

    private static XYPlot speeds(FitResult result, ChartStyle style) {
        DefaultXYDataset data = new DefaultXYDataset();
        FitResult.Trace trace = result.agreement().trace();
        String logged = result.laps().size() == 1
                ? "logged"
                : "logged, mean of " + result.laps().size() + " laps";
        data.addSeries(logged + time(result.loggedTime()), kmh(trace.distance(), trace.logged()));
        data.addSeries("car as given" + time(result.before().time()), lap(result.before()));
        data.addSeries("fitted car" + time(result.after().time()), lap(result.after()));
        XYPlot plot = new XYPlot(data, null, SpeedAxis.over(data, style), lines(style, LOGGED, GIVEN, FITTED));
        // The fitted car's dashes over the log's solid line: where they agree both are seen.
        plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD);
        return plot;
    }

    private static double[][] lap(Lap lap) {
        return SpeedAxis.series(lap);
    }

    private static double[][] kmh(double[] distance, double[] speed) {
        double[] values = new double[speed.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = NumberText.kmh(speed[i]);
        }
        return new double[][] {distance, values};
    }

    private static XYLineAndShapeRenderer lines(ChartStyle style, int... looks) {
        XYLineAndShapeRenderer lines = SeriesRenderers.of(looks.length, style);
        for (int i = 0; i < looks.length; i++) {
            lines.setSeriesPaint(i, style.colour(looks[i]));
            lines.setSeriesStroke(i, ChartStyle.line(looks[i]));
        }
        return lines;
    }

    private static XYPlot differences(FitResult result, ChartStyle style) {
        FitResult.Trace trace = result.agreement().trace();
        DefaultXYDataset data = new DefaultXYDataset();
        double[] given = difference(trace.logged(), trace.before());
        double[] fitted = difference(trace.logged(), trace.after());
        data.addSeries("car as given", kmh(trace.distance(), given));
        data.addSeries("fitted car", kmh(trace.distance(), fitted));
        XYLineAndShapeRenderer lines = lines(style, GIVEN, FITTED);
        UnitAxis axis = new UnitAxis("Log less model (km/h)", style, 0, NumberText::signed).withCloseTicks();
        Range range = range(given, fitted);
        axis.setRange(range);
        XYPlot plot = new XYPlot(data, null, axis, lines);
        plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD);
        ValueMarker zero = new ValueMarker(0, style.colour(LOGGED), ChartStyle.solid(1));
        zero.setAlpha(1);
        plot.addRangeMarker(zero, Layer.BACKGROUND);
        markLeftOut(plot, trace, range, style);
        return plot;
    }

    private static double[] difference(double[] logged, double[] model) {
        double[] difference = new double[logged.length];
        for (int i = 0; i < difference.length; i++) {
            difference[i] = logged[i] - model[i];
        }
        return difference;
    }

    private static Range range(double[]... differences) {
        double low = -LEAST_SPAN;
        double high = LEAST_SPAN;
        for (double[] each : differences) {
            for (double value : each) {
                if (Double.isFinite(value)) {
                    low = Math.min(low, NumberText.kmh(value));
                    high = Math.max(high, NumberText.kmh(value));
                }
            }
        }
        return new Range(ROOM_BELOW * low, ROOM_ABOVE * high);
    }

    /** Bars along the lower edge where the laps hardly count. */
    private static void markLeftOut(XYPlot plot, FitResult.Trace trace, Range range, ChartStyle style) {
        double[] s = trace.distance();
        double[] weight = trace.weight();
        double cell = s.length > 1 ? s[1] - s[0] : 0;
        DefaultXYDataset bars = new DefaultXYDataset();
        double[] level = new double[s.length];
        boolean any = false;
        for (int i = 0; i < s.length; i++) {
            boolean left = !(weight[i] >= COUNTS);
            level[i] = left ? range.getLowerBound() : Double.NaN;
            any |= left;
        }
        if (!any) {
            return;
        }
        bars.addSeries("left out of the fit", steps(s, level, cell / 2));
        XYLineAndShapeRenderer bar = new XYLineAndShapeRenderer(true, false);
        bar.setDrawSeriesLineAsPath(true);
        bar.setSeriesPaint(0, style.palette().muted());
        bar.setSeriesStroke(0, new BasicStroke(9, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND));
        plot.setDataset(1, bars);
        plot.setRenderer(1, bar);
    }

    /** Each cell from its beginning to its end, so that a single one is seen. */
    private static double[][] steps(double[] middle, double[] level, double half) {
        double[][] steps = new double[2][2 * middle.length];
        for (int i = 0; i < middle.length; i++) {
            steps[0][2 * i] = middle[i] - half;
            steps[0][2 * i + 1] = middle[i] + half;
            steps[1][2 * i] = level[i];
            steps[1][2 * i + 1] = level[i];
        }
        return steps;
    }
}
