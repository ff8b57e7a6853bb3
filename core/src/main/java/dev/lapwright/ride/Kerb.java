package dev.lapwright.ride;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.Locale;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * A kerb on a flat road, as the wheel crosses it.
 *
 * @param shape of the section
 * @param height of its highest place, m
 * @param length along the wheel's way, m
 * @param teeth how many of the shape stand in a row on that length; at least 1
 */
public record Kerb(Shape shape, double height, double length, int teeth) {
    private static final double HIGHEST = 0.5;
    private static final int MOST_TEETH = 200;

    public Kerb {
        Check.inRange("kerb height (m)", height, 0, HIGHEST);
        Check.inRange("kerb length (m)", length, 0.01, 100);
        if (teeth < 1 || teeth > MOST_TEETH) {
            throw new InvalidValueException(
                    "kerb teeth", teeth + " is outside its range", "allowed: 1 to " + MOST_TEETH);
        }
    }

    /** Height of the kerb itself (m) at a distance from its beginning, m. */
    public double at(double distance) {
        double place = teeth * distance / length;
        if (!(place >= 0 && place <= teeth)) {
            return 0;
        }
        int tooth = Math.min(teeth - 1, (int) place);
        return height * shape.height(place - tooth);
    }

    /** Area beneath the kerb from its beginning, m². */
    double area(double distance) {
        double place = Math.max(0, Math.min(teeth, teeth * distance / length));
        int tooth = Math.min(teeth - 1, (int) place);
        return height * length / teeth * (tooth * shape.area(1) + shape.area(place - tooth));
    }

    /**
     * What a tyre feels of it. A tyre bridges what is shorter than its contact patch: it is taken to feel the mean height
     * over the patch, so that even a sheer drop has a finite slope. It begins half a patch before the kerb.
     *
     * @param contactLength of the patch, m
     */
    public RoadProfile felt(double contactLength) {
        return new FeltKerb(this, Check.inRange("contact length (m)", contactLength, 0.005, 1));
    }

    /** Road profile of a kerb as a tyre feels it: the mean height over the contact patch. */
    static final class FeltKerb implements RoadProfile {
        /** Time after the kerb in which the car still answers to it, s. */
        private static final double SETTLING = 0.5;

        private final Kerb kerb;
        private final double patch;

        FeltKerb(Kerb kerb, double patch) {
            this.kerb = kerb;
            this.patch = patch;
        }

        @Override
        public double length() {
            return kerb.length() + patch;
        }

        // The patch reaches from distance - patch to distance, measured from the kerb's beginning.
        @Override
        public double height(double distance) {
            return (kerb.area(distance) - kerb.area(distance - patch)) / patch;
        }

        @Override
        public double slope(double distance) {
            return (kerb.at(distance) - kerb.at(distance - patch)) / patch;
        }

        @Override
        public double[] joints() {
            double pitch = kerb.length() / kerb.teeth();
            return IntStream.range(0, kerb.teeth())
                    .boxed()
                    .flatMapToDouble(
                            tooth -> DoubleStream.of(kerb.shape().joints()).map(joint -> (tooth + joint) * pitch))
                    .flatMap(joint -> DoubleStream.of(joint, joint + patch))
                    .sorted()
                    .distinct()
                    .toArray();
        }

        @Override
        public double settling() {
            return SETTLING;
        }
    }

    /** Section of a kerb along the wheel's way, on a unit of length and of height. */
    public enum Shape {
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

        Shape(String label) {
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
        public static Shape named(String name) {
            for (Shape shape : values()) {
                if (shape.label.equals(name.strip().toLowerCase(Locale.ROOT))) {
                    return shape;
                }
            }
            throw new InvalidValueException(
                    "kerb", "'" + name + "' is no shape known here", "take half-sine, ramp or sawtooth");
        }
    }
}
