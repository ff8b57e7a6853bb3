package dev.lapwright.brief;

import dev.lapwright.car.Adjustment;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.optimise.OptimisationResult;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

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
        List<SensitivityResult.Gain> worthChanging,
        List<SensitivityResult.Gain> notWorthChanging,
        List<SensitivityResult.Gain> leftAlone,
        List<OptimisationResult.LeftAlone> reasons) {
    /** A gain below this is not worth a spanner, s. Our choice, no source. */
    public static final double WORTH_S = 0.01;

    public BriefSensitivity {
        worthChanging = List.copyOf(worthChanging);
        notWorthChanging = List.copyOf(notWorthChanging);
        leftAlone = List.copyOf(leftAlone);
        reasons = List.copyOf(reasons);
    }

    static BriefSensitivity of(SensitivityResult study) {
        List<OptimisationResult.LeftAlone> kept = Optimisation.leftAlone(study.car());
        List<SensitivityResult.Gain> changing = new ArrayList<>();
        List<SensitivityResult.Gain> staying = new ArrayList<>();
        List<SensitivityResult.Gain> alone = new ArrayList<>();
        List<OptimisationResult.LeftAlone> reasons = new ArrayList<>();
        for (SensitivityResult.Gain gain : study.gains()) {
            Optional<OptimisationResult.LeftAlone> reason = kept.stream()
                    .filter(one -> one.name().equals(gain.adjustment().name()))
                    .findFirst();
            if (gain.bestGain() < WORTH_S) {
                staying.add(gain);
            } else if (reason.isPresent()) {
                alone.add(gain);
                reasons.add(reason.get());
            } else {
                changing.add(gain);
            }
        }
        return new BriefSensitivity(study, changing, staying, alone, reasons);
    }

    /** Whether a lap time says too little about an adjustment for a search to turn it unasked. */
    boolean isDelicate(Adjustment adjustment) {
        return Optimisation.leftAlone(study.car()).stream()
                .anyMatch(kept -> kept.name().equals(adjustment.name()));
    }
}
