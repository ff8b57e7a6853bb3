package dev.lapwright.results;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Quantity;
import dev.lapwright.fit.FitResult;
import dev.lapwright.report.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Choice of setups of which a fit is asked what a further run in them would tell: the ends of each adjustment that moves wings, bars or springs
 * and nothing else, the rest as it stands. Those move load and grip between the axles, by what a document knows.
 */
public final class NextRunChoices {
    private static final Set<String> MOVED = Set.of(
            Quantity.BAR_FRONT.path(),
            Quantity.BAR_REAR.path(),
            Quantity.SPRING_FRONT.path(),
            Quantity.SPRING_REAR.path());

    private NextRunChoices() {}

    /** The setups, in the order of the car's document. */
    public static List<FitResult.Candidate> of(Subject subject) {
        List<FitResult.Candidate> candidates = new ArrayList<>();
        for (Adjustment adjustment : subject.bare().adjustments()) {
            if (adjustment.effects().stream().allMatch(effect -> serves(effect.quantity()))) {
                for (double end : new double[] {adjustment.min(), adjustment.max()}) {
                    if (end != subject.car().setting(adjustment.name())) {
                        candidates.add(new FitResult.Candidate(
                                adjustment.name() + "=" + Numbers.plain(end),
                                subject.car().with(adjustment.name(), end)));
                    }
                }
            }
        }
        return candidates;
    }

    private static boolean serves(String quantity) {
        return MOVED.contains(quantity) || quantity.startsWith("aero.wings.");
    }
}
