package dev.lapwright.cli;

import dev.lapwright.results.Subject;
import dev.lapwright.study.gearing.GearingAxes;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.sweep.SweepAxis;
import java.util.Arrays;
import java.util.Optional;

/**
 * A study of gearing and what was asked.
 *
 * @param subject the car as it stands
 * @param beforeBraking how short before braking an upshift is pointed out, s
 * @param result what was found
 */
record GearingOutcome(Subject subject, double beforeBraking, GearingResult result) {

    /** Lap times are given in thousandths; less than half of one is nothing. */
    static final double NOTHING_S = 0.0005;

    /** The fastest gearing of an axis, or the one that is fitted where that is as fast. */
    Optional<GearingResult.Candidate> best(GearingResult.Scenario scenario, SweepAxis axis) {
        Optional<GearingResult.Candidate> fastest = scenario.fastest(axis.name());
        return scenario.choices(axis.name()).stream()
                .filter(this::isFitted)
                .filter(tried -> scenario.gain(fastest.orElse(tried)) - scenario.gain(tried) < NOTHING_S)
                .findFirst()
                .or(() -> fastest);
    }

    /** Whether what is varied is no ratio itself, as the teeth of a sprocket. */
    boolean isNoRatio(SweepAxis axis) {
        double fitted = result.car().value(GearingAxes.FINAL_DRIVE);
        return result.asGiven().choices(axis.name()).stream().anyMatch(tried -> {
            double drive = tried.car().value(GearingAxes.FINAL_DRIVE);
            return drive != fitted && drive != tried.value();
        });
    }

    /** Whether the final drive is varied. */
    boolean isFinalDrive(SweepAxis axis) {
        double fitted = result.car().value(GearingAxes.FINAL_DRIVE);
        return result.asGiven().choices(axis.name()).stream()
                .anyMatch(tried -> tried.car().value(GearingAxes.FINAL_DRIVE) != fitted);
    }

    /** Whether a gearing is the one that is fitted. */
    boolean isFitted(GearingResult.Candidate tried) {
        return tried.car().value(GearingAxes.FINAL_DRIVE) == result.car().value(GearingAxes.FINAL_DRIVE)
                && Arrays.equals(tried.car().gearRatios(), result.car().gearRatios());
    }
}
