package dev.lapwright.charts.gearing;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.OwnLabels;
import dev.lapwright.charts.plot.PlacedText;
import dev.lapwright.charts.plot.PointLabels;
import dev.lapwright.charts.plot.ReferenceLine;
import dev.lapwright.charts.plot.SeriesRenderers;
import dev.lapwright.charts.plot.UnitAxis;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;
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
        double end = NumberText.kmh(fastest) * (1 + ROOM_RIGHT);
        DefaultXYDataset lines = lines(gears, end);
        XYDataset used = used(gears);
        UnitAxis speed = new UnitAxis("Road speed (km/h)", style, 1);
        speed.setRange(0, end);
        UnitAxis engine = new UnitAxis("Engine speed (rpm)", style, 1);
        engine.setRange(0, gears.revLimitRpm() * (1 + ROOM_ABOVE));
        XYPlot plot = new XYPlot(used, speed, engine, heavy(style));
        plot.setDataset(1, lines);
        plot.setRenderer(1, thin(lines.getSeriesCount(), style));
        double top = NumberText.kmh(gears.topSpeed());
        double topRpm = gears.rpm(gears.topSpeedGear(), gears.topSpeed());
        plot.setDataset(2, SeriesRenderers.single("top speed", top, topRpm));
        plot.setRenderer(2, SeriesRenderers.fastest(style, SeriesRenderers.RING));
        ChartLayout.style(plot, style);
        plot.addAnnotation(new GearNumbers(gears, style));
        plot.addAnnotation(
                new ReferenceLine(gears.revLimitRpm(), "rev limit " + rpm(gears.revLimitRpm()), used, style));
        if (!Double.isNaN(gears.peakPowerRpm())) {
            plot.addAnnotation(
                    new ReferenceLine(gears.peakPowerRpm(), "most power at " + rpm(gears.peakPowerRpm()), used, style));
        }
        double[] levels = Double.isNaN(gears.peakPowerRpm())
                ? new double[] {gears.revLimitRpm()}
                : new double[] {gears.revLimitRpm(), gears.peakPowerRpm()};
        plot.addAnnotation(new PointLabels(labels(gears), everything(gears, used, end), true, levels, style));
        return ChartLayout.chart("Gears: " + subject, facts(gears), plot, style);
    }

    private static String facts(GearCurves gears) {
        List<String> facts = new ArrayList<>();
        double topRpm = gears.rpm(gears.topSpeedGear(), gears.topSpeed());
        double spare = gears.revLimitRpm() - topRpm;
        facts.add("top speed " + NumberText.wholeKmh(gears.topSpeed()) + " km/h in gear " + gears.topSpeedGear()
                + " at " + rpm(topRpm));
        facts.add(spare >= 0.5 ? rpm(spare) + " below the rev limit" : "at the rev limit");
        for (int gear = 1; gear <= gears.count(); gear++) {
            if (!gears.isUsed(gear)) {
                facts.add("gear " + gear + " is never used");
            }
        }
        return ChartLayout.facts(facts.toArray(new String[0]));
    }

    static String rpm(double rpm) {
        return NumberText.fixed(0).format(rpm) + " rpm";
    }

    /** Each gear from standstill to the rev limit, or to the edge of the picture. */
    private static DefaultXYDataset lines(GearCurves gears, double end) {
        DefaultXYDataset data = new DefaultXYDataset();
        for (int gear = 1; gear <= gears.count(); gear++) {
            double limit = Math.min(gears.limitSpeed(gear), end / NumberText.kmh(1));
            data.addSeries("gear " + gear, new double[][] {{0, NumberText.kmh(limit)}, {0, gears.rpm(gear, limit)}});
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
                points.add(new double[] {NumberText.kmh(from), gears.rpm(gear, from)});
                points.add(new double[] {NumberText.kmh(to), gears.rpm(gear, to)});
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
        XYLineAndShapeRenderer renderer = SeriesRenderers.of(1, style);
        renderer.setSeriesStroke(0, ChartStyle.solid(3));
        return renderer;
    }

    private static XYLineAndShapeRenderer thin(int count, ChartStyle style) {
        XYLineAndShapeRenderer renderer = SeriesRenderers.of(count, style);
        for (int i = 0; i < count; i++) {
            renderer.setSeriesPaint(i, style.palette().muted());
            renderer.setSeriesStroke(i, ChartStyle.solid(1));
        }
        return renderer;
    }

    private static List<PointLabels.Label> labels(GearCurves gears) {
        List<PointLabels.Label> labels = new ArrayList<>();
        for (int gear = 1; gear < gears.count(); gear++) {
            double shift = gears.upshiftSpeeds()[gear - 1];
            if (!Double.isNaN(shift)) {
                labels.add(new PointLabels.Label(
                        NumberText.kmh(shift), gears.rpm(gear, shift), NumberText.wholeKmh(shift) + " km/h", true, 3));
                labels.add(new PointLabels.Label(
                        NumberText.kmh(shift), gears.rpm(gear + 1, shift), rpm(gears.rpm(gear + 1, shift)), false, 3));
            }
        }
        double topRpm = gears.rpm(gears.topSpeedGear(), gears.topSpeed());
        labels.add(new PointLabels.Label(
                NumberText.kmh(gears.topSpeed()),
                topRpm,
                "top " + NumberText.wholeKmh(gears.topSpeed()) + " km/h, " + rpm(topRpm),
                true,
                SeriesRenderers.RING));
        return labels;
    }

    /** The number of each gear upon its line, in the middle of the stretch that is used. */
    private static final class GearNumbers extends AbstractXYAnnotation implements OwnLabels {
        private static final long serialVersionUID = 1L;
        /** Where on its line an unused gear is named, as a share of the rev limit. */
        private static final double UNUSED_AT = 0.9;

        private final transient GearCurves gears;
        private final ChartStyle style;

        GearNumbers(GearCurves gears, ChartStyle style) {
            this.gears = gears;
            this.style = style;
        }

        @Override
        public void draw(
                Graphics2D g2,
                XYPlot plot,
                Rectangle2D area,
                ValueAxis speed,
                ValueAxis engine,
                int rendererIndex,
                PlotRenderingInfo info) {
            for (PlacedText number : labels(g2, area, speed, engine)) {
                number.drawOn(g2, style.palette().ink(), style.palette().background());
            }
        }

        @Override
        public List<PlacedText> labels(Graphics2D g2, Rectangle2D area, ValueAxis speed, ValueAxis engine) {
            List<PlacedText> numbers = new ArrayList<>();
            for (int gear = 1; gear <= gears.count(); gear++) {
                double from = gears.from(gear);
                double to = gears.to(gear);
                double used = (from + to) / 2;
                double most =
                        Math.min(UNUSED_AT * gears.limitSpeed(gear), 0.97 * speed.getUpperBound() / NumberText.kmh(1));
                double at = Double.isNaN(used) ? most : used;
                numbers.add(new PlacedText(
                        Integer.toString(gear),
                        speed.valueToJava2D(NumberText.kmh(at), area, RectangleEdge.BOTTOM),
                        engine.valueToJava2D(gears.rpm(gear, at), area, RectangleEdge.LEFT),
                        TextAnchor.CENTER,
                        style.strong()));
            }
            return numbers;
        }
    }
}
