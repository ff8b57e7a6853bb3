package dev.lapwright.charts;

import dev.lapwright.study.sweep.SweepResult;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.Range;
import org.jfree.data.general.DatasetUtils;
import org.jfree.data.xy.DefaultXYDataset;

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
    /** Lap times are written in thousandths; less than half of one is nothing, s. */
    private static final double NOTHING = 0.0005;

    private SweepTime() {}

    /**
     * The chart of a sweep of one or two axes.
     *
     * @throws dev.lapwright.fault.InvalidValueException if it has more axes, or if no setting gave a lap
     */
    public static JFreeChart of(SweepResult sweep, ChartStyle style) {
        SweepTable table = SweepTable.of(sweep);
        return table.fitsLines() ? lines(table, style) : SweepMap.of(table, style);
    }

    private static JFreeChart lines(SweepTable table, ChartStyle style) {
        DefaultXYDataset data = new DefaultXYDataset();
        double[] families = table.families();
        List<EndLabelAxis.EndLabel> ends = new ArrayList<>();
        for (int f = 0; f < families.length; f++) {
            List<SweepTable.Entry> entries = table.entries(f);
            if (entries.isEmpty()) {
                continue;
            }
            double[][] series = series(entries);
            String name = table.hasFamilies() ? table.familyText().value(families[f]) : "lap time";
            ends.add(new EndLabelAxis.EndLabel(
                    series[1][series[1].length - 1], name, style.colour(data.getSeriesCount())));
            data.addSeries(name, series);
        }
        XYLineAndShapeRenderer renderer = Lines.withPoints(data, style, table.across().length <= MOST_POINTS);
        UnitAxis time = lapTimeAxis(table, data, style);
        XYPlot plot = new XYPlot(data, acrossAxis(table, style), time, renderer);
        Sheet.plain(plot, style);
        double baseline = table.sweep().baseline().lapTime();
        PointLabels.Label best = best(table);
        // Where the fastest is as fast as the baseline, its label says so, and a second one would lie upon it.
        boolean same = Math.abs(best.y() - baseline) < NOTHING;
        plot.addAnnotation(
                new BaselineLabel(baseline, same ? "" : "baseline " + Numbers.lapTime(baseline), data, style));
        plot.addAnnotation(new PointLabels(List.of(best), data, true, new double[] {baseline}, style));
        plot.setDataset(1, Marks.single("fastest", best.x(), best.y()));
        plot.setRenderer(1, Marks.fastest(style, Marks.RING));
        if (table.hasFamilies()) {
            plot.setRangeAxis(1, new EndLabelAxis(ends, time.getRange(), style));
        }
        return Sheet.of(heading(table), facts(table), plot, style);
    }

    static String heading(SweepTable table) {
        String over = table.acrossText().name();
        return "Lap time over " + AxisText.inSentence(over)
                + (table.hasFamilies()
                        ? " and " + AxisText.inSentence(table.familyText().name())
                        : "") + ": "
                + table.sweep().track().name();
    }

    static String facts(SweepTable table) {
        List<String> facts = new ArrayList<>();
        facts.add(table.sweep().car().name());
        if (table.hasFamilies() && table.fitsLines()) {
            facts.add("one line for each "
                    + AxisText.inSentence(table.familyText().label()));
        }
        if (!table.warning().isEmpty()) {
            facts.add(table.warning());
        }
        return Sheet.facts(facts.toArray(new String[0]));
    }

    private static double[][] series(List<SweepTable.Entry> entries) {
        double[][] series = new double[2][entries.size()];
        for (int i = 0; i < entries.size(); i++) {
            series[0][i] = entries.get(i).setting();
            series[1][i] = entries.get(i).figures().lapTime();
        }
        return series;
    }

    private static PointLabels.Label best(SweepTable table) {
        int[] place = table.fastest();
        double time = table.at(place[0], place[1]).lapTime();
        return new PointLabels.Label(table.across()[place[1]], time, bestText(table), true, Marks.RING);
    }

    /**
     * "fastest: 9 deg, 1:58.656 (−0.444 s)"; without the difference where there is none, and without "fastest" where there
     * is no other.
     */
    static String bestText(SweepTable table) {
        int[] place = table.fastest();
        double time = table.at(place[0], place[1]).lapTime();
        double change = time - table.sweep().baseline().lapTime();
        long laps = table.sweep().points().stream()
                .filter(point -> point.figures().isPresent())
                .count();
        String best = (laps > 1 ? "fastest: " : "") + table.words(place) + ", " + Numbers.lapTime(time);
        return Math.abs(change) < NOTHING
                ? best + " (as the baseline)"
                : best + " (" + Numbers.difference(change) + ")";
    }

    private static UnitAxis acrossAxis(SweepTable table, ChartStyle style) {
        double[] across = table.across();
        UnitAxis axis = new UnitAxis(table.acrossText().label(), style, 0);
        Range range = padded(across[0], across[across.length - 1], 0.03);
        if (table.hasFamilies() && across.length > 1) {
            // The labels at the right stand close to the ends of their lines.
            range = new Range(
                    range.getLowerBound(), across[across.length - 1] + 0.35 * (across[0] - range.getLowerBound()));
        }
        axis.setRange(range);
        return axis;
    }

    /** A range with a margin either side; round a single value one of a tenth of it, or one. */
    static Range padded(double low, double high, double margin) {
        double span = high - low;
        double pad = span > 0 ? margin * span : low == 0 ? 1 : 0.1 * Math.abs(low);
        return new Range(low - pad, high + pad);
    }

    /** A range of at least this length about the same middle. */
    static Range wide(Range range, double least) {
        double add = Math.max(0, least - range.getLength()) / 2;
        return new Range(range.getLowerBound() - add, range.getUpperBound() + add);
    }

    private static UnitAxis lapTimeAxis(SweepTable table, DefaultXYDataset data, ChartStyle style) {
        double baseline = table.sweep().baseline().lapTime();
        Range range = Range.expandToInclude(DatasetUtils.findRangeBounds(data), baseline);
        double span = Math.max(LEAST_SPAN, range.getLength());
        range = wide(range, LEAST_SPAN);
        UnitAxis axis = new UnitAxis(lapTimeLabel(range.getUpperBound()), style, 0, Numbers::lapTimes);
        axis.setRange(range.getLowerBound() - 0.14 * span, range.getUpperBound() + 0.08 * span);
        return axis;
    }

    static String lapTimeLabel(double longest) {
        return longest < 60 ? "Lap time (s)" : "Lap time (min:s)";
    }
}
