package dev.lapwright.charts;

import dev.lapwright.track.Stations;
import java.util.Arrays;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.jfree.data.xy.DefaultXYDataset;

/** Panels over distance that show what a road is like: altitude, curvature, slope. */
final class RoadPanels {
    /** Least height of the axis of altitude, m: a bump is not drawn as a mountain. */
    private static final double LEAST_RISE = 10;
    /** Least reach of the axis of curvature either side of straight, 1/km. */
    private static final double LEAST_BEND = 1;
    /** Least reach of the axis of slope either side of level, deg. */
    private static final double LEAST_SLOPE = 1;

    private static final double METRES_PER_KILOMETRE = 1000;

    private RoadPanels() {}

    /** Altitude, m. */
    static XYPlot altitude(Stations stations, ChartStyle style) {
        double[] z = stations.z();
        UnitAxis axis = new UnitAxis("Altitude (m)", style, 0).withCloseTicks();
        double low = Arrays.stream(z).min().orElseThrow();
        double high = Arrays.stream(z).max().orElseThrow();
        axis.setRange(SweepTime.wide(SweepTime.padded(low, Math.max(high, low + 1e-3), 0.1), LEAST_RISE));
        return new XYPlot(line("altitude", stations.s(), z), null, axis, Lines.of(1, style));
    }

    /** Curvature, 1/km, left turns up, with the radii of the corners. */
    static XYPlot curvature(Stations stations, ChartStyle style) {
        double[] curvature = stations.curvature();
        double low = -LEAST_BEND;
        double high = LEAST_BEND;
        for (int i = 0; i < curvature.length; i++) {
            curvature[i] *= METRES_PER_KILOMETRE;
            low = Math.min(low, curvature[i]);
            high = Math.max(high, curvature[i]);
        }
        UnitAxis axis = new UnitAxis("Curvature (1/km)", style, 0, Numbers::signed).withCloseTicks();
        // Room for the radii beyond the peaks.
        axis.setRange(SweepTime.padded(low, high, 0.25));
        XYPlot plot = new XYPlot(line("curvature", stations.s(), curvature), null, axis, Lines.of(1, style));
        markZero(plot, style);
        plot.addAnnotation(new CornerRadii(stations.corners(), style));
        return plot;
    }

    /** Slope, deg, uphill positive. */
    static XYPlot slope(Stations stations, ChartStyle style) {
        double[] slope = stations.slope();
        double reach = LEAST_SLOPE;
        for (int i = 0; i < slope.length; i++) {
            slope[i] = Math.toDegrees(slope[i]);
            reach = Math.max(reach, Math.abs(slope[i]));
        }
        UnitAxis axis = new UnitAxis("Slope (deg)", style, 0, Numbers::signed).withCloseTicks();
        axis.setRange(SweepTime.padded(-reach, reach, 0.1));
        XYPlot plot = new XYPlot(line("slope", stations.s(), slope), null, axis, Lines.of(1, style));
        markZero(plot, style);
        plot.addAnnotation(new Sides("+ uphill", "\u2212 downhill", style));
        return plot;
    }

    /** A line at zero, beneath the data. */
    static void markZero(XYPlot plot, ChartStyle style) {
        ValueMarker zero = new ValueMarker(0, style.palette().muted(), ChartStyle.solid(1));
        zero.setAlpha(1);
        plot.addRangeMarker(zero, Layer.BACKGROUND);
    }

    private static DefaultXYDataset line(String name, double[] s, double[] values) {
        DefaultXYDataset data = new DefaultXYDataset();
        data.addSeries(name, new double[][] {s, values});
        return data;
    }
}
