package dev.lapwright.charts;

import java.util.List;
import org.jfree.chart.JFreeChart;

/** Speed of several laps and the time between them. */
public final class SpeedComparison {
    /** Natural size. */
    public static final ImageSize SIZE = ImageSize.WIDE;

    private SpeedComparison() {}

    /** Speed of several laps and the time between them. */
    public static JFreeChart of(List<NamedLap> laps, ChartStyle style) {
        throw new UnsupportedOperationException();
    }
}
