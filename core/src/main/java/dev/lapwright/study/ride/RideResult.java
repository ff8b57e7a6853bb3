package dev.lapwright.study.ride;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
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
public record RideResult(Car car, Conditions conditions, RideChoices choices, double speed, List<RideAxle> axles) {
    public RideResult {
        axles = List.copyOf(axles);
    }
}
