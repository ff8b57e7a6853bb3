package dev.lapwright.cli;

import dev.lapwright.results.Subject;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.study.ride.RideResult;

/**
 * A study of the ride and what was asked.
 *
 * @param subject the car, set up
 * @param result what was found
 * @param measure by which pairs of rates are judged
 * @param place where the speed comes from, in words; empty if it was given
 */
record RideOutcome(Subject subject, RideResult result, RideMeasure measure, String place) {
    /** Front or rear. */
    RideResult.Axle axle(boolean rear) {
        return result.axles().get(rear ? 1 : 0);
    }
}
