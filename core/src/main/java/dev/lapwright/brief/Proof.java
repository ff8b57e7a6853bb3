package dev.lapwright.brief;

import dev.lapwright.evidence.CleanLaps;
import dev.lapwright.evidence.EvidenceResult;
import java.util.List;

/**
 * What the laps driven proved.
 *
 * @param laps the log, and which laps count
 * @param paces of all setups in the order of their first laps
 * @param changes of setup, in the order in which they were first made; the way back to a setup is no change of its own
 * @param bestLap fastest clean lap of the log, s
 * @param modelLap lap time of the car as it stands, s
 */
public record Proof(
        CleanLaps laps,
        List<EvidenceResult.SetupPace> paces,
        List<ProvedChange> changes,
        double bestLap,
        double modelLap) {
    public Proof {
        paces = List.copyOf(paces);
        changes = List.copyOf(changes);
    }

    /** Fastest clean lap over the model's. */
    public double ratio() {
        return bestLap / modelLap;
    }
}
