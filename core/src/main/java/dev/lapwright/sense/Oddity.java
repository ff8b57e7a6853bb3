package dev.lapwright.sense;

import dev.lapwright.fault.Check;
import java.math.BigDecimal;
import java.math.MathContext;

/**
 * Something that is allowed and yet hardly true: where, what, and what to do.
 *
 * @param place the quantity, distance or sample, for people
 * @param problem what is odd, with its value and unit, and what is usual
 * @param remedy what to do
 */
public record Oddity(String place, String problem, String remedy) {
    /** A value with three digits. */
    static String text(double value) {
        return Check.text(new BigDecimal(value).round(new MathContext(3)).doubleValue());
    }
}
