package dev.lapwright.charts;

import dev.lapwright.study.SweepResult;
import org.jfree.chart.JFreeChart;

/** Lap time over what was swept. */
public final class SweepTime {
    /** Natural size. */
    public static final ImageSize SIZE = ImageSize.WIDE;

    private SweepTime() {}

    /** Lap time over what was swept. */
    public static JFreeChart of(SweepResult sweep, ChartStyle style) {
        throw new UnsupportedOperationException();
    }
}
