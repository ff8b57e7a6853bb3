package dev.lapwright.charts.ride;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.ColourScale;
import dev.lapwright.charts.plot.HeatMap;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.SeriesRenderers;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.study.ride.DamperMapResult;
import java.awt.geom.Point2D;
import java.util.function.DoubleUnaryOperator;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * A measure of a pass over a kerb as a map of fast bump (across) and fast rebound (up): coloured cells, lines of equal value,
 * the best pair ringed, the car's own pair as a diamond, and the lines of rebound once and twice as strong as bump.
 */
public final class DamperMapChart {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.MAP;

    private DamperMapChart() {}

    /**
     * The chart.
     *
     * @param subject what was driven over what, such as {@code Talvex GT, front, half-sine of 40 mm on 1 m at 100 km/h}
     */
    public static JFreeChart of(String subject, DamperMapResult map, RideMeasure measure, ChartStyle style) {
        double[] x = map.bump();
        double[] y = map.rebound();
        double[][] z = new double[y.length][x.length];
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int j = 0; j < y.length; j++) {
            for (int i = 0; i < x.length; i++) {
                z[j][i] = measure.of(map.at(i, j));
                low = Math.min(low, z[j][i]);
                high = Math.max(high, z[j][i]);
            }
        }
        // Light is good, as on the other maps.
        ColourScale ramp = new ColourScale(low, high, style.palette(), true);
        UnitAxis across = new UnitAxis("Fast bump (N s/m at the damper)", style, 1);
        across.setRange(HeatMap.edge(x, 0, -1), HeatMap.edge(x, x.length - 1, 1));
        UnitAxis up = new UnitAxis("Fast rebound (N s/m at the damper)", style, 1);
        up.setRange(HeatMap.edge(y, 0, -1), HeatMap.edge(y, y.length - 1, 1));
        DamperMapResult.Region best = map.best(measure);
        XYPlot plot = new XYPlot(
                SeriesRenderers.single("best", best.bump(), best.rebound()),
                across,
                up,
                SeriesRenderers.fastest(style, SeriesRenderers.RING));
        plot.setDataset(
                1,
                SeriesRenderers.single(
                        "own", map.car().damper().fastBump(), map.car().damper().fastRebound()));
        plot.setRenderer(1, SeriesRenderers.baseline(style));
        ChartLayout.style(plot, style);
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinesVisible(false);
        double own = measure.of(map.own());
        plot.getRenderer()
                .addAnnotation(new HeatMap(x, y, z, ramp, own, "as it is", NumberText::fixed, style), Layer.BACKGROUND);
        addRatios(plot, across, up, style);
        String facts = ChartLayout.facts(
                "as it is (diamond) " + text(own, measure),
                "best (ring) " + text(measure.of(best.pass()), measure) + " at bump " + whole(best.bump())
                        + ", rebound " + whole(best.rebound()),
                "lighter is better");
        JFreeChart chart = ChartLayout.chart(capital(measure.label()) + ": " + subject, facts, plot, style);
        UnitAxis scale = new UnitAxis(capital(measure.label()) + " (" + measure.unit() + ")", style, 0);
        chart.addSubtitle(ChartLayout.colourScale(ramp, scale, style));
        return chart;
    }

    private static void addRatios(XYPlot plot, UnitAxis across, UnitAxis up, ChartStyle style) {
        DefaultXYDataset lines = new DefaultXYDataset();
        addRatio(plot, lines, "rebound = bump", bump -> bump, 1, across, up, style);
        addRatio(plot, lines, "rebound = 2 bump", bump -> 2 * bump, 2, across, up, style);
        XYLineAndShapeRenderer dashed = SeriesRenderers.of(2, style);
        for (int i = 0; i < 2; i++) {
            dashed.setSeriesPaint(i, style.palette().background());
            dashed.setSeriesStroke(i, ChartStyle.dashed(1.5));
        }
        plot.setDataset(2, lines);
        plot.setRenderer(2, dashed);
    }

    private static void addRatio(
            XYPlot plot,
            DefaultXYDataset lines,
            String name,
            DoubleUnaryOperator rebound,
            double ratio,
            UnitAxis across,
            UnitAxis up,
            ChartStyle style) {
        double from = Math.max(across.getLowerBound(), up.getLowerBound() / ratio);
        double to = Math.min(across.getUpperBound(), up.getUpperBound() / ratio);
        if (!(to > from)) {
            return;
        }
        lines.addSeries(name, new double[][] {{from, to}, {rebound.applyAsDouble(from), rebound.applyAsDouble(to)}});
        Point2D at = new Point2D.Double(from + 0.93 * (to - from), rebound.applyAsDouble(from + 0.93 * (to - from)));
        XYTextAnnotation note = new XYTextAnnotation(name, at.getX(), at.getY());
        note.setFont(style.small());
        note.setPaint(style.palette().ink());
        note.setBackgroundPaint(style.palette().background());
        note.setTextAnchor(TextAnchor.CENTER);
        plot.addAnnotation(note);
    }

    private static String text(double value, RideMeasure measure) {
        return NumberText.fixed(1).format(value) + " " + measure.unit();
    }

    private static String whole(double rate) {
        return NumberText.fixed(0).format(rate);
    }

    private static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
