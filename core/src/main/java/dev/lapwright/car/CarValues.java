package dev.lapwright.car;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.Map;

/** Numbers a car is made of, completed by defaults and checked. */
final class CarValues {
    private CarValues() {}

    /** Values by ordinal of {@link Quantity}: those given, checked, and standard values for the rest. */
    static double[] complete(Map<Quantity, Double> given) {
        double[] values = new double[Quantity.values().length];
        for (Quantity quantity : Quantity.values()) {
            Double value = given.get(quantity);
            if (value == null && quantity.isRequired()) {
                throw new InvalidValueException(
                        quantity.path(),
                        "it is missing",
                        "give the " + quantity.meaning() + ", " + Check.text(quantity.min()) + " to "
                                + Check.text(quantity.max()) + " "
                                + quantity.unit().symbol());
            }
            values[quantity.ordinal()] = value == null ? quantity.standard() : quantity.checked(value);
        }
        return values;
    }

    /** The lowest gear on the road must be one of the car's. */
    static void checkLowestGear(double gear, int gears) {
        if (gear > gears || gear != Math.rint(gear)) {
            throw new InvalidValueException(
                    Quantity.LOWEST_GEAR.path(),
                    Check.text(gear) + " is no gear of this car, which has " + gears,
                    gears == 1 ? "leave it out" : "give a whole number from 1 to " + gears);
        }
    }

    /** Ratios must fall from first gear up. */
    static void checkRatios(double[] ratios) {
        if (ratios.length == 0) {
            throw new InvalidValueException("gearbox.ratios", "there are none", "give at least one gear ratio");
        }
        for (int i = 0; i < ratios.length; i++) {
            Check.inRange(Car.RATIOS + (i + 1), ratios[i], 0.1, 30);
            if (i > 0 && !(ratios[i] < ratios[i - 1])) {
                throw new InvalidValueException(
                        Car.RATIOS + (i + 1),
                        Check.text(ratios[i]) + " is not below the ratio of the gear before it, "
                                + Check.text(ratios[i - 1]),
                        "list the ratios from first gear up");
            }
        }
    }
}
