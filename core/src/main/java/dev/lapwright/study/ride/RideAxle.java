package dev.lapwright.study.ride;

import dev.lapwright.ride.AxleEnd;
import dev.lapwright.ride.QuarterCar;
import dev.lapwright.ride.RidePass;
import dev.lapwright.ride.RideTrace;

/**
 * How one axle rides.
 *
 * @param end which
 * @param wheel its quarter car, with the downforce of the speed
 * @param kerb the pass over the kerb
 * @param trace of that pass
 * @param surface the pass over the rough surface
 * @param map of fast damper rates over the kerb
 */
public record RideAxle(
        AxleEnd end, QuarterCar wheel, RidePass kerb, RideTrace trace, RidePass surface, DamperMapResult map) {}
