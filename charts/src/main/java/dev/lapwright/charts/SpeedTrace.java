package dev.lapwright.charts;

import dev.lapwright.lap.Lap;
import org.jfree.chart.JFreeChart;

/** Speed over distance with corners and gear. */
public final class SpeedTrace {
    /** Natural size. */
    public static final ImageSize SIZE = ImageSize.WIDE;

    private SpeedTrace() {}

    /** Speed over distance with corners and gear. */
    public static JFreeChart of(Lap lap, ChartStyle style) {
        throw new UnsupportedOperationException();
    }
}
