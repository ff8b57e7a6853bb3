package dev.lapwright.charts.track;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.distance.DistancePanels;
import dev.lapwright.charts.distance.RoadPanels;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.track.Stations;
import org.jfree.chart.JFreeChart;

/**
 * Profile of a circuit or open run along the way: curvature (1/km) with the smallest radius of each corner (m), altitude
 * (m) and slope (deg) over distance (m); corners shaded and named, sectors ruled off.
 */
public final class CircuitProfile {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.WIDE;

    private CircuitProfile() {}

    /** The profile of a track. */
    public static JFreeChart of(Stations stations, ChartStyle style) {
        DistancePanels panels = new DistancePanels(stations, new double[0], style);
        panels.add(RoadPanels.curvature(stations, style), 230);
        panels.add(RoadPanels.altitude(stations, style), 150);
        panels.add(RoadPanels.slope(stations, style), 130);
        return ChartLayout.chart(
                "Profile: " + stations.track().name(), CircuitMap.facts(stations), panels.plot(), style);
    }
}
