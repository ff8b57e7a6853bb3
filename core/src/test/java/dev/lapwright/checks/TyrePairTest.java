package dev.lapwright.checks;

import dev.lapwright.car.Quantity;
import org.junit.jupiter.params.ParameterizedTest;

/** Load transfer costs grip: the axle of the tyre data, driven round a circle. */
class TyrePairTest {
    @ParameterizedTest(name = "{0}")
    @CheckFile(value = "load-sensitivity.csv", quantities = "force of a pair in a turn")
    void loadTransferCostsGripInATurn(CheckRow row) {
        double load = row.number("load_n");
        double transfer = row.number("transfer_n");
        double mass = 4 * load / PlainCar.GRAVITY;
        double track = 1.5;
        // At the limit each axle's transfer is m a h / (2 t), half of the car's side force being that of a pair.
        double height = transfer * track / row.expected();
        PlainCar car = PlainCar.ofMass(mass)
                .track(track)
                .friction(row.number("friction"))
                .with(Quantity.SENSITIVITY_Y_FRONT, row.number("sensitivity"))
                .with(Quantity.SENSITIVITY_Y_REAR, row.number("sensitivity"))
                .with(Quantity.REFERENCE_LOAD_FRONT, row.number("reference_n"))
                .with(Quantity.REFERENCE_LOAD_REAR, row.number("reference_n"))
                // The example adds both wheels' peaks: they come at one slip angle where stiffness falls with load as
                // friction does.
                .with(Quantity.STIFFNESS_SENSITIVITY_FRONT, row.number("sensitivity"))
                .with(Quantity.STIFFNESS_SENSITIVITY_REAR, row.number("sensitivity"))
                .with(Quantity.CG_HEIGHT, height);
        double radius = 60;
        double speed = Runs.circleSpeed(car, radius, 0);
        row.verify(mass * speed * speed / radius / 2);
    }
}
