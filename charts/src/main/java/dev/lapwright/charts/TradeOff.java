package dev.lapwright.charts;

import dev.lapwright.study.SweepResult;
import org.jfree.chart.JFreeChart;

/** Top speed against cornering speed. */
public final class TradeOff {
    /** Natural size. */
    public static final ImageSize SIZE = ImageSize.WIDE;

    private TradeOff() {}

    /** Top speed against cornering speed. */
    public static JFreeChart of(SweepResult sweep, ChartStyle style) {
        throw new UnsupportedOperationException();
    }
}
