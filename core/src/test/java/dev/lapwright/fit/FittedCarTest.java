package dev.lapwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A fitted car's document holds the fitted values, whatever its adjustments move and however it was set. */
class FittedCarTest {
    private static final Map<Quantity, Double> SHIFTS =
            Map.of(Quantity.POWER_SCALE, 0.03, Quantity.LIFT_AREA_REAR, -0.2, Quantity.DRAG_AREA, 0.07);
    /** A rounding error or two. */
    private static final double ROUNDING = 1e-12;

    private static Car setUp() {
        return FitScene.car()
                .with("wing", 8)
                .with("restrictor", 2)
                .with("gurney", 2)
                .with("cooling", 1)
                .with(Quantity.ROLLING_RESISTANCE, 0.02);
    }

    @ParameterizedTest
    @EnumSource(Quantity.class)
    void asSetUpEveryQuantityMovesByItsShiftAndNoOther(Quantity quantity) {
        Car moved = FittedCar.moved(setUp(), SHIFTS);
        double expected = setUp().value(quantity) + SHIFTS.getOrDefault(quantity, 0.0);
        assertThat(moved.value(quantity)).isCloseTo(expected, within(ROUNDING));
    }

    @Test
    void theDocumentHasNoSettingsAndMovesByTheShift() {
        Car document = FittedCar.moved(setUp(), SHIFTS).document();
        assertThat(document.settings()).isEmpty();
        SHIFTS.forEach((quantity, shift) -> assertThat(document.value(quantity))
                .isCloseTo(FitScene.car().value(quantity) + shift, within(ROUNDING)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"wing", "restrictor", "gurney", "cooling"})
    void anAdjustmentAtItsStandardLeavesTheDocumentAsItIs(String name) {
        Car document = FittedCar.moved(setUp(), SHIFTS).document();
        Adjustment adjustment = document.adjustment(name);
        Car standard = document.with(name, adjustment.standard());
        for (Effect effect : adjustment.effects()) {
            assertThat(standard.value(effect.quantity()))
                    .isCloseTo(document.value(effect.quantity()), within(ROUNDING));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"wing", "restrictor", "gurney", "cooling"})
    void anAdjustmentMovesTheFittedCarAsMuchAsTheCarGiven(String name) {
        Car given = FitScene.car();
        Car fitted = FittedCar.moved(setUp(), SHIFTS).document();
        Adjustment adjustment = given.adjustment(name);
        for (double setting : adjustment.legalSettings()) {
            for (Effect effect : adjustment.effects()) {
                double before = given.with(name, setting).value(effect.quantity()) - given.value(effect.quantity());
                double after = fitted.with(name, setting).value(effect.quantity()) - fitted.value(effect.quantity());
                assertThat(after).as("%s at %s", name, setting).isCloseTo(before, within(ROUNDING));
            }
        }
    }

    @Test
    void aQuantitySetByItsNameGoesIntoTheDocumentWithItsShift() {
        Car set = FitScene.car().with("cooling", 1).with(Quantity.DRAG_AREA, 0.6);
        Car moved = FittedCar.moved(set, SHIFTS);
        assertThat(moved.value(Quantity.DRAG_AREA)).isCloseTo(0.67, within(ROUNDING));
        assertThat(moved.settings()).containsOnlyKeys("cooling");
        // The cooling stands a step open, which is 0.03.
        assertThat(moved.document().value(Quantity.DRAG_AREA)).isCloseTo(0.64, within(ROUNDING));
    }

    @Test
    void itCanBeNamed() {
        Car named = FittedCar.named(FittedCar.moved(setUp(), SHIFTS).document(), "plover fitted", "to lap 3");
        assertThat(named.name()).isEqualTo("plover fitted");
        assertThat(named.description()).isEqualTo("to lap 3");
        assertThat(named.value(Quantity.POWER_SCALE)).isCloseTo(1.03, within(ROUNDING));
    }

    @ParameterizedTest
    @EnumSource(FitParameter.class)
    void aScaleGivesTheCarItsValue(FitParameter parameter) {
        Car car = setUp();
        ParameterScale scale = ParameterScale.of(parameter, car);
        Car moved = FittedCar.moved(car, scale.shifts(car, 0.7));
        double found = switch (parameter) {
            case GRIP -> moved.value(Quantity.FRICTION_X_REAR) / car.value(Quantity.FRICTION_X_REAR);
            case POWER -> moved.value(Quantity.POWER_SCALE) / car.value(Quantity.POWER_SCALE);
            case DRAG_AREA, DOWNFORCE_AREA, ROLLING_RESISTANCE ->
                ParameterScale.of(parameter, moved).before();
        };
        assertThat(found).isCloseTo(scale.value(0.7), within(ROUNDING));
    }

    @Test
    void downforceKeepsTheAeroBalance() {
        Car car = setUp();
        Car moved = FittedCar.moved(
                car, ParameterScale.of(FitParameter.DOWNFORCE_AREA, car).shifts(car, 1.5));
        double before = ParameterScale.areas(car).liftFront()
                / ParameterScale.areas(car).liftRear();
        double after = ParameterScale.areas(moved).liftFront()
                / ParameterScale.areas(moved).liftRear();
        assertThat(after).isCloseTo(before, within(ROUNDING));
    }

    @Test
    void theEndsOfTheSearchAreCarsStill() {
        Car car = setUp();
        for (FitParameter parameter : FitParameter.values()) {
            ParameterScale scale = ParameterScale.of(parameter, car);
            assertThat(FittedCar.moved(car, scale.shifts(car, scale.least())).name())
                    .isEqualTo("plover");
            if (parameter != FitParameter.GRIP) {
                assertThat(FittedCar.moved(car, scale.shifts(car, scale.most())).name())
                        .isEqualTo("plover");
            }
        }
    }
}
