package dev.lapwright.draft;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Range of a number in a class of cars or tyres: from here to there lie nine in ten of them.
 *
 * @param low where one in twenty lies below
 * @param high where one in twenty lies above
 */
public record Range(double low, double high) {
    private static final double UPPER_FIVE_PERCENT =
            new NormalDistribution(null, 0, 1).inverseCumulativeProbability(0.95);

    public Range {
        Check.finite("low end of a range", low);
        Check.finite("high end of a range", high);
        if (!(low <= high)) {
            throw new InvalidValueException(
                    "range", Check.text(low) + " to " + Check.text(high) + " runs backwards", "swap the ends");
        }
    }

    /** What is taken where nothing else is known. */
    public double middle() {
        return 0.5 * (low + high);
    }

    /** Standard deviation of a normal number of which nine in ten lie in the range. */
    public double deviation() {
        return 0.5 * (high - low) / UPPER_FIVE_PERCENT;
    }

    /** Whether a number lies in it. */
    public boolean holds(double value) {
        return value >= low && value <= high;
    }
}
