package dev.lapwright.charts;

import dev.lapwright.lap.Lap;
import org.jfree.chart.JFreeChart;

/** Longitudinal against lateral acceleration. */
public final class GgDiagram {
    /** Natural size. */
    public static final ImageSize SIZE = ImageSize.SQUARE;

    private GgDiagram() {}

    /** Longitudinal against lateral acceleration. */
    public static JFreeChart of(Lap lap, ChartStyle style) {
        throw new UnsupportedOperationException();
    }
}
