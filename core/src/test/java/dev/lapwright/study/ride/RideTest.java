package dev.lapwright.study.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.ride.AxleEnd;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Both axles of a car over kerb and road. */
class RideTest {
    private static final double SPEED = 30;
    private static final Car CAR = PlainCar.ofMass(1200)
            .with(Quantity.UNSPRUNG_MASS_FRONT, 40)
            .with(Quantity.SLOW_BUMP_FRONT, 5000)
            .with(Quantity.SLOW_REBOUND_FRONT, 7000)
            .with(Quantity.UNSPRUNG_MASS_REAR, 45)
            .with(Quantity.SLOW_BUMP_REAR, 5000)
            .with(Quantity.SLOW_REBOUND_REAR, 7000)
            .downforce(0.8)
            .car();

    @Test
    void bothAxlesAreDriven() {
        List<RideResult.Axle> axles =
                Ride.of(CAR, Conditions.STANDARD, SPEED).run().axles();
        assertThat(axles).extracting(RideResult.Axle::end).containsExactly(AxleEnd.FRONT, AxleEnd.REAR);
    }

    @Test
    void theWheelCarriesItsShareOfTheDownforceOfThatSpeed() {
        // 0.8 v² newtons, half on each axle, half of that on a wheel: 180 N at 30 m/s.
        RideResult.Axle front =
                Ride.of(CAR, Conditions.STANDARD, SPEED).run().axles().get(0);
        // The car's table of downforce over speed is exact to about a part in a million.
        assertThat(front.wheel().downforce()).isCloseTo(180, within(0.01));
    }

    @Test
    void theMapsOwnPassIsThatOverTheKerb() {
        for (RideResult.Axle axle :
                Ride.of(CAR, Conditions.STANDARD, SPEED).run().axles()) {
            assertThat(axle.map().own()).isEqualTo(axle.kerb());
        }
    }

    @Test
    void aSpeedBeyondTheGearingIsRefused() {
        // The plain car ends at 150 m/s, 540 km/h.
        assertThatThrownBy(() -> Ride.of(CAR, Conditions.STANDARD, 160).run())
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("576 km/h is beyond the rev limit in top gear")
                .hasMessageContaining("drive slower");
    }
}
