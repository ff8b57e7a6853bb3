package dev.lapwright.study.balance;

import dev.lapwright.track.Corner;
import java.util.List;
import java.util.Optional;

/**
 * The balance of a car in one corner.
 *
 * @param corner which
 * @param phases those that the lap has there, in driving order: a corner taken flat has no entry
 * @param turningIn yaw acceleration into the corner
 * @param unwinding yaw acceleration out of it, negative
 */
public record CornerBalance(Corner corner, List<PhaseBalance> phases, YawDemand turningIn, YawDemand unwinding) {
    public CornerBalance {
        phases = List.copyOf(phases);
    }

    /** The balance in a phase; empty if the lap does not have it in this corner. */
    public Optional<PhaseBalance> in(BalancePhase phase) {
        return phases.stream().filter(one -> one.phase() == phase).findFirst();
    }
}
