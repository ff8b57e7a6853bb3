package dev.lapwright.study.ride;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.ride.AxleEnd;
import dev.lapwright.ride.QuarterCar;
import dev.lapwright.ride.RidePass;
import java.util.List;

/**
 * Ride of a car at one speed.
 *
 * @param car as set up
 * @param conditions of the day
 * @param choices what it was driven over
 * @param speed m/s
 * @param axles front and rear
 */
public record RideResult(Car car, Conditions conditions, RoadInput choices, double speed, List<Axle> axles) {
    public RideResult {
        axles = List.copyOf(axles);
    }

    /**
     * Ride of one axle.
     *
     * @param end which
     * @param wheel its quarter car, with the downforce of the speed
     * @param kerb the pass over the kerb
     * @param trace of that pass
     * @param surface the pass over the rough surface
     * @param map of fast damper rates over the kerb
     * @param clicks the same kerb at the settings that the car's adjusters allow
     */
    public record Axle(
            AxleEnd end,
            QuarterCar wheel,
            RidePass kerb,
            RidePass.Trace trace,
            RidePass surface,
            DamperMapResult map,
            DamperClicks clicks) {}
}
