package dev.lapwright.evidence;

import java.util.List;
import java.util.Optional;

/**
 * What a log shows.
 *
 * @param choices what was asked
 * @param laps the log, and which laps count
 * @param trend that was taken out
 * @param paces of all setups in the order of their first laps; unmodifiable
 * @param comparison of two setups; empty if the log holds but one
 */
public record EvidenceResult(
        EvidenceChoices choices,
        CleanLaps laps,
        Trend trend,
        List<SetupPace> paces,
        Optional<SetupComparison> comparison) {
    public EvidenceResult {
        paces = List.copyOf(paces);
    }
}
