package dev.lapwright.charts.log;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.EndLabelAxis;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.PointCloud;
import dev.lapwright.charts.plot.SeriesRenderers;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.evidence.CleanLaps;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.evidence.TimingLog;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.Range;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * Every lap of a log over its number: each setup in marks and strokes of its own, laps that count filled, others hollow, those
 * that lie beyond it at its edge; a line for each run, at its median with the trend.
 */
public final class LapLog {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.WIDE;

    private static final double PADDING = 0.12;
    /** Least height of the picture, s. */
    private static final double LEAST = 0.1;
    /** Hollow laps are shown up to so many times the height of the clean ones above or below these; others at the edge. */
    private static final double ROOM_FOR_OTHERS = 0.5;

    /** Room before the first lap and after the last, and between a mark at the edge and this, as shares of the picture. */
    private static final double ENDS = 0.06;

    private static final double EDGE = 0.025;

    private static final double MARK = 4;

    private final EvidenceResult result;
    private final CleanLaps laps;
    private final TimingLog log;
    private final ChartStyle style;
    private final Range times;

    private LapLog(EvidenceResult result, ChartStyle style) {
        this.result = result;
        this.style = style;
        laps = result.laps();
        log = laps.log();
        times = times();
    }

    /**
     * The chart.
     *
     * @param subject what was driven, such as the name of the log
     */
    public static JFreeChart of(String subject, EvidenceResult result, ChartStyle style) {
        return new LapLog(result, style).chart(subject);
    }

    private double time(int lap) {
        return log.laps().get(lap).time();
    }

    /** What is shown of the axis of times. */
    private Range times() {
        int[] clean = laps.clean().length > 0
                ? laps.clean()
                : IntStream.range(0, log.laps().size()).toArray();
        double low = Arrays.stream(clean).mapToDouble(this::time).min().orElse(0);
        double high = Arrays.stream(clean).mapToDouble(this::time).max().orElse(1);
        double limit = high + ROOM_FOR_OTHERS * Math.max(LEAST, high - low);
        double lowLimit = low - (limit - high);
        for (int i = 0; i < log.laps().size(); i++) {
            low = time(i) >= lowLimit ? Math.min(low, time(i)) : low;
            high = time(i) <= limit ? Math.max(high, time(i)) : high;
        }
        Range wide = UnitAxis.wide(new Range(low, high), LEAST);
        return UnitAxis.padded(wide.getLowerBound(), wide.getUpperBound(), PADDING);
    }

    /** The axis of laps, with room for whole marks at either end of a small picture. */
    private Range numbers() {
        int first = log.sessionLap(0);
        int last = log.sessionLap(log.laps().size() - 1);
        double room = Math.max(1, ENDS * (last - first));
        return new Range(first - room, last + room);
    }

    private boolean isShown(int lap) {
        return times.contains(time(lap));
    }

    private JFreeChart chart(String subject) {
        UnitAxis lap = new UnitAxis("Lap", style, 1);
        lap.setRange(numbers());
        UnitAxis time = new UnitAxis(NumberText.lapTimeLabel(times.getUpperBound()), style, 0, NumberText::lapTimes);
        time.setRange(times);
        XYPlot plot = new XYPlot(new DefaultXYDataset(), lap, time, marks(true));
        DefaultXYDataset clean = new DefaultXYDataset();
        DefaultXYDataset others = new DefaultXYDataset();
        for (String setup : log.setups()) {
            clean.addSeries(setup, points(laps.clean(setup)));
            others.addSeries(setup, points(others(setup)));
        }
        plot.setDataset(0, clean);
        plot.setDataset(1, others);
        plot.setRenderer(1, marks(false));
        plot.setDataset(2, beyond());
        plot.setRenderer(2, edge());
        plot.setDataset(3, runs());
        plot.setRenderer(3, runLines());
        plot.setRangeAxis(1, new EndLabelAxis(endLabels(), times, style));
        plot.setRangeAxisLocation(1, AxisLocation.TOP_OR_RIGHT);
        ChartLayout.style(plot, style);
        JFreeChart chart = ChartLayout.chart("Every lap: " + subject, facts(), plot, style);
        chart.addLegend(ChartLayout.legend(this::legend, style));
        return chart;
    }

    private int[] others(String setup) {
        List<Integer> others = new ArrayList<>();
        for (int i = 0; i < log.laps().size(); i++) {
            boolean counts = laps.status(i) == CleanLaps.Status.CLEAN;
            if (!counts && isShown(i) && log.laps().get(i).setup().equals(setup)) {
                others.add(i);
            }
        }
        return others.stream().mapToInt(i -> i).toArray();
    }

    private double[][] points(int... indices) {
        double[][] points = new double[2][indices.length];
        for (int k = 0; k < indices.length; k++) {
            points[0][k] = log.sessionLap(indices[k]);
            points[1][k] = time(indices[k]);
        }
        return points;
    }

    /** For each setup slower laps, then faster ones. */
    private DefaultXYDataset beyond() {
        DefaultXYDataset data = new DefaultXYDataset();
        // Just within the edge, so that the whole mark is seen.
        double inset = EDGE * times.getLength();
        for (String setup : log.setups()) {
            data.addSeries(setup + " slower", beyond(setup, true, times.getUpperBound() - inset));
            data.addSeries(setup + " faster", beyond(setup, false, times.getLowerBound() + inset));
        }
        return data;
    }

    private double[][] beyond(String setup, boolean above, double edge) {
        List<Integer> beyond = new ArrayList<>();
        for (int i = 0; i < log.laps().size(); i++) {
            boolean thisSide = !isShown(i) && time(i) > times.getUpperBound() == above;
            if (thisSide && log.laps().get(i).setup().equals(setup)) {
                beyond.add(i);
            }
        }
        double[][] points = points(beyond.stream().mapToInt(i -> i).toArray());
        Arrays.fill(points[1], edge);
        return points;
    }

    private DefaultXYDataset runs() {
        DefaultXYDataset data = new DefaultXYDataset();
        for (int run = 0; run < log.runs(); run++) {
            int number = run;
            int[] clean = Arrays.stream(laps.clean())
                    .filter(i -> log.run(i) == number)
                    .toArray();
            double[][] line = new double[2][clean.length];
            double level = new Median()
                    .evaluate(Arrays.stream(clean)
                            .mapToDouble(i -> result.course().without(log, i))
                            .toArray());
            for (int k = 0; k < clean.length; k++) {
                line[0][k] = log.sessionLap(clean[k]);
                line[1][k] = level + result.course().share(log, clean[k]);
            }
            data.addSeries(Integer.toString(run), line);
        }
        return data;
    }

    private XYLineAndShapeRenderer runLines() {
        XYLineAndShapeRenderer lines = SeriesRenderers.of(log.runs(), style);
        for (int i = 0; i < log.laps().size(); i++) {
            int setup = log.setups().indexOf(log.laps().get(i).setup());
            lines.setSeriesPaint(log.run(i), style.colour(setup));
            lines.setSeriesStroke(log.run(i), ChartStyle.line(setup));
        }
        return lines;
    }

    private PointCloud marks(boolean filled) {
        PointCloud marks = new PointCloud();
        for (int setup = 0; setup < log.setups().size(); setup++) {
            marks.setSeriesShape(setup, mark(setup));
            marks.setSeriesPaint(setup, style.colour(setup));
            marks.setSeriesShapesFilled(setup, filled);
            marks.setSeriesOutlineStroke(setup, ChartStyle.solid(1.3));
        }
        return marks;
    }

    private PointCloud edge() {
        PointCloud edge = new PointCloud();
        for (int series = 0; series < 2 * log.setups().size(); series++) {
            edge.setSeriesShape(series, arrow(series % 2 == 0 ? 1 : -1));
            edge.setSeriesPaint(series, style.colour(series / 2));
            edge.setSeriesShapesFilled(series, false);
            edge.setSeriesOutlineStroke(series, ChartStyle.solid(1.3));
        }
        return edge;
    }

    /** Dot, square, diamond, triangle, and so on again. */
    static Shape mark(int setup) {
        return switch (setup % 4) {
            case 0 -> new Ellipse2D.Double(-MARK, -MARK, 2 * MARK, 2 * MARK);
            case 1 -> new Rectangle2D.Double(-MARK, -MARK, 2 * MARK, 2 * MARK);
            case 2 -> path(0, -1.4 * MARK, 1.4 * MARK, 0, 0, 1.4 * MARK, -1.4 * MARK, 0);
            default -> path(0, 1.2 * MARK, -1.2 * MARK, -MARK, 1.2 * MARK, -MARK);
        };
    }

    /** Points upwards with 1, downwards with -1. */
    private static Shape arrow(int side) {
        return path(0, -1.2 * MARK * side, 1.1 * MARK, MARK * side, -1.1 * MARK, MARK * side);
    }

    private static Shape path(double... xy) {
        Path2D path = new Path2D.Double();
        path.moveTo(xy[0], xy[1]);
        for (int i = 2; i < xy.length; i += 2) {
            path.lineTo(xy[i], xy[i + 1]);
        }
        path.closePath();
        return path;
    }

    private List<EndLabelAxis.EndLabel> endLabels() {
        List<EndLabelAxis.EndLabel> labels = new ArrayList<>();
        for (int setup = 0; setup < log.setups().size(); setup++) {
            EvidenceResult.SetupPace pace = result.paces().get(setup);
            if (pace.clean() > 0) {
                String text = pace.setup() + ": " + NumberText.lapTime(pace.mean());
                labels.add(new EndLabelAxis.EndLabel(pace.mean(), text, style.colour(setup)));
            }
        }
        return labels;
    }

    private String facts() {
        List<String> facts = new ArrayList<>();
        result.comparison().ifPresent(comparison -> facts.add(difference(comparison)));
        facts.add(laps.clean().length + " of " + log.laps().size() + " laps count");
        facts.add("lines: medians of runs with the day's course");
        facts.add("right: means");
        return ChartLayout.facts(facts.toArray(String[]::new));
    }

    private static String difference(EvidenceResult.Comparison comparison) {
        String names =
                comparison.after().setup() + " against " + comparison.before().setup() + ": ";
        return comparison
                .difference()
                .map(seen -> names + NumberText.difference(seen.mean()) + " ("
                        + NumberText.signed(3).format(seen.once().low()) + " to "
                        + NumberText.signed(3).format(seen.once().high()) + "), "
                        + comparison.verdict().finding().label())
                .orElse(names + comparison.verdict().finding().label());
    }

    private LegendItemCollection legend() {
        LegendItemCollection items = new LegendItemCollection();
        for (int setup = 0; setup < log.setups().size(); setup++) {
            items.add(new LegendItem(
                    log.setups().get(setup),
                    null,
                    null,
                    null,
                    mark(setup),
                    style.colour(setup),
                    ChartStyle.solid(1),
                    style.colour(setup)));
        }
        if (log.setups().stream().anyMatch(setup -> others(setup).length > 0)) {
            items.add(hollow("does not count", mark(0)));
        }
        if (hasBeyond(0)) {
            items.add(hollow("slower than shown", arrow(1)));
        }
        if (hasBeyond(1)) {
            items.add(hollow("faster than shown", arrow(-1)));
        }
        return items;
    }

    private boolean hasBeyond(int side) {
        DefaultXYDataset beyond = beyond();
        return IntStream.range(0, log.setups().size()).anyMatch(setup -> beyond.getItemCount(2 * setup + side) > 0);
    }

    private LegendItem hollow(String text, Shape shape) {
        return new LegendItem(
                text,
                null,
                null,
                null,
                shape,
                style.palette().background(),
                ChartStyle.solid(1.3),
                style.palette().muted());
    }
}
