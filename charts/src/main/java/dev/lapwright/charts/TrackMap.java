package dev.lapwright.charts;

import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapFigures;
import org.jfree.chart.JFreeChart;

/**
 * The track in plan, north up and true to scale, coloured by speed (km/h), with corners, start and driving direction. The
 * road is drawn wider than it is.
 */
public final class TrackMap {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.MAP;

    private static final double STEP = 10;

    private TrackMap() {}

    /** The map of a lap. */
    public static JFreeChart of(Lap lap, ChartStyle style) {
        LapFigures figures = lap.figures();
        // A standing start would spend half of the ramp on a few metres: below the slowest corner all is one colour.
        double corner = figures.minimumCornerSpeed();
        double slowest = lap.track().isClosed() || Double.isNaN(corner) ? figures.minimumSpeed() : corner;
        double low = STEP * Math.floor(Numbers.kmh(slowest) / STEP);
        boolean slower = Numbers.kmh(figures.minimumSpeed()) < low;
        double high = STEP * Math.ceil(Numbers.kmh(figures.topSpeed()) / STEP);
        ValueRamp ramp = new ValueRamp(low, high, style.palette(), false);
        String facts = Sheet.facts(
                lap.vehicle().car().name(),
                (lap.track().isClosed() ? "lap " : "run ") + Numbers.lapTime(lap.time()),
                Numbers.fixed(0).format(lap.track().length()) + " m",
                "top " + Numbers.wholeKmh(figures.topSpeed()) + " km/h",
                "lowest " + Numbers.wholeKmh(figures.minimumSpeed()) + " km/h"
                        + (slower ? " (one colour below " + Numbers.fixed(0).format(low) + ")" : ""));
        JFreeChart chart = Sheet.of("Speed map: " + lap.track().name(), facts, new MapPlot(lap, ramp, style), style);
        chart.addSubtitle(Legends.scale(ramp, new UnitAxis("Speed (km/h)", style, 1), style));
        return chart;
    }
}
