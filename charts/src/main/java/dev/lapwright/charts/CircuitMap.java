package dev.lapwright.charts;

import dev.lapwright.track.Corner;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * A circuit or open run by itself: the road in plan, north up and true to scale, with corners, start and driving direction;
 * beneath it altitude (m) and curvature (1/km) over distance (m), with the smallest radius of each corner (m).
 */
public final class CircuitMap {
    /** The size it is designed for. */
    public static final ImageSize SIZE = new ImageSize(1200, 1000);

    /** Least height of the axis of altitude, m: a bump is not drawn as a mountain. */
    private static final double LEAST_RISE = 10;
    /** Least reach of the axis of curvature either side of straight, 1/km. */
    private static final double LEAST_BEND = 1;

    private static final double METRES_PER_KILOMETRE = 1000;

    private CircuitMap() {}

    /** The map of a track. */
    public static JFreeChart of(Stations stations, ChartStyle style) {
        Track track = stations.track();
        DistancePanels panels = new DistancePanels(stations, new double[0], style);
        panels.add(altitude(stations, style), 100);
        panels.add(curvature(stations, style), 110);
        return Sheet.of(
                (track.isClosed() ? "Circuit: " : "Open run: ") + track.name(),
                facts(stations),
                new CircuitPlot(stations, panels.plot(), style),
                style);
    }

    private static String facts(Stations stations) {
        List<Corner> corners = stations.corners();
        double[] z = stations.z();
        double[] widths = Road.widths(stations);
        String tightest = corners.stream()
                .min(Comparator.comparingDouble(Corner::minimumRadius))
                .map(corner -> count(corners.size()) + ", the tightest "
                        + Numbers.fixed(0).format(corner.minimumRadius()) + " m in " + corner.label())
                .orElse("no corners");
        return Sheet.facts(
                Numbers.fixed(0).format(stations.track().length()) + " m",
                tightest,
                between(widths, 1) + " m wide",
                "altitude " + between(z, 0) + " m, "
                        + (stations.climb() < 0.5
                                ? "no climb"
                                : "climbs " + Numbers.fixed(0).format(stations.climb()) + " m in all"));
    }

    private static String count(int corners) {
        return corners == 1 ? "1 corner" : corners + " corners";
    }

    /** The least and greatest of values, once where they are written alike. */
    private static String between(double[] values, int decimals) {
        String least =
                Numbers.fixed(decimals).format(Arrays.stream(values).min().orElseThrow());
        String greatest =
                Numbers.fixed(decimals).format(Arrays.stream(values).max().orElseThrow());
        return least.equals(greatest) ? least : least + " to " + greatest;
    }

    private static XYPlot altitude(Stations stations, ChartStyle style) {
        double[] z = stations.z();
        UnitAxis axis = new UnitAxis("Altitude (m)", style, 0).withCloseTicks();
        double low = Arrays.stream(z).min().orElseThrow();
        double high = Arrays.stream(z).max().orElseThrow();
        axis.setRange(SweepTime.wide(SweepTime.padded(low, Math.max(high, low + 1e-3), 0.1), LEAST_RISE));
        return new XYPlot(line("altitude", stations.s(), z), null, axis, Lines.of(1, style));
    }

    private static XYPlot curvature(Stations stations, ChartStyle style) {
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
        ValueMarker straight = new ValueMarker(0, style.palette().muted(), ChartStyle.solid(1));
        straight.setAlpha(1);
        plot.addRangeMarker(straight, Layer.BACKGROUND);
        plot.addAnnotation(new CornerRadii(stations.corners(), style));
        return plot;
    }

    private static DefaultXYDataset line(String name, double[] s, double[] values) {
        DefaultXYDataset data = new DefaultXYDataset();
        data.addSeries(name, new double[][] {s, values});
        return data;
    }
}
