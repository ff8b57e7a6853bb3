package dev.lapwright.charts.gearing;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.PointLabels;
import dev.lapwright.charts.plot.SeriesRenderers;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.SeriesRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * Tractive force of each gear against the resistance to motion (kN) over road speed (km/h). Where the force of the best gear
 * falls to the resistance, the car accelerates no more: those speeds are marked and named.
 */
public final class Traction {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.WIDE;

    private static final double NEWTONS = 1000;
    private static final double ROOM = 0.06;
    private static final int MOST_GEARS = 12;

    private Traction() {}

    /**
     * The chart.
     *
     * @param subject what has been looked at, such as {@code Talvex GT}
     * @param gears force at the wheels in each gear from the lowest, named by the gear's number
     * @param resistances what the car must overcome, such as in still air, with a tow, with a headwind
     * @throws InvalidValueException if there are no gears or no resistances, more than can be told apart, or two of one name
     */
    public static JFreeChart of(
            String subject, List<ForceCurve> gears, List<ForceCurve> resistances, ChartStyle style) {
        check(gears, resistances);
        DefaultXYDataset forces = data(gears);
        DefaultXYDataset against = new DefaultXYDataset();
        List<PointLabels.Label> labels = new ArrayList<>();
        DefaultXYDataset marks = new DefaultXYDataset();
        for (ForceCurve resistance : resistances) {
            double speed = balance(gears, resistance);
            String text = Double.isNaN(speed) ? ends(gears, resistance) : NumberText.wholeKmh(speed) + " km/h";
            against.addSeries(resistance.name() + ": " + text, series(resistance));
            if (!Double.isNaN(speed)) {
                double force = resistance.at(speed) / NEWTONS;
                marks.addSeries(resistance.name(), new double[][] {{NumberText.kmh(speed)}, {force}});
                labels.add(new PointLabels.Label(NumberText.kmh(speed), force, text, true, 5));
            }
        }
        double fastest = fastest(gears);
        double strongest = strongest(gears);
        UnitAxis speed = new UnitAxis("Road speed (km/h)", style, 1);
        speed.setRange(0, NumberText.kmh(fastest) * (1 + ROOM));
        UnitAxis force = new UnitAxis("Force (kN)", style, 0);
        force.setRange(0, strongest / NEWTONS * (1 + 2 * ROOM));
        XYPlot plot = new XYPlot(against, speed, force, resistanceLines(resistances.size(), style));
        plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD);
        plot.setDataset(1, forces);
        plot.setRenderer(1, gearLines(gears.size(), style));
        plot.setDataset(2, marks);
        plot.setRenderer(2, dots(marks.getSeriesCount(), style));
        ChartLayout.style(plot, style);
        plot.addAnnotation(new PointLabels(numbers(gears), forces, true, new double[0], style));
        plot.addAnnotation(new PointLabels(labels, both(gears, resistances), true, new double[0], style));
        JFreeChart chart = ChartLayout.chart(
                "Tractive force and resistance: " + subject,
                labels.isEmpty()
                        ? "numbers: gears"
                        : "numbers: gears \u00b7 dots: the best gear gives no more than the resistance, the car gets no"
                                + " faster",
                plot,
                style);
        chart.addLegend(ChartLayout.legend(() -> plot.getRenderer(0).getLegendItems(), style));
        return chart;
    }

    private static void check(List<ForceCurve> gears, List<ForceCurve> resistances) {
        if (gears.isEmpty() || gears.size() > MOST_GEARS) {
            throw new InvalidValueException(
                    "gears", gears.size() + " cannot be drawn in one chart", "give 1 to " + MOST_GEARS);
        }
        int most = ChartStyle.distinctLines() - 1;
        if (resistances.isEmpty() || resistances.size() > most) {
            throw new InvalidValueException(
                    "resistances", resistances.size() + " cannot be told apart in one chart", "give 1 to " + most);
        }
        for (List<ForceCurve> curves : List.of(gears, resistances)) {
            Set<String> names = new HashSet<>();
            for (ForceCurve curve : curves) {
                if (!names.add(curve.name())) {
                    throw new InvalidValueException(
                            "curves", "two are called '" + curve.name() + "'", "give each its own name");
                }
            }
        }
    }

    /**
     * The greatest speed at which the best gear's force falls to the resistance, m/s; NaN where the force stays above it as
     * long as there is a gear, or is below it throughout.
     */
    static double balance(List<ForceCurve> gears, ForceCurve resistance) {
        TreeSet<Double> speeds = new TreeSet<>();
        for (ForceCurve curve : gears) {
            for (double speed : curve.speeds()) {
                speeds.add(speed);
            }
        }
        for (double speed : resistance.speeds()) {
            speeds.add(speed);
        }
        double found = Double.NaN;
        double before = Double.NaN;
        boolean gaining = false;
        for (double speed : speeds) {
            // Between neighbouring speeds every curve is a straight line or is not there at all.
            double last = Double.NEGATIVE_INFINITY;
            double start = Double.NEGATIVE_INFINITY;
            double end = Double.NEGATIVE_INFINITY;
            for (ForceCurve gear : gears) {
                double from = gear.at(before) - resistance.at(before);
                double to = gear.at(speed) - resistance.at(speed);
                if (!Double.isNaN(from) && !Double.isNaN(to)) {
                    start = Math.max(start, from);
                    end = Math.max(end, to);
                    last = from > 0 && to <= 0 ? Math.max(last, before + (speed - before) * from / (from - to)) : last;
                }
            }
            boolean driven = start > Double.NEGATIVE_INFINITY;
            if (driven && gaining && start <= 0) {
                // The next gear up has too little force from the first.
                found = before;
            }
            if (driven && end <= 0 && start > 0) {
                found = last;
            }
            gaining = driven && end > 0;
            before = speed;
        }
        return found;
    }

    /** Greatest force of any gear at a speed, N; NaN where no gear has one. */
    private static double best(List<ForceCurve> gears, double speed) {
        double best = Double.NaN;
        for (ForceCurve gear : gears) {
            double force = gear.at(speed);
            best = Double.isNaN(best) || force > best ? force : best;
        }
        return best;
    }

    private static String ends(List<ForceCurve> gears, ForceCurve resistance) {
        double end = fastest(gears);
        return best(gears, end) > resistance.at(end)
                ? "the gears end at " + NumberText.wholeKmh(end) + " km/h"
                : "no balance";
    }

    private static double fastest(List<ForceCurve> gears) {
        double fastest = 0;
        for (ForceCurve gear : gears) {
            double[] speeds = gear.speeds();
            fastest = Math.max(fastest, speeds[speeds.length - 1]);
        }
        return fastest;
    }

    private static double strongest(List<ForceCurve> gears) {
        double strongest = 1;
        for (ForceCurve gear : gears) {
            for (double force : gear.forces()) {
                strongest = Math.max(strongest, force);
            }
        }
        return strongest;
    }

    private static double[][] series(ForceCurve curve) {
        double[] speeds = curve.speeds();
        double[] forces = curve.forces();
        for (int i = 0; i < speeds.length; i++) {
            speeds[i] = NumberText.kmh(speeds[i]);
            forces[i] /= NEWTONS;
        }
        return new double[][] {speeds, forces};
    }

    private static DefaultXYDataset data(List<ForceCurve> curves) {
        DefaultXYDataset data = new DefaultXYDataset();
        curves.forEach(curve -> data.addSeries(curve.name(), series(curve)));
        return data;
    }

    private static DefaultXYDataset both(List<ForceCurve> gears, List<ForceCurve> resistances) {
        DefaultXYDataset data = new DefaultXYDataset();
        gears.forEach(curve -> data.addSeries("gear " + curve.name(), series(curve)));
        resistances.forEach(curve -> data.addSeries("against " + curve.name(), series(curve)));
        return data;
    }

    /** The number of each gear above the peak of its force. */
    private static List<PointLabels.Label> numbers(List<ForceCurve> gears) {
        List<PointLabels.Label> labels = new ArrayList<>();
        for (ForceCurve gear : gears) {
            double[][] series = series(gear);
            int peak = 0;
            for (int i = 1; i < series[1].length; i++) {
                peak = series[1][i] > series[1][peak] ? i : peak;
            }
            labels.add(new PointLabels.Label(series[0][peak], series[1][peak], gear.name(), true, 3));
        }
        return labels;
    }

    private static XYLineAndShapeRenderer resistanceLines(int count, ChartStyle style) {
        XYLineAndShapeRenderer lines = SeriesRenderers.of(count, style);
        for (int i = 0; i < count; i++) {
            lines.setSeriesPaint(i, style.colour(i + 1));
            lines.setSeriesStroke(i, ChartStyle.line(i));
        }
        return lines;
    }

    private static XYLineAndShapeRenderer gearLines(int count, ChartStyle style) {
        XYLineAndShapeRenderer lines = SeriesRenderers.of(count, style);
        for (int i = 0; i < count; i++) {
            lines.setSeriesPaint(i, style.colour(0));
            lines.setSeriesStroke(i, ChartStyle.solid(1.4));
        }
        return lines;
    }

    private static XYLineAndShapeRenderer dots(int count, ChartStyle style) {
        XYLineAndShapeRenderer dots = new XYLineAndShapeRenderer(false, true);
        for (int i = 0; i < count; i++) {
            dots.setSeriesShape(i, SeriesRenderers.dot());
            dots.setSeriesPaint(i, style.palette().ink());
        }
        return dots;
    }

    /**
     * A force over road speed, as {@link Traction} draws it: what a gear gives at the wheels, or what the car must overcome.
     * Arrays are copied in and out.
     *
     * @param name short, such as {@code 3} for a gear or {@code resistance with a tow}; not blank
     * @param speeds m/s, rising, two or more
     * @param forces N, one for each speed
     */
    public record ForceCurve(String name, double[] speeds, double[] forces) {
        public ForceCurve {
            if (name.isBlank()) {
                throw new InvalidValueException("curve name", "it is blank", "give each curve a short name");
            }
            if (speeds.length < 2 || forces.length != speeds.length) {
                throw new InvalidValueException(
                        "curve " + name,
                        speeds.length + " speeds and " + forces.length + " forces make no curve",
                        "give two or more of each, as many of one as of the other");
            }
            for (double force : forces) {
                Check.finite("force of curve " + name, force);
            }
            speeds = Check.rising("speeds of curve " + name, speeds).clone();
            forces = forces.clone();
        }

        @Override
        public double[] speeds() {
            return speeds.clone();
        }

        @Override
        public double[] forces() {
            return forces.clone();
        }

        /** The force at a speed, linear between points; NaN beyond the ends. */
        double at(double speed) {
            int last = speeds.length - 1;
            if (!(speed >= speeds[0] && speed <= speeds[last])) {
                return Double.NaN;
            }
            int place = Arrays.binarySearch(speeds, speed);
            if (place >= 0) {
                return forces[place];
            }
            int above = -place - 1;
            double part = (speed - speeds[above - 1]) / (speeds[above] - speeds[above - 1]);
            return forces[above - 1] + part * (forces[above] - forces[above - 1]);
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof ForceCurve that
                    && name.equals(that.name)
                    && Arrays.equals(speeds, that.speeds)
                    && Arrays.equals(forces, that.forces);
        }

        @Override
        public int hashCode() {
            return Objects.hash(name, Arrays.hashCode(speeds), Arrays.hashCode(forces));
        }

        @Override
        public String toString() {
            return "curve " + name + ", " + speeds.length + " points";
        }
    }
}
