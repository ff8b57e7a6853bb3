package dev.lapwright.ride;

import dev.lapwright.fault.InvalidValueException;
import java.util.Locale;

/** Section of a kerb along the wheel's way, on a unit of length and of height. */
public enum KerbShape {
    /** One half wave of a sine. */
    HALF_SINE("half-sine") {
        @Override
        double height(double x) {
            return Math.sin(Math.PI * x);
        }

        @Override
        double area(double x) {
            return (1 - Math.cos(Math.PI * x)) / Math.PI;
        }

        @Override
        double[] joints() {
            return new double[] {0, 1};
        }
    },
    /** Up over the first quarter, flat, down over the last quarter. */
    RAMP("ramp") {
        @Override
        double height(double x) {
            return Math.min(1, Math.min(4 * x, 4 * (1 - x)));
        }

        @Override
        double area(double x) {
            if (x <= 0.25) {
                return 2 * x * x;
            }
            return x <= 0.75 ? x - 0.125 : 0.75 - 2 * (1 - x) * (1 - x);
        }

        @Override
        double[] joints() {
            return new double[] {0, 0.25, 0.75, 1};
        }
    },
    /** A rise that ends in a sheer drop: one tooth of a row. */
    SAWTOOTH("sawtooth") {
        @Override
        double height(double x) {
            return x;
        }

        @Override
        double area(double x) {
            return x * x / 2;
        }

        @Override
        double[] joints() {
            return new double[] {0, 1};
        }
    };

    private final String label;

    KerbShape(String label) {
        this.label = label;
    }

    /** Height at {@code x}, 0 to 1. */
    abstract double height(double x);

    /** Area beneath it from 0 to {@code x}. */
    abstract double area(double x);

    /** Where its slope jumps. */
    abstract double[] joints();

    /** In words. */
    public String label() {
        return label;
    }

    /** The shape of this name. */
    public static KerbShape named(String name) {
        for (KerbShape shape : values()) {
            if (shape.label.equals(name.strip().toLowerCase(Locale.ROOT))) {
                return shape;
            }
        }
        throw new InvalidValueException(
                "kerb", "'" + name + "' is no shape known here", "take half-sine, ramp or sawtooth");
    }
}
