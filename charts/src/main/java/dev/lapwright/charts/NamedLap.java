package dev.lapwright.charts;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import java.util.Objects;

/**
 * A lap and what to call it in a comparison.
 *
 * @param name short, such as {@code rear wing 6 deg}; not blank
 * @param lap the lap
 */
public record NamedLap(String name, Lap lap) {
    public NamedLap {
        Objects.requireNonNull(lap, "lap");
        if (name.isBlank()) {
            throw new InvalidValueException("lap name", "it is blank", "give each lap a short name");
        }
    }
}
