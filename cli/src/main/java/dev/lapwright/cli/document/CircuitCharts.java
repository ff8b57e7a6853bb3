package dev.lapwright.cli.document;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawing;
import dev.lapwright.charts.track.CircuitMap;
import dev.lapwright.charts.track.CircuitProfile;
import dev.lapwright.track.Stations;

/** Charts of circuits. Nothing of the charts is loaded before one is asked for. */
public final class CircuitCharts {
    private CircuitCharts() {}

    public static Drawing map(Stations stations) {
        return new Drawing(CircuitMap.of(stations, ChartStyle.STANDARD), CircuitMap.SIZE)
                .withNarrowHeight(CircuitMap.NARROW_HEIGHT, CircuitMap.NARROW_BELOW);
    }

    public static Drawing profile(Stations stations) {
        return new Drawing(CircuitProfile.of(stations, ChartStyle.STANDARD), CircuitProfile.SIZE);
    }
}
