package dev.lapwright.brief;

import dev.lapwright.study.robust.AdjustmentVerdict;
import dev.lapwright.study.robust.JudgedAdjustments;
import dev.lapwright.study.robust.SettledVerdicts;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Adjustments by what can be said of each: each that can be turned is in one list. Those that the plan turns have their gain, interval and
 * chance there. All others are judged turned by themselves, by the one rule of {@link AdjustmentVerdict}.
 *
 * @param planned the plan turns it, as most drawn cars gain from that
 * @param gains its fastest setting is faster
 * @param right none of those settings is faster, and at least one slower: a miss would cost
 * @param alike none of those settings makes a difference that counts
 * @param unseen the model knows too little of it, or nothing
 * @param untold one of those settings makes a difference that counts on some cars, and none or the opposite one on others
 * @param doubt the drawn cars; missing where none were drawn: then what the car as it is described does is said, and nothing is untold
 */
public record AdjustmentVerdicts(
        List<SensitivityResult.Worth> planned,
        List<SensitivityResult.Worth> gains,
        List<SensitivityResult.Worth> right,
        List<SensitivityResult.Worth> alike,
        List<SensitivityResult.Worth> unseen,
        List<SensitivityResult.Worth> untold,
        BriefResult.Part<SettledVerdicts.Result> doubt) {
    public AdjustmentVerdicts {
        planned = List.copyOf(planned);
        gains = List.copyOf(gains);
        right = List.copyOf(right);
        alike = List.copyOf(alike);
        unseen = List.copyOf(unseen);
        untold = List.copyOf(untold);
    }

    /** @param turned names of what the plan turns */
    static AdjustmentVerdicts of(BriefResult.Priorities found, Set<String> turned, BriefDoubt doubt) {
        SensitivityResult study = found.study();
        BriefResult.Part<SettledVerdicts.Result> drawn = doubt.verdicts(study, turned);
        List<AdjustmentVerdict> verdicts = drawn.value()
                .map(SettledVerdicts.Result::verdicts)
                .orElseGet(() -> JudgedAdjustments.of(study, turned).verdicts(List.of()));
        List<SensitivityResult.Worth> planned = new ArrayList<>();
        Map<AdjustmentVerdict, List<SensitivityResult.Worth>> lists = new EnumMap<>(AdjustmentVerdict.class);
        for (int i = 0; i < verdicts.size(); i++) {
            SensitivityResult.Worth worth = study.worths().get(i);
            if (turned.contains(worth.adjustment().name())) {
                planned.add(worth);
            } else {
                lists.computeIfAbsent(verdicts.get(i), verdict -> new ArrayList<>())
                        .add(worth);
            }
        }
        return new AdjustmentVerdicts(
                planned,
                lists.getOrDefault(AdjustmentVerdict.GAIN, List.of()),
                lists.getOrDefault(AdjustmentVerdict.RIGHT, List.of()),
                lists.getOrDefault(AdjustmentVerdict.ALIKE, List.of()),
                lists.getOrDefault(AdjustmentVerdict.UNSEEN, List.of()),
                lists.getOrDefault(AdjustmentVerdict.UNTOLD, List.of()),
                drawn);
    }
}
