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
 * Speed (km/h) of several laps of one track over distance (m), and beneath it how far each is behind the first (s): the time
 * at which it passes a place less the time at which the first does, positive when it is behind.
 */
public final class SpeedComparison {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.WIDE;

    private static final double SAME_LENGTH = 1e-6;
    /** Least height of the axis of differences, s: a smaller difference is drawn small. */
    private static final double LEAST_SPAN = 0.02;

    private SpeedComparison() {}

    /**
     * The chart of two or more laps; the first is what the others are compared with.
     *
     * @throws InvalidValueException if there are fewer than two laps or more than can be told apart, if two carry one name, or
     *     if they are not laps of one track
     */
    public static JFreeChart of(List<NamedLap> laps, ChartStyle style) {
        check(laps);
        Lap first = laps.get(0).lap();
        DistancePanels panels = new DistancePanels(first.stations(), new double[0], style);
        XYPlot speeds = speeds(laps, style);
        panels.add(speeds, 350);
        panels.add(differences(laps, style), 170);
        String facts =
                ChartLayout.facts(cars(laps), "compared with " + laps.get(0).name());
        JFreeChart chart = ChartLayout.chart("Speed compared: " + first.track().name(), facts, panels.plot(), style);
        chart.addLegend(ChartLayout.legend(speeds, style));
        return chart;
    }

    private static void check(List<NamedLap> laps) {
        int most = ChartStyle.distinctLines();
        if (laps.size() < 2 || laps.size() > most) {
            throw new InvalidValueException(
                    "laps", laps.size() + " laps cannot be compared in one chart", "give 2 to " + most);
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
        DefaultXYDataset data = new DefaultXYDataset();
        Lap first = laps.get(0).lap();
        List<EndLabelAxis.EndLabel> ends = new ArrayList<>();
        for (int i = 1; i < laps.size(); i++) {
            Lap lap = laps.get(i).lap();
            data.addSeries(laps.get(i).name(), behind(first, lap));
            double total = lap.time() - first.time();
            ends.add(new EndLabelAxis.EndLabel(total, NumberText.difference(total), style.colour(i)));
        }
        XYLineAndShapeRenderer lines = SeriesRenderers.of(laps.size() - 1, style);
        for (int i = 1; i < laps.size(); i++) {
            lines.setSeriesPaint(i - 1, style.colour(i));
            lines.setSeriesStroke(i - 1, ChartStyle.line(i));
        }
        UnitAxis axis = new UnitAxis("Difference (s)", style, 0, NumberText::signed);
        axis.setRange(withMargin(DatasetUtils.findRangeBounds(data)));
        XYPlot plot = new XYPlot(data, null, axis, lines);
        plot.setRangeAxis(1, new EndLabelAxis(ends, axis.getRange(), style));
        ValueMarker zero = new ValueMarker(0, style.colour(0), ChartStyle.solid(1));
        zero.setAlpha(1);
        plot.addRangeMarker(zero, Layer.BACKGROUND);
        String reference = laps.get(0).name();
        plot.addAnnotation(new SignLabels("+ behind " + reference, "\u2212 ahead of " + reference, style));
        return plot;
    }

    private static Range withMargin(Range data) {
        double low = Math.min(0, data.getLowerBound());
        double high = Math.max(0, data.getUpperBound());
        double span = Math.max(LEAST_SPAN, high - low);
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
