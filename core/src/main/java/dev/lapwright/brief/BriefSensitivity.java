package dev.lapwright.brief;

import dev.lapwright.study.AdjustmentGain;
import dev.lapwright.study.OptimisationKept;
import dev.lapwright.study.SensitivityResult;
import java.util.List;

/**
 * What is worth changing and what is not. Each adjustment that can be turned is in one of the three lists, in the order of
 * what it is worth over its range.
 *
 * @param study what was found
 * @param worthChanging another setting gains {@link #WORTH_S} or more, and a lap time may decide about it
 * @param notWorthChanging no setting of those tried gains as much
 * @param leftAlone it would gain as much, but a lap time says too little about it
 * @param reasons why those are left alone, one for each of them
 */
public record BriefSensitivity(
        SensitivityResult study,
        List<AdjustmentGain> worthChanging,
        List<AdjustmentGain> notWorthChanging,
        List<AdjustmentGain> leftAlone,
        List<OptimisationKept> reasons) {
    /** A gain below this is not worth a spanner, s. Our choice, no source. */
    public static final double WORTH_S = 0.02;

    public BriefSensitivity {
        worthChanging = List.copyOf(worthChanging);
        notWorthChanging = List.copyOf(notWorthChanging);
        leftAlone = List.copyOf(leftAlone);
        reasons = List.copyOf(reasons);
    }
}
