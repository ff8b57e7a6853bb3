package dev.lapwright.fit;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.InvalidValueException;
import java.util.List;

/**
 * Run of driven laps with one setup of the car in one air. Immutable.
 *
 * @param car as set up
 * @param conditions of the run
 * @param laps driven, at least one
 */
public record DrivenRun(Car car, Conditions conditions, List<DrivenLap> laps) {
    public DrivenRun {
        laps = List.copyOf(laps);
        if (laps.isEmpty()) {
            throw new InvalidValueException("laps", "there is none", "give one at least");
        }
    }
}
