package dev.lapwright.study.gearing;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import java.util.List;
import java.util.Optional;

/**
 * All gearings tried in one situation.
 *
 * @param kind which situation
 * @param amount of the tow, as the share of drag it takes away, or of the head wind, m/s; 0 as given
 * @param car before its gearing was changed
 * @param conditions the day
 * @param baseline the lap of that car
 * @param choices axis by axis, values in their order
 */
public record GearingScenario(
        Kind kind, double amount, Car car, Conditions conditions, GearingLap baseline, List<GearingChoice> choices) {
    public GearingScenario {
        choices = List.copyOf(choices);
    }

    /** What the situation is. */
    public enum Kind {
        /** Car and day as given. */
        AS_GIVEN,
        /** In the wake of another car, all the way round. */
        TOW,
        /** With a wind against the car where it is fastest. */
        HEAD_WIND
    }

    /** The gearings of one axis. */
    public List<GearingChoice> choices(String axis) {
        return choices.stream().filter(choice -> choice.axis().equals(axis)).toList();
    }

    /** Seconds gained against the baseline, positive is faster; NaN where there was no lap. */
    public double gain(GearingChoice choice) {
        return choice.lap().map(lap -> baseline.lapTime() - lap.lapTime()).orElse(Double.NaN);
    }

    /** The fastest gearing of an axis, the first of equals; empty if none has a lap. */
    public Optional<GearingChoice> fastest(String axis) {
        GearingChoice best = null;
        for (GearingChoice choice : choices(axis)) {
            if (choice.lap().isPresent()
                    && (best == null
                            || choice.lap().get().lapTime() < best.lap().get().lapTime())) {
                best = choice;
            }
        }
        return Optional.ofNullable(best);
    }
}
