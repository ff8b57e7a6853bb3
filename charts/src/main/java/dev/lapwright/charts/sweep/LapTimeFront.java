package dev.lapwright.charts.sweep;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.PointLabels;
import dev.lapwright.charts.plot.SeriesRenderers;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.awt.geom.Ellipse2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.data.Range;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * Lap time against top speed: each setup a point, and joined by a line those that no other beats in both. Marked are the
 * fastest, the setup that was there before, and the band of setups as good as the fastest.
 */
public final class LapTimeFront {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.WIDE;

    /** Least length of the axes: smaller effects are drawn small. */
    private static final double LEAST_SPEEDS = 0.5;

    private static final double LEAST_TIMES = 0.02;

    private LapTimeFront() {}

    /**
     * The chart.
     *
     * @param subject what has been looked at, such as {@code Talvex GT at Castelvane}
     * @param setups one or more, in any order
     * @param before the setup that was there before, if it is to be shown
     * @param flat setups no slower than the fastest by this are as good, s; NaN for no band
     * @throws InvalidValueException if there are no setups
     */
    public static JFreeChart of(
            String subject, List<SetupPoint> setups, Optional<SetupPoint> before, double flat, ChartStyle style) {
        if (setups.isEmpty()) {
            throw new InvalidValueException("setups", "there are none to draw", "give one or more");
        }
        if (!Double.isNaN(flat)) {
            Check.positive("band of equally good lap times (s)", flat);
        }
        List<SetupPoint> front = front(setups);
        SetupPoint fastest = front.get(0);
        DefaultXYDataset data = new DefaultXYDataset();
        data.addSeries("no other beats it in both", series(front));
        data.addSeries(
                "other setups",
                series(setups.stream().filter(setup -> !front.contains(setup)).toList()));
        List<SetupPoint> all = new ArrayList<>(setups);
        before.ifPresent(all::add);
        UnitAxis speed = new UnitAxis("Top speed (km/h)", style, 0);
        speed.setRange(range(series(all)[0], LEAST_SPEEDS));
        Range times = range(series(all)[1], LEAST_TIMES);
        UnitAxis time = new UnitAxis(NumberText.lapTimeLabel(times.getUpperBound()), style, 0, NumberText::lapTimes);
        time.setRange(times);
        XYPlot plot = new XYPlot(data, speed, time, points(style));
        plot.setDataset(1, SeriesRenderers.single("fastest", NumberText.kmh(fastest.topSpeed()), fastest.lapTime()));
        plot.setRenderer(1, SeriesRenderers.fastest(style, SeriesRenderers.RING));
        before.ifPresent(setup -> {
            plot.setDataset(2, SeriesRenderers.single("before", NumberText.kmh(setup.topSpeed()), setup.lapTime()));
            plot.setRenderer(2, SeriesRenderers.baseline(style));
        });
        ChartLayout.style(plot, style);
        if (!Double.isNaN(flat)) {
            IntervalMarker band = new IntervalMarker(
                    fastest.lapTime(), fastest.lapTime() + flat, style.palette().band());
            band.setOutlinePaint(null);
            band.setAlpha(1);
            plot.addRangeMarker(band, Layer.BACKGROUND);
        }
        plot.addAnnotation(new PointLabels(labels(front, before), data, true, new double[0], style));
        JFreeChart chart =
                ChartLayout.chart("Lap time against top speed: " + subject, facts(setups, fastest, flat), plot, style);
        chart.addLegend(ChartLayout.legend(() -> plot.getRenderer(0).getLegendItems(), style));
        return chart;
    }

    /** Those that no other beats in lap time and top speed, the fastest lap first. */
    static List<SetupPoint> front(List<SetupPoint> setups) {
        List<SetupPoint> byTime = new ArrayList<>(setups);
        byTime.sort(Comparator.comparingDouble(SetupPoint::lapTime)
                .thenComparing(Comparator.comparingDouble(SetupPoint::topSpeed).reversed()));
        List<SetupPoint> front = new ArrayList<>();
        double highest = Double.NEGATIVE_INFINITY;
        for (SetupPoint setup : byTime) {
            if (setup.topSpeed() > highest) {
                front.add(setup);
                highest = setup.topSpeed();
            }
        }
        return front;
    }

    private static String facts(List<SetupPoint> setups, SetupPoint fastest, double flat) {
        String fast = "fastest " + NumberText.lapTime(fastest.lapTime());
        if (Double.isNaN(flat)) {
            return fast;
        }
        long asGood = setups.stream()
                .filter(setup -> setup.lapTime() <= fastest.lapTime() + flat)
                .count();
        return ChartLayout.facts(
                fast,
                "shaded: within " + NumberText.fixed(3).format(flat) + " s of it, " + asGood + " of " + setups.size()
                        + " setups");
    }

    private static double[][] series(List<SetupPoint> setups) {
        double[][] series = new double[2][setups.size()];
        for (int i = 0; i < setups.size(); i++) {
            series[0][i] = NumberText.kmh(setups.get(i).topSpeed());
            series[1][i] = setups.get(i).lapTime();
        }
        return series;
    }

    private static Range range(double[] values, double least) {
        double low = values[0];
        double high = values[0];
        for (double value : values) {
            low = Math.min(low, value);
            high = Math.max(high, value);
        }
        Range wide = UnitAxis.wide(new Range(low, high), least);
        return UnitAxis.padded(wide.getLowerBound(), wide.getUpperBound(), 0.12);
    }

    private static XYLineAndShapeRenderer points(ChartStyle style) {
        XYLineAndShapeRenderer points = SeriesRenderers.of(2, style);
        for (int series = 0; series < 2; series++) {
            points.setSeriesShapesVisible(series, true);
            points.setSeriesShape(series, series == 0 ? SeriesRenderers.dot() : new Ellipse2D.Double(-2.5, -2.5, 5, 5));
            points.setSeriesShapesFilled(series, series == 0);
        }
        points.setSeriesLinesVisible(1, false);
        points.setSeriesPaint(1, style.colour(3));
        return points;
    }

    private static List<PointLabels.Label> labels(List<SetupPoint> front, Optional<SetupPoint> before) {
        List<PointLabels.Label> labels = new ArrayList<>();
        SetupPoint fastest = front.get(0);
        labels.add(label("fastest: ", fastest, true, SeriesRenderers.RING));
        before.ifPresent(setup -> labels.add(label("before: ", setup, true, SeriesRenderers.DIAMOND)));
        for (int i = front.size() - 1; i > 0; i--) {
            if (!front.get(i).label().isEmpty()) {
                labels.add(label("", front.get(i), i == front.size() - 1, 5));
            }
        }
        return labels;
    }

    private static PointLabels.Label label(String role, SetupPoint setup, boolean must, double clear) {
        String time = NumberText.lapTime(setup.lapTime());
        String text =
                role.isEmpty() ? setup.label() : role + (setup.label().isEmpty() ? time : setup.label() + ", " + time);
        return new PointLabels.Label(NumberText.kmh(setup.topSpeed()), setup.lapTime(), text, must, clear);
    }

    /**
     * What a setup gives, as {@link LapTimeFront} draws it.
     *
     * @param label short, such as {@code wing 6 deg, final 3.9}; may be empty
     * @param lapTime s
     * @param topSpeed m/s
     */
    public record SetupPoint(String label, double lapTime, double topSpeed) {
        public SetupPoint {
            Objects.requireNonNull(label, "label");
            Check.positive("lap time (s)", lapTime);
            Check.positive("top speed (m/s)", topSpeed);
        }
    }
}
