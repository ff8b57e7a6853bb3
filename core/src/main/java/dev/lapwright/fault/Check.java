package dev.lapwright.fault;

import java.math.BigDecimal;
import java.math.MathContext;

/** Argument checks that neither NaN nor an infinity can pass. Names carry their unit, so messages do too. */
public final class Check {
    private Check() {}

    /** Returns {@code value} if it is a finite number. */
    public static double finite(String name, double value) {
        if (!Double.isFinite(value)) {
            throw new InvalidValueException(name, text(value) + " is not a number", "give a finite number");
        }
        return value;
    }

    /** Returns {@code value} if it is finite and above zero. */
    public static double positive(String name, double value) {
        finite(name, value);
        if (!(value > 0)) {
            throw new InvalidValueException(name, text(value) + " is not above zero", "give a number above 0");
        }
        return value;
    }

    /** Returns {@code value} if it is finite and within {@code min} to {@code max}, both included. */
    public static double inRange(String name, double value, double min, double max) {
        finite(name, value);
        if (!(value >= min && value <= max)) {
            throw new InvalidValueException(
                    name, text(value) + " is outside its range", "allowed: " + text(min) + " to " + text(max));
        }
        return value;
    }

    /** Checks that {@code values} are finite and strictly rising; returns the same array, not copied. */
    public static double[] rising(String name, double[] values) {
        for (int i = 0; i < values.length; i++) {
            finite(name + "[" + i + "]", values[i]);
            if (i > 0 && !(values[i] > values[i - 1])) {
                throw new InvalidValueException(
                        name + "[" + i + "]",
                        text(values[i]) + " does not exceed the value before it, " + text(values[i - 1]),
                        "list the values in rising order");
            }
        }
        return values;
    }

    /** A number as people write it: up to 7 significant digits, no trailing zeros, never in a local format. */
    public static String text(double value) {
        if (!Double.isFinite(value)) {
            return Double.toString(value);
        }
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(7)).stripTrailingZeros();
        double size = Math.abs(value);
        return size != 0 && (size < 1e-5 || size >= 1e10) ? rounded.toString() : rounded.toPlainString();
    }
}
