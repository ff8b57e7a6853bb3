package dev.lapwright.documents;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Effect;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/**
 * Holds adjustments against the car they belong to: both ends of the range must give a possible car, and the standard
 * setting must leave the car as its document describes it.
 */
final class AdjustmentCheck {
    /** Documents give numbers to a few digits; a standard setting may miss a quantity by this share of it. */
    static final double STANDARD_TOLERANCE = 1e-6;

    private final Car bare;
    private final Faults faults;

    /** @param bare the car without adjustments */
    AdjustmentCheck(Car bare, Faults faults) {
        this.bare = bare;
        this.faults = faults;
    }

    void check(Adjustment adjustment, Fields fields) {
        boolean turns =
                tryAt(adjustment, "min", adjustment.min(), fields) & tryAt(adjustment, "max", adjustment.max(), fields);
        if (turns) {
            checkStandard(adjustment, fields);
        }
    }

    private boolean tryAt(Adjustment adjustment, String end, double setting, Fields fields) {
        try {
            turned(adjustment, setting);
            return true;
        } catch (InvalidValueException e) {
            faults.meaning(
                    fields.place(end),
                    fields.path(),
                    "at its " + end + ", " + adjustment.withUnit(setting) + ", it gives no possible car: " + e.place()
                            + ": " + e.problem(),
                    e.remedy().isEmpty() ? "narrow its range" : e.remedy());
            return false;
        }
    }

    private Car turned(Adjustment adjustment, double setting) {
        Car car = bare;
        for (Effect effect : adjustment.effects()) {
            double before = car.value(effect.quantity());
            car = car.with(effect.quantity(), effect.apply(before, setting, adjustment.standard()));
        }
        return car;
    }

    private void checkStandard(Adjustment adjustment, Fields fields) {
        for (Effect effect : adjustment.effects()) {
            double described = bare.value(effect.quantity());
            double set = effect.apply(described, adjustment.standard(), adjustment.standard());
            if (!agrees(set, described)) {
                faults.meaning(
                        fields.place("standard"),
                        fields.path("standard"),
                        "at " + adjustment.withUnit(adjustment.standard()) + " it sets " + effect.quantity() + " to "
                                + Check.text(set) + ", but this document gives " + Check.text(described),
                        "make the two agree: a car is described at its standard settings");
            }
        }
    }

    /** Whether two values are the same to within what a document's digits can tell. */
    static boolean agrees(double a, double b) {
        return Math.abs(a - b) <= STANDARD_TOLERANCE * Math.max(Math.abs(a), Math.abs(b)) + 1e-12;
    }
}
