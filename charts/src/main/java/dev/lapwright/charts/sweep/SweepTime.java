package dev.lapwright.charts.sweep;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.ColourScale;
import dev.lapwright.charts.plot.EndLabelAxis;
import dev.lapwright.charts.plot.HeatMap;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.PointLabels;
import dev.lapwright.charts.plot.ReferenceLine;
import dev.lapwright.charts.plot.SeriesRenderers;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.study.sweep.SweepResult;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.data.Range;
import org.jfree.data.general.DatasetUtils;
import org.jfree.data.xy.DefaultXYDataset;
import org.jfree.data.xy.XYDataset;

/**
 * Lap time over what was swept. One axis gives a line; a second axis gives a line for each of its values, or a map in
 * colours with lines of equal lap time where it has more than six.
 */
public final class SweepTime {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.WIDE;

    private static final int MOST_POINTS = 60;
    /** Least height of the axis, s: a smaller effect is drawn small. */
    private static final double LEAST_SPAN = 0.05;

    private SweepTime() {}

    /** The chart of a sweep of one or two axes; where there is nothing that it could show, it says why. */
    public static JFreeChart of(SweepResult sweep, ChartStyle style) {
        String obstacle = SweepGrid.obstacle(sweep);
        if (!obstacle.isEmpty()) {
            return ChartLayout.message("Lap time: " + sweep.track().name(), obstacle, style);
        }
        SweepGrid table = SweepGrid.of(sweep);
        return table.fitsLines() ? lines(table, style) : map(table, style);
    }

    private static JFreeChart lines(SweepGrid table, ChartStyle style) {
        DefaultXYDataset data = new DefaultXYDataset();
        double[] families = table.families();
        List<EndLabelAxis.EndLabel> ends = new ArrayList<>();
        for (int f = 0; f < families.length; f++) {
            List<SweepGrid.Entry> entries = table.entries(f);
            if (entries.isEmpty()) {
                continue;
            }
            double[][] series = series(entries);
            String name = table.hasFamilies() ? table.familyText().value(families[f]) : "lap time";
            ends.add(new EndLabelAxis.EndLabel(
                    series[1][series[1].length - 1], name, style.colour(data.getSeriesCount())));
            data.addSeries(name, series);
        }
        XYLineAndShapeRenderer renderer = SeriesRenderers.withPoints(data, style, table.across().length <= MOST_POINTS);
        UnitAxis time = lapTimeAxis(table, data, style);
        XYPlot plot = new XYPlot(data, acrossAxis(table, style), time, renderer);
        ChartLayout.style(plot, style);
        double baseline = table.sweep().baseline().lapTime();
        PointLabels.Label best = best(table);
        // Where the fastest is as fast as the baseline, its label says so, and a second one would lie upon it.
        boolean same = LapTimeDifference.isNone(best.y() - baseline);
        plot.addAnnotation(
                new ReferenceLine(baseline, same ? "" : "baseline " + NumberText.lapTime(baseline), data, style));
        plot.addAnnotation(new PointLabels(List.of(best), data, true, new double[] {baseline}, style));
        plot.setDataset(1, SeriesRenderers.single("fastest", best.x(), best.y()));
        plot.setRenderer(1, SeriesRenderers.fastest(style, SeriesRenderers.RING));
        if (table.hasFamilies()) {
            plot.setRangeAxis(1, new EndLabelAxis(ends, time.getRange(), style));
        }
        return ChartLayout.chart(heading(table), facts(table), plot, style);
    }

    static String heading(SweepGrid table) {
        String over = table.acrossText().name();
        return "Lap time over " + AxisText.inSentence(over)
                + (table.hasFamilies()
                        ? " and " + AxisText.inSentence(table.familyText().name())
                        : "") + ": "
                + table.sweep().track().name();
    }

    static String facts(SweepGrid table) {
        List<String> facts = new ArrayList<>();
        facts.add(table.sweep().car().name());
        if (table.hasFamilies() && table.fitsLines()) {
            facts.add("one line for each "
                    + AxisText.inSentence(table.familyText().label()));
        }
        if (!table.warning().isEmpty()) {
            facts.add(table.warning());
        }
        return ChartLayout.facts(facts.toArray(new String[0]));
    }

    private static double[][] series(List<SweepGrid.Entry> entries) {
        double[][] series = new double[2][entries.size()];
        for (int i = 0; i < entries.size(); i++) {
            series[0][i] = entries.get(i).setting();
            series[1][i] = entries.get(i).figures().lapTime();
        }
        return series;
    }

    private static PointLabels.Label best(SweepGrid table) {
        int[] place = table.fastest();
        double time = table.at(place[0], place[1]).lapTime();
        return new PointLabels.Label(table.across()[place[1]], time, bestText(table), true, SeriesRenderers.RING);
    }

    /**
     * "fastest: 9 deg, 1:58.656 (−0.444 s)"; without the difference where there is none, and without "fastest" where there
     * is no other.
     */
    static String bestText(SweepGrid table) {
        int[] place = table.fastest();
        double time = table.at(place[0], place[1]).lapTime();
        double change = time - table.sweep().baseline().lapTime();
        long laps = table.sweep().points().stream()
                .filter(point -> point.figures().isPresent())
                .count();
        String best = (laps > 1 ? "fastest: " : "") + table.words(place) + ", " + NumberText.lapTime(time);
        return LapTimeDifference.isNone(change)
                ? best + " (as the baseline)"
                : best + " (" + NumberText.difference(change) + ")";
    }

    private static UnitAxis acrossAxis(SweepGrid table, ChartStyle style) {
        double[] across = table.across();
        UnitAxis axis = new UnitAxis(table.acrossText().label(), style, 0);
        Range range = UnitAxis.padded(across[0], across[across.length - 1], 0.03);
        if (table.hasFamilies() && across.length > 1) {
            // The labels at the right stand close to the ends of their lines.
            range = new Range(
                    range.getLowerBound(), across[across.length - 1] + 0.35 * (across[0] - range.getLowerBound()));
        }
        axis.setRange(range);
        return axis;
    }

    private static UnitAxis lapTimeAxis(SweepGrid table, DefaultXYDataset data, ChartStyle style) {
        double baseline = table.sweep().baseline().lapTime();
        Range range = Range.expandToInclude(DatasetUtils.findRangeBounds(data), baseline);
        double span = Math.max(LEAST_SPAN, range.getLength());
        range = UnitAxis.wide(range, LEAST_SPAN);
        UnitAxis axis = new UnitAxis(NumberText.lapTimeLabel(range.getUpperBound()), style, 0, NumberText::lapTimes);
        axis.setRange(range.getLowerBound() - 0.14 * span, range.getUpperBound() + 0.08 * span);
        return axis;
    }

    /** Two axes with many values each: coloured cells, lines of equal lap time, the fastest setting marked. */
    private static JFreeChart map(SweepGrid table, ChartStyle style) {
        double[] x = table.across();
        double[] y = table.families();
        double[][] z = new double[y.length][x.length];
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int j = 0; j < y.length; j++) {
            for (int i = 0; i < x.length; i++) {
                LapFigures figures = table.at(j, i);
                z[j][i] = figures == null ? Double.NaN : figures.lapTime();
                if (figures != null) {
                    low = Math.min(low, z[j][i]);
                    high = Math.max(high, z[j][i]);
                }
            }
        }
        // Light is fast, as on the track map.
        ColourScale ramp = new ColourScale(low, high, style.palette(), true);
        UnitAxis up = new UnitAxis(table.familyText().label(), style, 0);
        up.setRange(HeatMap.edge(y, 0, -1), HeatMap.edge(y, y.length - 1, 1));
        UnitAxis across = new UnitAxis(table.acrossText().label(), style, 0);
        across.setRange(HeatMap.edge(x, 0, -1), HeatMap.edge(x, x.length - 1, 1));
        int[] place = table.fastest();
        XYDataset best = SeriesRenderers.single("fastest", x[place[1]], y[place[0]]);
        XYPlot plot = new XYPlot(best, across, up, SeriesRenderers.fastest(style, SeriesRenderers.RING));
        ChartLayout.style(plot, style);
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinesVisible(false);
        plot.getRenderer()
                .addAnnotation(
                        new HeatMap(
                                x,
                                y,
                                z,
                                ramp,
                                table.sweep().baseline().lapTime(),
                                "baseline",
                                NumberText::lapTimes,
                                style),
                        Layer.BACKGROUND);
        String facts = ChartLayout.facts(facts(table), bestText(table));
        JFreeChart chart = ChartLayout.chart(heading(table), facts, plot, style);
        UnitAxis scale = new UnitAxis(NumberText.lapTimeLabel(high), style, 0, NumberText::lapTimes);
        chart.addSubtitle(ChartLayout.colourScale(ramp, scale, style));
        return chart;
    }
}
