package dev.lapwright.cli;

import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.setup.BalancePhases;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.BalanceResult;
import java.util.List;

/** Pictures of balances. Nothing of the charts is loaded before one is asked for. */
final class BalanceCharts {
    private BalanceCharts() {}

    static byte[] phases(String fileName, BalanceOutcome outcome) {
        List<BalancePhases.BalanceBars> bars =
                outcome.balance().corners().stream().map(BalanceCharts::bars).toList();
        return ChartImage.forFile(
                fileName,
                BalancePhases.of(LapCharts.subject(outcome.subject()), bars, ChartStyle.STANDARD),
                BalancePhases.size(bars.size()),
                LapCharts.PNG_SCALE);
    }

    static BalancePhases.BalanceBars bars(BalanceResult.CornerBalance corner) {
        return new BalancePhases.BalanceBars(
                corner.corner().label(),
                reserve(corner, BalancePhase.ENTRY),
                reserve(corner, BalancePhase.LIFT_OFF),
                reserve(corner, BalancePhase.MIDDLE),
                reserve(corner, BalancePhase.EXIT));
    }

    /** None where the lap has no such phase, or an axle no limit. */
    private static double reserve(BalanceResult.CornerBalance corner, BalancePhase phase) {
        double understeer =
                corner.in(phase).map(one -> one.margins().understeer()).orElse(Double.NaN);
        return Double.isFinite(understeer) ? understeer : Double.NaN;
    }
}
