package dev.lapwright.cli;

import dev.lapwright.report.Numbers;
import dev.lapwright.results.ChosenLine;
import dev.lapwright.results.Subject;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.List;

/**
 * A study of sensitivities and what was asked.
 *
 * @param subject the car as it stands
 * @param line on which the laps were driven
 * @param result what was found
 */
record SensitivityOutcome(Subject subject, ChosenLine line, SensitivityResult result) {
    /** Adjustments that the lap time answers to at all, the one worth most first. */
    List<SensitivityResult.Gain> felt() {
        return result.gains().stream()
                .filter(gain -> gain.range() >= SensitivityResult.Gain.NOTHING)
                .toList();
    }

    /** A setting with its unit. */
    static String setting(SensitivityResult.Gain gain, double setting) {
        return Numbers.with(setting, gain.adjustment().unit());
    }
}
