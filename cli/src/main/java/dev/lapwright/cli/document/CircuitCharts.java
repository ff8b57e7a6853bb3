package dev.lapwright.cli.document;

import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.track.CircuitMap;
import dev.lapwright.charts.track.CircuitProfile;
import dev.lapwright.cli.study.LapCharts;
import dev.lapwright.track.Stations;

/** Pictures of circuits. Nothing of the charts is loaded before one is asked for. */
public final class CircuitCharts {
    private CircuitCharts() {}

    public static byte[] map(String fileName, Stations stations) {
        return ChartImage.forFile(
                fileName, CircuitMap.of(stations, ChartStyle.STANDARD), CircuitMap.SIZE, LapCharts.PNG_SCALE);
    }

    public static byte[] profile(String fileName, Stations stations) {
        return ChartImage.forFile(
                fileName, CircuitProfile.of(stations, ChartStyle.STANDARD), CircuitProfile.SIZE, LapCharts.PNG_SCALE);
    }
}
