package dev.lapwright.charts;

import dev.lapwright.lap.Lap;
import org.jfree.chart.JFreeChart;

/** The track coloured by speed. */
public final class TrackMap {
    /** Natural size. */
    public static final ImageSize SIZE = ImageSize.MAP;

    private TrackMap() {}

    /** The track coloured by speed. */
    public static JFreeChart of(Lap lap, ChartStyle style) {
        throw new UnsupportedOperationException();
    }
}
