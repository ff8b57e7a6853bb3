package dev.lapwright.cli;

import dev.lapwright.car.Adjustment;
import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.setup.RankedGains;
import dev.lapwright.report.Numbers;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.List;

/** Pictures of what adjustments are worth. Nothing of the charts is loaded before one is asked for. */
final class SensitivityCharts {
    private SensitivityCharts() {}

    static byte[] ranked(String fileName, SensitivityOutcome outcome) {
        List<RankedGains.GainBars> bars =
                outcome.result().gains().stream().map(SensitivityCharts::bars).toList();
        return ChartImage.forFile(
                fileName,
                RankedGains.of(
                        LapCharts.subject(outcome.subject()),
                        bars,
                        outcome.result().visibleGain(),
                        ChartStyle.STANDARD),
                RankedGains.size(bars.size()),
                LapCharts.PNG_SCALE);
    }

    private static RankedGains.GainBars bars(SensitivityResult.Gain gain) {
        Adjustment adjustment = gain.adjustment();
        boolean faster = gain.isGain();
        boolean slower = gain.isLoss();
        return new RankedGains.GainBars(
                adjustment.label().isBlank() ? adjustment.name() : adjustment.label(),
                adjustment.choices().isEmpty() ? Numbers.with(adjustment.step(), adjustment.unit()) : "",
                -gain.lower().gain(),
                -gain.higher().gain(),
                faster ? -gain.best().gain() : 0,
                SensitivityOutcome.setting(gain, gain.best().setting()),
                slower ? -gain.worst().gain() : 0,
                SensitivityOutcome.setting(gain, gain.worst().setting()));
    }
}
