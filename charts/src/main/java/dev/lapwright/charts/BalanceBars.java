package dev.lapwright.charts;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/**
 * Which axle reaches its limit first in each phase of a corner, and by how much, as {@link BalancePhases} draws it: the
 * lateral acceleration that the other axle has in reserve, m/s². Positive: the front is at its limit first (understeer);
 * negative: the rear is (oversteer); NaN where the corner has no such phase.
 *
 * @param corner label, such as {@code T3 Needle}; not blank
 * @param entry braking while turning, m/s²
 * @param liftOff off the throttle, m/s²
 * @param middle steady, m/s²
 * @param exit under power, m/s²
 */
public record BalanceBars(String corner, double entry, double liftOff, double middle, double exit) {
    public BalanceBars {
        if (corner.isBlank()) {
            throw new InvalidValueException("corner", "its label is blank", "give each corner its label");
        }
        check(corner + " entry", entry);
        check(corner + " lift-off", liftOff);
        check(corner + " middle", middle);
        check(corner + " exit", exit);
    }

    private static void check(String name, double reserve) {
        if (!Double.isNaN(reserve)) {
            Check.finite(name, reserve);
        }
    }
}
