package dev.lapwright.checks;

import dev.lapwright.car.Quantity;
import dev.lapwright.chassis.UndersteerGradient;
import dev.lapwright.lap.Handling;
import org.junit.jupiter.params.ParameterizedTest;

/** Understeer gradients of textbooks, by the formula and by the whole car model. */
class UndersteerTest {
    @ParameterizedTest(name = "{0}")
    @CheckFile("understeer.csv")
    void theFormulaGivesTheTextbooksValue(CheckRow row) {
        row.verify(value(
                row,
                UndersteerGradient.of(
                        row.number("mass_kg"),
                        row.number("to_front_m"),
                        row.number("to_rear_m"),
                        row.number("front_n_per_rad"),
                        row.number("rear_n_per_rad"))));
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("understeer.csv")
    void theCarModelGivesTheTextbooksValue(CheckRow row) {
        double mass = row.number("mass_kg");
        double toFront = row.number("to_front_m");
        double toRear = row.number("to_rear_m");
        double weight = mass * PlainCar.GRAVITY / (toFront + toRear);
        PlainCar car = PlainCar.ofMass(mass)
                .axles(toFront, toRear, 0.5)
                .with(Quantity.CORNERING_STIFFNESS_FRONT, row.number("front_n_per_rad") / (weight * toRear))
                .with(Quantity.CORNERING_STIFFNESS_REAR, row.number("rear_n_per_rad") / (weight * toFront));
        row.verify(value(row, Handling.of(car.vehicle()).atRest()));
    }

    private static double value(CheckRow row, UndersteerGradient gradient) {
        return switch (row.quantity()) {
            case "gradient" -> gradient.radPerMps2();
            case "gradient in degrees" -> gradient.degreesPerG();
            case "characteristic speed" -> gradient.characteristicSpeed();
            case "critical speed" -> gradient.criticalSpeed();
            default -> throw new IllegalStateException(row.quantity());
        };
    }
}
