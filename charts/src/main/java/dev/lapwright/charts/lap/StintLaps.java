package dev.lapwright.charts.lap;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.EndLabelAxis;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.PointLabels;
import dev.lapwright.charts.plot.SeriesRenderers;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.study.stint.StintResult;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.Range;
import org.jfree.data.general.DatasetUtils;
import org.jfree.data.xy.DefaultXYDataset;

/** Lap time over the laps of a stint, a line for each compound, with the laps from which another compound is the faster. */
public final class StintLaps {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.WIDE;

    private static final int MOST_POINTS = 60;
    /** Least height of the axis, s: a smaller effect is drawn small. */
    private static final double LEAST_SPAN = 0.1;

    private final StintResult stint;
    private final ChartStyle style;

    private StintLaps(StintResult stint, ChartStyle style) {
        this.stint = stint;
        this.style = style;
    }

    /** The chart of a stint on one compound or more. */
    public static JFreeChart of(StintResult stint, ChartStyle style) {
        return new StintLaps(stint, style).chart();
    }

    private JFreeChart chart() {
        DefaultXYDataset data = new DefaultXYDataset();
        List<EndLabelAxis.EndLabel> ends = new ArrayList<>();
        for (StintResult.Run run : stint.runs()) {
            double[][] series = series(run);
            String name = run.compound().name();
            ends.add(new EndLabelAxis.EndLabel(
                    series[1][series[1].length - 1], name, style.colour(data.getSeriesCount())));
            data.addSeries(name, series);
        }
        int longest =
                stint.runs().stream().mapToInt(run -> run.laps().size()).max().orElseThrow();
        UnitAxis lap = new UnitAxis("Lap", style, 1);
        lap.setRange(0.5, longest + 0.5);
        Range times = UnitAxis.wide(DatasetUtils.findRangeBounds(data), LEAST_SPAN);
        times = UnitAxis.padded(times.getLowerBound(), times.getUpperBound(), 0.14);
        UnitAxis time = new UnitAxis(NumberText.lapTimeLabel(times.getUpperBound()), style, 0, NumberText::lapTimes);
        time.setRange(times);
        XYLineAndShapeRenderer lines = SeriesRenderers.withPoints(data, style, longest <= MOST_POINTS);
        XYPlot plot = new XYPlot(data, lap, time, lines);
        ChartLayout.style(plot, style);
        plot.setRangeAxis(1, new EndLabelAxis(ends, times, style));
        plot.setRangeAxisLocation(1, AxisLocation.TOP_OR_RIGHT);
        List<PointLabels.Label> crossings = crossings();
        plot.addAnnotation(new PointLabels(crossings, data, true, new double[0], style));
        plot.setDataset(1, marks(crossings));
        plot.setRenderer(1, SeriesRenderers.fastest(style, SeriesRenderers.RING));
        return ChartLayout.chart("Lap time over a stint: " + stint.lap().track().name(), facts(), plot, style);
    }

    private static double[][] series(StintResult.Run run) {
        double[][] series = new double[2][run.laps().size()];
        for (int i = 0; i < run.laps().size(); i++) {
            StintResult.RunLap lap = run.laps().get(i);
            series[0][i] = i + 1;
            series[1][i] = lap.time();
        }
        return series;
    }

    private List<PointLabels.Label> crossings() {
        List<PointLabels.Label> labels = new ArrayList<>();
        for (StintResult.Run slower : stint.runs()) {
            for (StintResult.Run faster : stint.runs()) {
                int from = slower.fasterFrom(faster);
                if (from > 0) {
                    labels.add(new PointLabels.Label(
                            from,
                            faster.laps().get(from - 1).time(),
                            faster.compound().name() + " faster than "
                                    + slower.compound().name() + " from lap " + from,
                            true,
                            SeriesRenderers.RING));
                }
            }
        }
        return labels;
    }

    private static DefaultXYDataset marks(List<PointLabels.Label> labels) {
        DefaultXYDataset marks = new DefaultXYDataset();
        double[][] at = new double[2][labels.size()];
        for (int i = 0; i < labels.size(); i++) {
            at[0][i] = labels.get(i).x();
            at[1][i] = labels.get(i).y();
        }
        marks.addSeries("crossover", at);
        return marks;
    }

    private String facts() {
        List<String> facts = new ArrayList<>();
        facts.add(stint.lap().vehicle().car().name());
        facts.add("from " + NumberText.fixed(1).format(stint.startFuel()) + " kg of fuel before the formation lap");
        facts.add("grip and wear as given, not measured");
        return ChartLayout.facts(facts.toArray(String[]::new));
    }
}
