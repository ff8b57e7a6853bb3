package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.checks.PlainCar;
import dev.lapwright.powertrain.TorqueCurve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Figures of a car by closed forms. */
class CarFiguresTest {
    /** Engine speeds are looked at in 2000 steps up to the limit: a peak is found to half of one. */
    private static final double STEP = 1.0 / 2000;

    /** The plain car's engine turns by so much for each m/s: a ratio of 5 on wheels of 0.3 m. */
    private static final double RAD_PER_M = 5 / 0.3;

    /**
     * Of a torque that falls evenly, T = T₀ (1 - n/n₀), the greatest power is had at half of n₀, where P = T₀ ω₀/4 (as of any motor of direct current
     * with a magnet; the maximum of a parabola).
     */
    @Test
    void theGreatestPowerOfATorqueThatFallsEvenlyIsHadHalfWay() {
        PlainCar car = PlainCar.ofMass(1000)
                .engine(new TorqueCurve(new double[] {0, 10_000}, new double[] {300, 0}))
                .topSpeed(60);
        CarFigures.Engine engine = CarFigures.of(car.vehicle(), 0).engine();
        double limit = 60 * RAD_PER_M * 30 / Math.PI;
        assertThat(engine.peakPowerRpm()).isCloseTo(5000, within(STEP * limit));
        // About its maximum a parabola falls by the square of the step.
        assertThat(engine.peakPower())
                .isCloseTo(300 * (10_000 * Math.PI / 30) / 4, within(300 * 1047.2 / 4 * 4 * STEP * STEP));
        assertThat(engine.peakTorqueRpm()).as("the first step looked at").isCloseTo(0, within(1.5 * STEP * limit));
        assertThat(engine.peakTorque()).isCloseTo(300, within(2 * 300 * STEP));
    }

    /** Half the roll stiffness on alike axles; forces of k v². */
    @ParameterizedTest
    @ValueSource(doubles = {0, 30, 55})
    void forcesOfTheAirGrowAsTheSquareOfTheSpeed(double speed) {
        CarFigures figures = CarFigures.of(
                PlainCar.ofMass(1234).drag(0.4).downforce(1.2).topSpeed(90).vehicle(), speed);
        // The air's density is that of the standard day in both.
        double tolerance = 1e-9 * (1 + speed * speed);
        assertThat(figures.mass()).isEqualTo(1234);
        assertThat(figures.frontRollShare()).isCloseTo(0.5, within(1e-12));
        assertThat(figures.aero().speed()).isEqualTo(speed);
        assertThat(figures.aero().drag()).isCloseTo(0.4 * speed * speed, within(tolerance));
        assertThat(figures.aero().downforceFront()).isCloseTo(0.6 * speed * speed, within(tolerance));
        assertThat(figures.aero().downforceRear()).isCloseTo(0.6 * speed * speed, within(tolerance));
        assertThat(figures.aero().rideHeightFront()).as("at most at rest").isLessThanOrEqualTo(100);
        assertThat(figures.aero().rideHeightRear())
                .as("alike axles")
                .isCloseTo(figures.aero().rideHeightFront(), within(1e-9));
    }

    /** Speeds at the limit are as the inverse of the ratios: v = ω r/(i final). */
    @Test
    void aShorterGearEndsAtASpeedAsMuchLower() {
        PlainCar car = PlainCar.ofMass(1000).force(3000).topSpeed(60).gears(3, 1.5, 1);
        assertThat(CarFigures.gearSpeeds(car.vehicle())).containsExactly(new double[] {20, 40, 60}, within(60 * 1e-9));
    }
}
