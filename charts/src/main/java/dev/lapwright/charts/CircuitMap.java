package dev.lapwright.charts;

import dev.lapwright.track.Corner;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jfree.chart.JFreeChart;

/**
 * A circuit or open run by itself: the road in plan, north up and true to scale, with corners, start and driving direction;
 * beneath it altitude (m) and curvature (1/km) over distance (m), with the smallest radius of each corner (m).
 */
public final class CircuitMap {
    /** The size it is designed for. */
    public static final ImageSize SIZE = new ImageSize(1200, 1000);

    private CircuitMap() {}

    /** The map of a track. */
    public static JFreeChart of(Stations stations, ChartStyle style) {
        DistancePanels panels = new DistancePanels(stations, new double[0], style);
        panels.add(RoadPanels.altitude(stations, style), 100);
        panels.add(RoadPanels.curvature(stations, style), 110);
        return Sheet.of(
                heading(stations.track()), facts(stations), new CircuitPlot(stations, panels.plot(), style), style);
    }

    /** The plan of a track alone, without the panels beneath it. */
    public static JFreeChart plan(Stations stations, ChartStyle style) {
        return Sheet.of(heading(stations.track()), facts(stations), new CircuitPlot(stations, null, style), style);
    }

    private static String heading(Track track) {
        return (track.isClosed() ? "Circuit: " : "Open run: ") + track.name();
    }

    /** Length, corners, width and altitude in one line. */
    static String facts(Stations stations) {
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
}
