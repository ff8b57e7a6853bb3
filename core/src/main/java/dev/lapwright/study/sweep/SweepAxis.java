package dev.lapwright.study.sweep;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/**
 * Axis of a sweep: one thing to vary and the values it takes.
 *
 * @param name of an adjustment, of a quantity of the car, or of one of the conditions ({@code conditions.airTempC})
 * @param values in its unit, in the order wanted; at least one
 */
public record SweepAxis(String name, double[] values) {
    private static final int MOST = 1_000_000;

    public SweepAxis {
        if (values.length == 0) {
            throw new InvalidValueException(name, "there is nothing to sweep: no values", "give at least one value");
        }
        for (double value : values) {
            Check.finite(name, value);
        }
        values = values.clone();
    }

    /** From {@code first} to {@code last}, both included, in steps; the last step may be short of {@code last}. */
    public static SweepAxis stepped(String name, double first, double last, double step) {
        Check.finite(name + " first", first);
        Check.finite(name + " last", last);
        Check.finite(name + " step", step);
        double steps = (last - first) / step;
        if (step == 0 || !(steps >= -1e-9)) {
            throw new InvalidValueException(
                    name,
                    "a step of " + Check.text(step) + " never leads from " + Check.text(first) + " to "
                            + Check.text(last),
                    "write first:last:step with a step towards the last value");
        }
        if (steps > MOST) {
            throw new InvalidValueException(name, "that makes more than a million values", "take a longer step");
        }
        double[] values = new double[(int) Math.floor(steps + 1e-9) + 1];
        for (int i = 0; i < values.length; i++) {
            values[i] = first + i * step;
        }
        return new SweepAxis(name, values);
    }

    @Override
    public double[] values() {
        return values.clone();
    }

    /** Number of values. */
    public int count() {
        return values.length;
    }

    /** One value. */
    public double value(int index) {
        return values[index];
    }
}
