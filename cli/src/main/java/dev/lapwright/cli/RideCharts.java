package dev.lapwright.cli;

import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ride.DamperMapChart;
import dev.lapwright.charts.ride.KerbPassChart;
import dev.lapwright.report.Numbers;
import dev.lapwright.study.ride.RideResult;

/** Pictures of the ride. Nothing of the charts is loaded before one is asked for. */
final class RideCharts {
    private RideCharts() {}

    static byte[] map(String fileName, RideOutcome outcome, boolean rear) {
        RideResult.Axle axle = outcome.axle(rear);
        return ChartImage.forFile(
                fileName,
                DamperMapChart.of(subject(outcome, axle), axle.map(), outcome.measure(), ChartStyle.STANDARD),
                DamperMapChart.SIZE,
                LapCharts.PNG_SCALE);
    }

    static byte[] pass(String fileName, RideOutcome outcome, boolean rear) {
        RideResult.Axle axle = outcome.axle(rear);
        return ChartImage.forFile(
                fileName,
                KerbPassChart.of(subject(outcome, axle), axle.trace(), axle.kerb(), ChartStyle.STANDARD),
                KerbPassChart.SIZE,
                LapCharts.PNG_SCALE);
    }

    private static String subject(RideOutcome outcome, RideResult.Axle axle) {
        return outcome.subject().car().name() + " " + axle.end().label() + ", " + RideReport.kerb(outcome.result())
                + ", " + Numbers.kmh(outcome.result().speed()) + " km/h";
    }
}
