package dev.lapwright.evidence;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/**
 * A lap on the timing screen.
 *
 * @param number as it was counted, 0 or more
 * @param time s
 * @param setup what the car was set to: a name, not blank
 * @param run which run it belongs to, as the log names it; empty if it does not
 * @param flag what the log says of it
 */
public record TimedLap(int number, double time, String setup, String run, LapFlag flag) {
    /** @throws InvalidValueException if the number is below nought, the time not above it, or the setup has no name */
    public TimedLap {
        if (number < 0) {
            throw new InvalidValueException("lap number", number + " is below nought", "count laps from 1");
        }
        Check.positive("time (s) of lap " + number, time);
        if (setup.isBlank()) {
            throw new InvalidValueException("setup of lap " + number, "it has no name", "name the setup");
        }
    }
}
