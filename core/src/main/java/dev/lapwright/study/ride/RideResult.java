package dev.lapwright.study.ride;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.ride.AxleEnd;
import dev.lapwright.ride.QuarterCar;
import dev.lapwright.ride.RidePass;
import dev.lapwright.ride.RideTrace;
import java.util.List;

/**
 * How a car rides at one speed.
 *
 * @param car as set up
 * @param conditions of the day
 * @param choices what it was driven over
 * @param speed m/s
 * @param axles front and rear
 */
public record RideResult(Car car, Conditions conditions, RideChoices choices, double speed, List<Axle> axles) {
    public RideResult {
        axles = List.copyOf(axles);
    }

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
    public record Axle(
            AxleEnd end, QuarterCar wheel, RidePass kerb, RideTrace trace, RidePass surface, DamperMapResult map) {}
}
