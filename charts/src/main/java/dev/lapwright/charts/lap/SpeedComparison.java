package dev.lapwright.charts.lap;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.distance.DistancePanels;
import dev.lapwright.charts.distance.SpeedAxis;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.EndLabelAxis;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.SeriesRenderers;
import dev.lapwright.charts.plot.SignLabels;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.SeriesRenderingOrder;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.data.Range;
import org.jfree.data.general.DatasetUtils;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * Speed (km/h) of several laps of one track over distance (m); beneath it each one's speed less that of the first (km/h), and
 * how far it is behind the first (s): the time at which it passes a place less the time at which the first does, positive when
 * it is behind.
 */
public final class SpeedComparison {
    /** The size it is designed for. */
    public static final ImageSize SIZE = new ImageSize(1200, 820);

    private static final double SAME_LENGTH = 1e-6;
    /** Least height of the axis of differences, s: a smaller difference is drawn small. */
    private static final double LEAST_SPAN = 0.02;
    /** Least height of the axis of differences of speed, km/h. */
    private static final double LEAST_SPEEDS = 2;

    private SpeedComparison() {}

    /**
     * The chart of two or more laps; the first is what the others are compared with. Of more than six, which cannot be told
     * apart, the first six are drawn, and the chart says so.
     *
     * @throws InvalidValueException if there are fewer than two laps, if two carry one name, or if they are not laps of one
     *     track
     */
    public static JFreeChart of(List<NamedLap> all, ChartStyle style) {
        check(all);
        List<NamedLap> laps = all.subList(0, Math.min(all.size(), ChartStyle.distinctLines()));
        Lap first = laps.get(0).lap();
        DistancePanels panels = new DistancePanels(first.stations(), new double[0], style);
        XYPlot speeds = speeds(laps, style);
        panels.add(speeds, 330);
        panels.add(speedDifferences(laps, style), 150);
        panels.add(differences(laps, style), 150);
        String compared = "compared with " + laps.get(0).name();
        String facts = laps.size() == all.size()
                ? ChartLayout.facts(cars(laps), compared)
                : ChartLayout.facts(cars(laps), compared, "the first " + laps.size() + " of " + all.size() + " laps");
        JFreeChart chart = ChartLayout.chart("Speed compared: " + first.track().name(), facts, panels.plot(), style);
        chart.addLegend(ChartLayout.legend(speeds, style));
        return chart;
    }

    private static void check(List<NamedLap> laps) {
        if (laps.size() < 2) {
            throw new InvalidValueException("laps", laps.size() + " laps cannot be compared", "give two or more");
        }
        Lap first = laps.get(0).lap();
        Set<String> names = new HashSet<>();
        for (NamedLap named : laps) {
            if (!names.add(named.name())) {
                throw new InvalidValueException(
                        "laps", "two are called '" + named.name() + "'", "give each lap its own name");
            }
            double length = named.lap().track().length();
            boolean same = Math.abs(length - first.track().length()) <= SAME_LENGTH * length;
            if (!same || !named.lap().track().name().equals(first.track().name())) {
                throw new InvalidValueException(
                        named.name(),
                        "it is a lap of " + named.lap().track().name() + " (" + Check.text(length)
                                + " m), the first is one of "
                                + first.track().name() + " ("
                                + Check.text(first.track().length()) + " m)",
                        "compare laps of one track");
            }
        }
    }

    private static String cars(List<NamedLap> laps) {
        return laps.stream().map(l -> l.lap().vehicle().car().name()).distinct().collect(Collectors.joining(", "));
    }

    private static XYPlot speeds(List<NamedLap> laps, ChartStyle style) {
        DefaultXYDataset data = new DefaultXYDataset();
        for (NamedLap named : laps) {
            data.addSeries(named.name() + ": " + NumberText.lapTime(named.lap().time()), SpeedAxis.series(named.lap()));
        }
        XYPlot plot = new XYPlot(data, null, SpeedAxis.over(data, style), SeriesRenderers.of(laps.size(), style));
        // Dashed lines over the solid one of the first lap: where laps are equal both are seen.
        plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD);
        return plot;
    }

    private static XYPlot differences(List<NamedLap> laps, ChartStyle style) {
        Lap first = laps.get(0).lap();
        String reference = laps.get(0).name();
        XYPlot plot = differences(laps, "Time (s)", LEAST_SPAN, lap -> behind(first, lap), style);
        List<EndLabelAxis.EndLabel> ends = new ArrayList<>();
        for (int i = 1; i < laps.size(); i++) {
            double total = laps.get(i).lap().time() - first.time();
            ends.add(new EndLabelAxis.EndLabel(total, NumberText.difference(total), style.colour(i)));
        }
        plot.setRangeAxis(1, new EndLabelAxis(ends, plot.getRangeAxis().getRange(), style));
        plot.addAnnotation(new SignLabels("+ behind " + reference, "\u2212 ahead of " + reference, style));
        return plot;
    }

    /** Where the traces of speed lie upon each other, this shows what lies between them. */
    private static XYPlot speedDifferences(List<NamedLap> laps, ChartStyle style) {
        Lap first = laps.get(0).lap();
        XYPlot plot = differences(laps, "Speed (km/h)", LEAST_SPEEDS, lap -> faster(first, lap), style);
        String reference = laps.get(0).name();
        plot.addAnnotation(new SignLabels("+ faster than " + reference, "\u2212 slower", style));
        return plot;
    }

    /** A panel with a line for each lap but the first, which is the line of zero. */
    private static XYPlot differences(
            List<NamedLap> laps,
            String label,
            double leastSpan,
            Function<Lap, double[][]> difference,
            ChartStyle style) {
        DefaultXYDataset data = new DefaultXYDataset();
        XYLineAndShapeRenderer lines = SeriesRenderers.of(laps.size() - 1, style);
        for (int i = 1; i < laps.size(); i++) {
            data.addSeries(laps.get(i).name(), difference.apply(laps.get(i).lap()));
            lines.setSeriesPaint(i - 1, style.colour(i));
            lines.setSeriesStroke(i - 1, ChartStyle.line(i));
        }
        UnitAxis axis = new UnitAxis(label, style, 0, NumberText::signed).withCloseTicks();
        axis.setRange(withMargin(DatasetUtils.findRangeBounds(data), leastSpan));
        XYPlot plot = new XYPlot(data, null, axis, lines);
        ValueMarker zero = new ValueMarker(0, style.colour(0), ChartStyle.solid(1));
        zero.setAlpha(1);
        plot.addRangeMarker(zero, Layer.BACKGROUND);
        return plot;
    }

    /** Distance (m) and how much faster than {@code first} (km/h) at the stations of {@code first}: [2][stations]. */
    static double[][] faster(Lap first, Lap lap) {
        double[][] reference = SpeedAxis.series(first);
        double[][] other = SpeedAxis.series(lap);
        double[] faster = new double[reference[0].length];
        int last = other[0].length - 1;
        for (int i = 0, k = 0; i < faster.length; i++) {
            double s = Math.min(reference[0][i], other[0][last]);
            while (k < last - 1 && other[0][k + 1] < s) {
                k++;
            }
            double part = (s - other[0][k]) / (other[0][k + 1] - other[0][k]);
            faster[i] = other[1][k] + part * (other[1][k + 1] - other[1][k]) - reference[1][i];
        }
        return new double[][] {reference[0], faster};
    }

    private static Range withMargin(Range data, double leastSpan) {
        double low = Math.min(0, data.getLowerBound());
        double high = Math.max(0, data.getUpperBound());
        double span = Math.max(leastSpan, high - low);
        return new Range(low - 0.18 * span, high + 0.18 * span);
    }

    /** Distance (m) and how far behind {@code first} (s) at the stations of {@code first}: [2][stations]. */
    static double[][] behind(Lap first, Lap lap) {
        double[] s = first.column(Channel.DISTANCE);
        double[] t = first.column(Channel.TIME);
        double[] others = lap.column(Channel.DISTANCE);
        double end = others[others.length - 1];
        double[] behind = new double[s.length];
        for (int i = 0; i < s.length; i++) {
            behind[i] = lap.timeAt(Math.min(s[i], end)) - t[i];
        }
        return new double[][] {s, behind};
    }

    /**
     * A lap and what to call it in a comparison.
     *
     * @param name short, such as {@code rear wing 6 deg}; not blank
     * @param lap the lap
     */
    public record NamedLap(String name, Lap lap) {
        public NamedLap {
            Objects.requireNonNull(lap, "lap");
            if (name.isBlank()) {
                throw new InvalidValueException("lap name", "it is blank", "give each lap a short name");
            }
        }
    }
}
