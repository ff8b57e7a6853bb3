package dev.lapwright.charts;

import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.DefaultXYDataset;
import org.jfree.data.xy.XYDataset;

/**
 * Engine speed (rpm) over road speed (km/h): a thin line for each gear up to the rev limit, upon it heavily the stretch from
 * shift to shift as a lap uses it; shifts and the top speed are labelled.
 */
public final class GearSawtooth {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.WIDE;

    private static final double ROOM_ABOVE = 0.12;
    private static final double ROOM_RIGHT = 0.06;

    private GearSawtooth() {}

    /**
     * The chart.
     *
     * @param subject what has been looked at, such as {@code Talvex GT at Castelvane}
     */
    public static JFreeChart of(String subject, GearCurves gears, ChartStyle style) {
        double fastest = Math.max(gears.topSpeed(), gears.limitSpeed(gears.topSpeedGear()));
        double end = Numbers.kmh(fastest) * (1 + ROOM_RIGHT);
        DefaultXYDataset lines = lines(gears, end);
        XYDataset used = used(gears);
        UnitAxis speed = new UnitAxis("Road speed (km/h)", style, 1);
        speed.setRange(0, end);
        UnitAxis engine = new UnitAxis("Engine speed (rpm)", style, 1);
        engine.setRange(0, gears.revLimitRpm() * (1 + ROOM_ABOVE));
        XYPlot plot = new XYPlot(used, speed, engine, heavy(style));
        plot.setDataset(1, lines);
        plot.setRenderer(1, thin(lines.getSeriesCount(), style));
        double top = Numbers.kmh(gears.topSpeed());
        double topRpm = gears.rpm(gears.topSpeedGear(), gears.topSpeed());
        plot.setDataset(2, Marks.single("top speed", top, topRpm));
        plot.setRenderer(2, Marks.fastest(style, Marks.RING));
        Sheet.plain(plot, style);
        plot.addAnnotation(new GearNumbers(gears, style));
        plot.addAnnotation(
                new BaselineLabel(gears.revLimitRpm(), "rev limit " + rpm(gears.revLimitRpm()), used, style));
        if (!Double.isNaN(gears.peakPowerRpm())) {
            plot.addAnnotation(
                    new BaselineLabel(gears.peakPowerRpm(), "most power at " + rpm(gears.peakPowerRpm()), used, style));
        }
        double[] levels = Double.isNaN(gears.peakPowerRpm())
                ? new double[] {gears.revLimitRpm()}
                : new double[] {gears.revLimitRpm(), gears.peakPowerRpm()};
        plot.addAnnotation(new PointLabels(labels(gears), everything(gears, used, end), true, levels, style));
        return Sheet.of("Gears: " + subject, facts(gears), plot, style);
    }

    private static String facts(GearCurves gears) {
        List<String> facts = new ArrayList<>();
        double topRpm = gears.rpm(gears.topSpeedGear(), gears.topSpeed());
        double spare = gears.revLimitRpm() - topRpm;
        facts.add("top speed " + Numbers.wholeKmh(gears.topSpeed()) + " km/h in gear " + gears.topSpeedGear() + " at "
                + rpm(topRpm));
        facts.add(spare >= 0.5 ? rpm(spare) + " below the rev limit" : "at the rev limit");
        for (int gear = 1; gear <= gears.count(); gear++) {
            if (!gears.isUsed(gear)) {
                facts.add("gear " + gear + " is never used");
            }
        }
        return Sheet.facts(facts.toArray(new String[0]));
    }

    static String rpm(double rpm) {
        return Numbers.fixed(0).format(rpm) + " rpm";
    }

    /** Each gear from standstill to the rev limit, or to the edge of the picture. */
    private static DefaultXYDataset lines(GearCurves gears, double end) {
        DefaultXYDataset data = new DefaultXYDataset();
        for (int gear = 1; gear <= gears.count(); gear++) {
            double limit = Math.min(gears.limitSpeed(gear), end / Numbers.kmh(1));
            data.addSeries("gear " + gear, new double[][] {{0, Numbers.kmh(limit)}, {0, gears.rpm(gear, limit)}});
        }
        return data;
    }

    /** The stretches as used, joined by the shifts: one line. */
    private static XYDataset used(GearCurves gears) {
        List<double[]> points = new ArrayList<>();
        for (int gear = 1; gear <= gears.count(); gear++) {
            double from = gears.from(gear);
            double to = gears.to(gear);
            if (!Double.isNaN(from) && !Double.isNaN(to) && to >= from) {
                points.add(new double[] {Numbers.kmh(from), gears.rpm(gear, from)});
                points.add(new double[] {Numbers.kmh(to), gears.rpm(gear, to)});
            }
        }
        double[][] line = new double[2][points.size()];
        for (int i = 0; i < points.size(); i++) {
            line[0][i] = points.get(i)[0];
            line[1][i] = points.get(i)[1];
        }
        DefaultXYDataset data = new DefaultXYDataset();
        data.addSeries("as used", line);
        return data;
    }

    /** All that labels must keep clear of. */
    private static XYDataset everything(GearCurves gears, XYDataset used, double end) {
        DefaultXYDataset data = lines(gears, end);
        double[][] line = new double[2][used.getItemCount(0)];
        for (int i = 0; i < line[0].length; i++) {
            line[0][i] = used.getXValue(0, i);
            line[1][i] = used.getYValue(0, i);
        }
        data.addSeries("as used", line);
        return data;
    }

    private static XYLineAndShapeRenderer heavy(ChartStyle style) {
        XYLineAndShapeRenderer renderer = Lines.of(1, style);
        renderer.setSeriesStroke(0, ChartStyle.solid(3));
        return renderer;
    }

    private static XYLineAndShapeRenderer thin(int count, ChartStyle style) {
        XYLineAndShapeRenderer renderer = Lines.of(count, style);
        for (int i = 0; i < count; i++) {
            renderer.setSeriesPaint(i, style.palette().muted());
            renderer.setSeriesStroke(i, ChartStyle.solid(1));
        }
        return renderer;
    }

    private static List<PointLabels.Label> labels(GearCurves gears) {
        List<PointLabels.Label> labels = new ArrayList<>();
        double topRpm = gears.rpm(gears.topSpeedGear(), gears.topSpeed());
        labels.add(new PointLabels.Label(
                Numbers.kmh(gears.topSpeed()),
                topRpm,
                "top " + Numbers.wholeKmh(gears.topSpeed()) + " km/h, " + rpm(topRpm),
                true,
                Marks.RING));
        for (int gear = 1; gear < gears.count(); gear++) {
            double shift = gears.upshiftSpeeds()[gear - 1];
            if (!Double.isNaN(shift)) {
                labels.add(new PointLabels.Label(
                        Numbers.kmh(shift), gears.rpm(gear, shift), Numbers.wholeKmh(shift) + " km/h", true, 3));
                labels.add(new PointLabels.Label(
                        Numbers.kmh(shift), gears.rpm(gear + 1, shift), rpm(gears.rpm(gear + 1, shift)), false, 3));
            }
        }
        return labels;
    }
}
