package dev.lapwright.study.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Limit;
import dev.lapwright.slip.SlipState;
import dev.lapwright.study.StudyCars;
import dev.lapwright.track.Track;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SlipBalanceTest {
    private static SlipBalanceResult balance(PlainCar car, Track track) {
        return SlipBalance.of(car.car(), track, Conditions.STANDARD).run();
    }

    /**
     * The axle with a fifth less friction gives up first (statics: each axle carries its share of the mass across). With the front at its peak
     * more steer gives nothing, so steer grows without end; with the rear there the car turns further in by itself: less steer for more.
     */
    @ParameterizedTest
    @CsvSource({"1.2, 1.5, FRONT_GRIP", "1.5, 1.2, REAR_GRIP"})
    void theAxleWithLessGripGivesUpFirst(double front, double rear, Limit first) {
        PlainCar car = StudyCars.rearDriven()
                .with(Quantity.FRICTION_Y_FRONT, front)
                .with(Quantity.FRICTION_Y_REAR, rear)
                .force(5000);
        for (SlipBalanceResult.Corner corner : balance(car, StudyCars.circuit()).corners()) {
            assertThat(corner.first()).contains(first);
            assertThat(Math.signum(corner.gradient())).isEqualTo(first == Limit.FRONT_GRIP ? 1 : -1);
        }
    }

    /** A turn to the right is one to the left in a mirror; two roads' stations differ by rounding. */
    @Test
    void inTheMirrorItSteersAsMuch() {
        PlainCar car = StudyCars.rearDriven().force(5000);
        SlipBalanceResult one = balance(car, StudyCars.circuit());
        SlipBalanceResult other = balance(car, StudyCars.circuit().mirrored());
        for (int i = 0; i < one.corners().size(); i++) {
            SlipState left = one.corners().get(i).in(BalancePhase.MIDDLE).orElseThrow();
            SlipState right = other.corners().get(i).in(BalancePhase.MIDDLE).orElseThrow();
            assertThat(right.left()).isNotEqualTo(left.left());
            assertThat(right.steer()).isCloseTo(left.steer(), within(1e-4));
            assertThat(right.sideslip()).isCloseTo(left.sideslip(), within(1e-4));
        }
    }

    /**
     * K = (m/L)(lr/Cf - lf/Cr) of the two-wheel model, Gillespie, chapter 6, from memory, with the inputs of an exercise (m 1008 kg, 1.2 and
     * 1.0 m, 117 and 145 kN/rad; K worked out: 1.24234e-4), whatever the speed. A tenth of the grip is used at most, where the curve has lost half
     * a percent of its stiffness; drive against what the tyres lose takes as little again. Nearer the limit its front, which has less
     * stiffness for its load, loses more.
     */
    @Test
    void farBelowTheLimitTheGradientIsThatOfTwoWheels() {
        double weight = 1008 * 9.80665 / 2.2;
        PlainCar car = PlainCar.ofMass(1008)
                .axles(1.2, 1.0, 0)
                .with(Quantity.CORNERING_STIFFNESS_FRONT, 117_000 / weight)
                .with(Quantity.CORNERING_STIFFNESS_REAR, 145_000 / (weight * 1.2))
                .force(5000);
        for (SlipBalanceResult.Steering steering :
                balance(car, StudyCars.circuit()).steering()) {
            assertThat(steering.gradient()).isCloseTo(1.24234e-4, within(0.02 * 1.24234e-4));
            assertThat(steering.half()).isGreaterThan(1.1 * steering.gradient());
        }
    }

    @Test
    void aCarThatTheModelDoesNotStandForIsRefused() {
        PlainCar square =
                StudyCars.rearDriven().with(Quantity.FRICTION_EXPONENT, 3).force(5000);
        assertThatThrownBy(() -> balance(square, StudyCars.circuit()))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("frictionExponent");
    }
}
