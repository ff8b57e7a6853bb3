package dev.lapwright.study.optimise;

import dev.lapwright.fault.Check;
import dev.lapwright.track.Track;

/**
 * A circuit that a setup is to serve.
 *
 * @param track where
 * @param weight how much its lap time counts beside those of the others; above 0
 */
public record OptimisationCircuit(Track track, double weight) {
    public OptimisationCircuit {
        Check.positive("weight of " + track.name(), weight);
    }
}
