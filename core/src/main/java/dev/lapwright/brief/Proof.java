package dev.lapwright.brief;

import dev.lapwright.evidence.CleanLaps;
import dev.lapwright.evidence.EvidenceResult;
import java.util.List;
import java.util.Optional;

/**
 * Evidence of a timing log for or against what the model predicted.
 *
 * @param laps the log, and which laps count
 * @param paces of all setups in the order of their first laps
 * @param changes of setup, in the order in which they were first made; the way back to a setup is no change of its own
 * @param bestLap fastest clean lap of the log, s
 * @param modelLap lap time of the car as it stands, s
 */
public record Proof(
        CleanLaps laps, List<EvidenceResult.SetupPace> paces, List<Change> changes, double bestLap, double modelLap) {
    public Proof {
        paces = List.copyOf(paces);
        changes = List.copyOf(changes);
    }

    /** Fastest clean lap over the model's. */
    public double ratio() {
        return bestLap / modelLap;
    }

    /**
     * Change of setup found in a log, and what the model had expected of it.
     *
     * @param before setup that was changed, as the log names it
     * @param after setup that it was changed to
     * @param seen what the laps say; missing where they cannot be compared
     * @param expected what the model says; missing where the names of the setups do not tell what was set
     */
    public record Change(
            String before,
            String after,
            BriefResult.Part<EvidenceResult> seen,
            BriefResult.Part<BriefResult.ChangeEffect> expected) {
        /** The comparison of the two setups, if there is one. */
        public Optional<EvidenceResult.Comparison> comparison() {
            return seen.value().flatMap(EvidenceResult::comparison);
        }

        /** Difference of the lap times, below nought is faster; empty with too few laps. */
        public Optional<EvidenceResult.Difference> difference() {
            return comparison().flatMap(EvidenceResult.Comparison::difference);
        }

        /** Whether what was expected lies within the interval of what was seen; empty where one of them is missing. */
        public Optional<Boolean> agrees() {
            return difference()
                    .flatMap(difference ->
                            expected.value().map(effect -> difference.once().holds(effect.difference())));
        }
    }
}
