package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import java.util.Map;
import org.junit.jupiter.api.Test;

class HandlingTest {
    private static Handling of(Map<Quantity, Double> changes) {
        return Handling.of(Vehicle.of(TestCars.winged(changes), Conditions.STANDARD));
    }

    @Test
    void withoutALoadInTheTyreDataTheGradientIsTheDifferenceOfTheCompliances() {
        PlainCar car = PlainCar.ofMass(1200)
                .axles(1.1, 1.5, 0.5)
                .with(Quantity.CORNERING_STIFFNESS_FRONT, 20)
                .with(Quantity.CORNERING_STIFFNESS_REAR, 25);
        // Closed form: stiffness in proportion to load gives K = (1/cf - 1/cr)/g, whatever the weights. Rounding of
        // doubles.
        assertThat(Handling.of(car.vehicle()).atRest().radPerMps2())
                .isCloseTo((1.0 / 20 - 1.0 / 25) / PlainCar.GRAVITY, within(1e-15));
    }

    @Test
    void toeInAtTheRearAddsUndersteer() {
        // Common practice, no source.
        assertThat(of(Map.of(Quantity.TOE_REAR, 0.3)).rearToe()).isPositive();
    }

    @Test
    void toeOutAtTheFrontAddsUndersteerInAHeldTurn() {
        // Statics of the two wheels: the outer one carries more, and toe-out points it out of the turn.
        assertThat(of(Map.of(Quantity.TOE_FRONT, -0.3)).frontToe()).isPositive();
    }

    @Test
    void toesShareIsTheLoadTransferOverTheLoad() {
        double toe = 0.5;
        PlainCar car = PlainCar.ofMass(1000).with(Quantity.CG_HEIGHT, 0.4).with(Quantity.TOE_REAR, toe);
        // Closed form: stiffness in proportion to load, so toe (Co - Ci)/(Co + Ci) = toe 2 dZ / Z with, of equal axles,
        // dZ = m a h / (2 t) on Z = m g / 2. Rounding of doubles.
        double expected = Math.toRadians(toe) * 2 * 0.4 / 1.5 / PlainCar.GRAVITY;
        assertThat(Handling.of(car.vehicle()).rearToe()).isCloseTo(expected, within(1e-15));
    }

    @Test
    void yawInertiaIsEstimatedByTheAxles() {
        PlainCar car = PlainCar.ofMass(1000).axles(1.2, 1.4, 0.5);
        // m a b, as the class says; rounding of doubles.
        assertThat(Handling.of(car.vehicle()).yawInertia()).isCloseTo(1000 * 1.2 * 1.4, within(1e-9));
    }

    @Test
    void aGivenYawInertiaIsTaken() {
        assertThat(of(Map.of(Quantity.YAW_INERTIA, 1850.0)).yawInertia()).isEqualTo(1850);
    }

    @Test
    void withoutDownforceThereIsNoAeroBalance() {
        assertThat(Handling.of(PlainCar.ofMass(1000).vehicle()).aero(40).frontShare())
                .isNaN();
    }

    @Test
    void aFixedPlatformKeepsItsAeroBalance() {
        PlainCar car = PlainCar.ofMass(1000).with(Quantity.LIFT_AREA_FRONT, 0.8).with(Quantity.LIFT_AREA_REAR, 1.2);
        // Areas that no ride height moves: 0.8 of 2.0. Rounding of doubles.
        assertThat(Handling.of(car.vehicle()).aero(40).frontShare()).isCloseTo(0.4, within(1e-12));
        assertThat(Handling.of(car.vehicle()).aero(80).frontShare()).isCloseTo(0.4, within(1e-12));
    }
}
