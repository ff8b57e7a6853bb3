package dev.lapwright.cli;

import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.sweep.LapTimeFront;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.optimise.OptimisationResult;
import java.util.List;
import java.util.Optional;

/** Pictures of an optimisation. Nothing of the charts is loaded before one is asked for. */
final class OptimiseCharts {
    private OptimiseCharts() {}

    static byte[] front(String fileName, OptimiseOutcome outcome) {
        OptimisationResult result = outcome.result();
        List<LapTimeFront.SetupPoint> setups =
                result.search().met().stream().map(OptimiseCharts::point).toList();
        String subject = result.task().car().name() + " at " + OptimiseReading.circuits(result);
        return ChartImage.forFile(
                fileName,
                LapTimeFront.of(
                        subject, setups, Optional.of(point(result.before())), Optimisation.FLAT_S, ChartStyle.STANDARD),
                LapTimeFront.SIZE,
                LapCharts.PNG_SCALE);
    }

    private static LapTimeFront.SetupPoint point(OptimisationResult.Candidate point) {
        return new LapTimeFront.SetupPoint("", point.lapTime(), point.topSpeed());
    }
}
