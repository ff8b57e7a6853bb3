package dev.lapwright.car;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.numerics.MonotoneCubic;

/**
 * Effect of an adjustment on one quantity of the car, as a function of its setting. The quantity is named as in {@link Car#quantityNames()}; its value is in
 * that quantity's unit.
 */
public sealed interface Effect {
    /** Name of the quantity moved. */
    String quantity();

    /**
     * New value of the quantity.
     *
     * @param before its value before this adjustment acts
     * @param setting the adjustment's setting, in the adjustment's unit
     * @param standard the adjustment's standard setting
     */
    double apply(double before, double setting, double standard);

    /**
     * The quantity is {@code offset + factor · setting}. Where units differ but convert, the factor holds the conversion.
     */
    record Absolute(String quantity, double offset, double factor) implements Effect {
        public Absolute {
            Check.finite(quantity + " offset", offset);
            Check.finite(quantity + " factor", factor);
        }

        @Override
        public double apply(double before, double setting, double standard) {
            return offset + factor * setting;
        }
    }

    /** The quantity changes by {@code perUnit} for each unit the setting is away from the standard setting. */
    record Relative(String quantity, double perUnit) implements Effect {
        public Relative {
            Check.finite(quantity + " perUnit", perUnit);
        }

        @Override
        public double apply(double before, double setting, double standard) {
            return before + perUnit * (setting - standard);
        }
    }

    /** The quantity follows a monotone curve through given pairs of setting and value. */
    final class Tabulated implements Effect {
        private final String quantity;
        private final MonotoneCubic curve;

        /**
         * @param settings rising, at least two
         * @param values of the quantity, one for each
         */
        public Tabulated(String quantity, double[] settings, double[] values) {
            if (settings.length < 2) {
                throw new InvalidValueException(
                        quantity, "a table of " + settings.length + " settings is too short", "give 2 or more");
            }
            for (double value : values) {
                Check.finite(quantity + " table", value);
            }
            this.quantity = quantity;
            this.curve = new MonotoneCubic(settings, values);
        }

        @Override
        public String quantity() {
            return quantity;
        }

        @Override
        public double apply(double before, double setting, double standard) {
            return curve.value(setting);
        }

        /** Settings of the table; a copy. */
        public double[] settings() {
            return curve.abscissas();
        }

        /** Values of the quantity; a copy. */
        public double[] values() {
            return curve.ordinates();
        }
    }
}
