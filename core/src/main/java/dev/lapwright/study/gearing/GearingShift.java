package dev.lapwright.study.gearing;

import dev.lapwright.track.Corner;
import java.util.Optional;

/**
 * One change of gear on a lap.
 *
 * @param from gear, from 1
 * @param to gear: the next above or below
 * @param at distance, m
 * @param time since the start of the lap, s
 * @param speed m/s
 * @param engineSpeedBefore in the gear left, 1/min
 * @param engineSpeedAfter in the gear taken, 1/min
 * @param corner the corner that it falls in, if any
 * @param timeToBraking until the brakes are next applied, s; infinite if they are not applied again
 */
public record GearingShift(
        int from,
        int to,
        double at,
        double time,
        double speed,
        double engineSpeedBefore,
        double engineSpeedAfter,
        Optional<Corner> corner,
        double timeToBraking) {

    /** Whether it is to a higher gear. */
    public boolean up() {
        return to > from;
    }

    /** Whether it is an upshift with the brakes due within a time in s: hardly worth making. */
    public boolean brakingWithin(double seconds) {
        return up() && timeToBraking <= seconds;
    }
}
