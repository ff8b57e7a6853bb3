package dev.lapwright.charts;

import dev.lapwright.fault.Check;
import java.util.Objects;

/**
 * What a setup gives, as {@link LapTimeFront} draws it.
 *
 * @param label short, such as {@code wing 6 deg, final 3.9}; may be empty
 * @param lapTime s
 * @param topSpeed m/s
 */
public record SetupPoint(String label, double lapTime, double topSpeed) {
    public SetupPoint {
        Objects.requireNonNull(label, "label");
        Check.positive("lap time (s)", lapTime);
        Check.positive("top speed (m/s)", topSpeed);
    }
}
