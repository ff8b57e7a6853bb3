package dev.lapwright.charts;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.Objects;

/**
 * What an adjustment is worth, as {@link RankedGains} draws it. Changes are of lap time, s, from the car as it is set up:
 * negative is faster.
 *
 * @param name for people, such as {@code Rear wing}; not blank
 * @param step one step in words, such as {@code 1 deg}
 * @param stepDown change by one step down, s; NaN where there is none
 * @param stepUp change by one step up, s; NaN where there is none
 * @param best change at the fastest setting of the range, s, not above 0
 * @param bestAt that setting in words, such as {@code 9 deg}
 * @param worst change at the slowest setting of the range, s, not below 0
 * @param worstAt that setting in words
 */
public record GainBars(
        String name,
        String step,
        double stepDown,
        double stepUp,
        double best,
        String bestAt,
        double worst,
        String worstAt) {
    public GainBars {
        Objects.requireNonNull(step, "step");
        Objects.requireNonNull(bestAt, "bestAt");
        Objects.requireNonNull(worstAt, "worstAt");
        if (name.isBlank()) {
            throw new InvalidValueException("adjustment name", "it is blank", "give each adjustment its name");
        }
        checkStep(name + " step down", stepDown);
        checkStep(name + " step up", stepUp);
        Check.inRange(name + " best", best, -Double.MAX_VALUE, 0);
        Check.inRange(name + " worst", worst, 0, Double.MAX_VALUE);
    }

    private static void checkStep(String name, double change) {
        if (!Double.isNaN(change)) {
            Check.finite(name, change);
        }
    }

    /** From the slowest setting to the fastest, s. */
    double span() {
        return worst - best;
    }
}
