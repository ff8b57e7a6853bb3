package dev.lapwright.study.ride;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.ride.RidePass;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Advice in clicks: never outside the adjuster's range, and what it promises is what the car then does. */
class DamperClicksTest {
    private static final double SPEED = 30;
    private static final Car CAR = withClicks();

    private static Car withClicks() {
        Car plain = PlainCar.ofMass(1200)
                .with(Quantity.UNSPRUNG_MASS_FRONT, 40)
                .with(Quantity.SLOW_BUMP_FRONT, 5000)
                .with(Quantity.FAST_BUMP_FRONT, 4000)
                .with(Quantity.SLOW_REBOUND_FRONT, 7000)
                .with(Quantity.UNSPRUNG_MASS_REAR, 45)
                .with(Quantity.SLOW_BUMP_REAR, 5000)
                .with(Quantity.SLOW_REBOUND_REAR, 7000)
                .car();
        Adjustment front = new Adjustment(
                "front-fast-bump",
                "front fast bump",
                Unit.NONE,
                Adjustment.Range.stepped(0, 8, 1, 4),
                List.of(new Effect.Relative(Quantity.FAST_BUMP_FRONT.path(), 400)));
        return Car.of(
                "clicks",
                "",
                plain.quantities(),
                Map.of(),
                plain.gearRatios(),
                plain.torqueCurve(),
                plain.powerCorrection(),
                List.of(front));
    }

    private static RideResult.Axle front(Car car) {
        return Ride.of(car, Conditions.STANDARD, SPEED).run().axles().get(0);
    }

    @Test
    void everySettingOfTheRangeIsDrivenAndNoOther() {
        assertThat(front(CAR).clicks().options())
                .extracting(option -> option.settings().get("front-fast-bump"))
                .containsExactly(0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0);
    }

    @Test
    void theCarSetAsAdvisedDoesWhatWasPromised() {
        DamperClicks.Option best = front(CAR).clicks().best(RideMeasure.BODY).orElseThrow();
        assertThat(best.turned()).isNotEmpty();
        RidePass then = front(CAR.with("front-fast-bump", best.settings().get("front-fast-bump")))
                .kerb();
        assertThat(then).isEqualTo(best.pass());
        assertThat(RideMeasure.BODY.of(then))
                .isLessThan(RideMeasure.BODY.of(front(CAR).kerb()));
    }

    @Test
    void anAxleWithoutAnAdjusterHasNoAdvice() {
        RideResult.Axle rear =
                Ride.of(CAR, Conditions.STANDARD, SPEED).run().axles().get(1);
        assertThat(rear.clicks().best(RideMeasure.BODY)).isEmpty();
    }
}
