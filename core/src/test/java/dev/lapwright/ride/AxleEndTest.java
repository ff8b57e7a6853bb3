package dev.lapwright.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import org.junit.jupiter.api.Test;

/** From a car's document to the quarter car of a wheel. */
class AxleEndTest {
    /** 1000 kg, 60 % in front. */
    private static PlainCar car() {
        return PlainCar.ofMass(1000)
                .with(Quantity.FRONT_WEIGHT, 60)
                .with(Quantity.UNSPRUNG_MASS_FRONT, 40)
                .with(Quantity.SLOW_BUMP_FRONT, 5000)
                .with(Quantity.SLOW_REBOUND_FRONT, 8000);
    }

    @Test
    void aWheelCarriesHalfItsAxle() {
        // 1000 kg · 0.6/2 = 300 kg, of which 40 kg are the wheel's.
        QuarterCar wheel = AxleEnd.FRONT.of(car().car(), 0);
        assertThat(wheel.sprungMass()).isCloseTo(260, within(1e-9));
    }

    @Test
    void downforceIsSharedByTheWheelsOfTheAxle() {
        QuarterCar wheel = AxleEnd.FRONT.of(car().car(), 1500);
        assertThat(wheel.staticLoad()).isCloseTo(300 * 9.80665 + 750, within(1e-9));
    }

    @Test
    void aFastRateLeftOutIsTheSlowOne() {
        QuarterCar wheel = AxleEnd.FRONT.of(car().car(), 0);
        assertThat(wheel.damper().fastBump()).isEqualTo(5000);
        assertThat(wheel.damper().fastRebound()).isEqualTo(8000);
    }

    @Test
    void ratesAndKneesOfEitherEndAreItsOwn() {
        assertThat(AxleEnd.REAR.dampers()).hasSize(6).allMatch(q -> q.path().startsWith("suspension.rear."));
    }

    @Test
    void kneesAreGivenInMillimetresPerSecond() {
        QuarterCar wheel =
                AxleEnd.FRONT.of(car().with(Quantity.BUMP_KNEE_FRONT, 60).car(), 0);
        assertThat(wheel.damper().bumpKnee()).isCloseTo(0.06, within(1e-15));
    }

    @Test
    void aCarWithoutUnsprungMassIsToldWhatToGive() {
        assertThatThrownBy(() -> AxleEnd.REAR.of(car().car(), 0))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("suspension.rear.unsprungMassKg")
                .hasMessageContaining("does not give it");
    }

    @Test
    void aCarWithoutDampersIsToldWhatToGive() {
        assertThatThrownBy(() -> AxleEnd.FRONT.of(
                        car().with(Quantity.SLOW_REBOUND_FRONT, 0).car(), 0))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("suspension.front.slowReboundNsPerM");
    }

    @Test
    void aWheelHeavierThanItsLoadIsRefused() {
        assertThatThrownBy(() -> AxleEnd.FRONT.of(
                        car().with(Quantity.UNSPRUNG_MASS_FRONT, 320).car(), 0))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("320 kg is no less than the 300 kg");
    }
}
