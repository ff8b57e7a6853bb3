package dev.lapwright.cli;

import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.sweep.SweepTime;
import dev.lapwright.charts.sweep.TradeOff;

/** Pictures of sweeps. Nothing of the charts is loaded before one is asked for. */
final class SweepCharts {
    private SweepCharts() {}

    static byte[] lapTime(String fileName, SweepOutcome outcome) {
        return ChartImage.forFile(
                fileName, SweepTime.of(outcome.result(), ChartStyle.STANDARD), SweepTime.SIZE, LapCharts.PNG_SCALE);
    }

    static byte[] tradeOff(String fileName, SweepOutcome outcome) {
        return ChartImage.forFile(
                fileName, TradeOff.of(outcome.result(), ChartStyle.STANDARD), TradeOff.SIZE, LapCharts.PNG_SCALE);
    }
}
