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
        double low = STEP * Math.floor(Numbers.kmh(figures.minimumSpeed()) / STEP);
        double high = STEP * Math.ceil(Numbers.kmh(figures.topSpeed()) / STEP);
        ValueRamp ramp = new ValueRamp(low, high, style.palette(), false);
        String facts = Sheet.facts(
                lap.vehicle().car().name(),
                (lap.track().isClosed() ? "lap " : "run ") + Numbers.lapTime(lap.time()),
                Numbers.fixed(0).format(lap.track().length()) + " m",
                "top " + Numbers.wholeKmh(figures.topSpeed()) + " km/h",
                "lowest " + Numbers.wholeKmh(figures.minimumSpeed()) + " km/h");
        JFreeChart chart = Sheet.of("Speed round " + lap.track().name(), facts, new MapPlot(lap, ramp, style), style);
        chart.addSubtitle(Legends.scale(ramp, new UnitAxis("Speed (km/h)", style, 1), style));
        return chart;
    }
}
