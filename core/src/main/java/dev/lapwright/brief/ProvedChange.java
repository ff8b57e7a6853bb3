package dev.lapwright.brief;

import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.evidence.MeanDifference;
import java.util.Optional;

/**
 * A change of setup found in a log, and what the model had expected of it.
 *
 * @param before setup that was changed, as the log names it
 * @param after setup that it was changed to
 * @param seen what the laps say; missing where they cannot be compared
 * @param expected what the model says; missing where the names of the setups do not tell what was set
 */
public record ProvedChange(
        String before, String after, BriefPart<EvidenceResult> seen, BriefPart<ChangeEffect> expected) {
    /** The comparison of the two setups, if there is one. */
    public Optional<EvidenceResult.Comparison> comparison() {
        return seen.value().flatMap(EvidenceResult::comparison);
    }

    /** Difference of the mean lap times, below nought is faster; empty with too few laps. */
    public Optional<MeanDifference> difference() {
        return comparison().flatMap(EvidenceResult.Comparison::tests).map(EvidenceResult.Tests::welch);
    }

    /** Whether what was expected lies within the interval of what was seen; empty where one of them is missing. */
    public Optional<Boolean> agrees() {
        return difference()
                .flatMap(seenDifference -> expected.value().map(effect -> {
                    double change = -effect.gain();
                    return change >= seenDifference.low() && change <= seenDifference.high();
                }));
    }
}
