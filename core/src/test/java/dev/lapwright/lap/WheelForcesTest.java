package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import org.junit.jupiter.api.Test;

/** The force balance at one place and speed, against closed forms worked by hand. */
class WheelForcesTest {
    private static final double GRAVITY = 9.80665;
    private static final double MASS = 1000;
    private static final double SPEED = 20;
    private static final double LATERAL = 6;
    private static final double ACCELERATION = 1;
    private static final double TRACK = 1.5;
    /** Rounding of some ten operations on doubles. */
    private static final double ROUNDING = 1e-12;

    /** Rear drive, an axle's wheels 4 : 1 loaded at LATERAL, tyres that do not care about load. */
    private static PlainCar car() {
        return PlainCar.ofMass(MASS).with(Quantity.CG_HEIGHT, 0.5).frontDrive(0).friction(1.4);
    }

    private static WheelForces turning(Car car, double ax) {
        WheelForces wheels = new WheelForces(Vehicle.of(car, Conditions.STANDARD));
        wheels.at(SPEED, LATERAL / (SPEED * SPEED), 0, GRAVITY, 0, 0, 1, 0);
        wheels.utilisation(ax, 1);
        return wheels;
    }

    @Test
    void aLimitedSlipDifferentialTurnsTheCarByTheLockingValueTimesHalfTheTrack() {
        // (Th - Tl)/(Th + Tl) = S where friction limits, so M = S X t/2 (the definition of the locking value): under
        // little drive
        // against the turn, since the outer wheel travels further. Turning as one would differ by C κ t, some 1100 N.
        double locking = 0.3;
        WheelForces wheels =
                turning(car().with(Quantity.POWER_LOCK_REAR, 100 * locking).car(), ACCELERATION);
        assertThat(wheels.yawMoment)
                .isCloseTo(-locking * wheels.tyreForce * TRACK / 2, within(-ROUNDING * wheels.yawMoment));
        assertThat(wheels.yawMoment).isNegative();
    }

    @Test
    void aSpoolTurnsTheCarByTheWaysOfItsWheels() {
        // Check value, closed form: M = D t / 2, D = [(Ko - Ki) X - 2 Ko Ki κ t] / (Ko + Ki), K = C = c F, with what
        // slip stiffness is
        // left where the tyres are used across: the chord of sin(1.5 atan(sqrt(3) r)), which the fit meets within
        // 0.035.
        double c = 20;
        WheelForces wheels =
                turning(car().stiffness(c).with(Quantity.POWER_LOCK_REAR, 100).car(), ACCELERATION);
        double transfer = MASS * LATERAL * 0.5 / TRACK / 2;
        double wheel = MASS * GRAVITY / 4 + MASS * ACCELERATION * 0.5 / 2.5 / 2;
        double ki = c * (wheel - transfer);
        double ko = c * (wheel + transfer);
        double share = MASS * LATERAL / 2 / (1.4 * 2 * wheel);
        double rho = Math.tan(Math.asin(share) / 1.5) / Math.sqrt(3);
        double slip = TRACK * LATERAL / (SPEED * SPEED) * share / (1.5 * Math.sqrt(3) * rho);
        double scrub = 2 * ko * ki * slip / (ko + ki);
        double difference = (ko - ki) * wheels.tyreForce / (ko + ki) - scrub;
        assertThat(wheels.yawMoment).isCloseTo(difference * TRACK / 2, within(0.04 * scrub * TRACK / 2));
        assertThat(wheels.yawMoment).isNegative();
    }

    @Test
    void anOpenDifferentialTurnsNothing() {
        assertThat(turning(car().car(), ACCELERATION).yawMoment).isZero();
    }

    @Test
    void toeCostsItsSquareTimesTheStiffnessOfBothWheelsInABend() {
        // A wheel at the angle δ feels C δ across itself and C δ² along the car, small angles; C = c F (1 - k (F/F0 -
        // 1)).
        double c = 20;
        double k = 0.2;
        double reference = 4000;
        double toe = Math.toRadians(0.5);
        PlainCar plain = car().stiffness(c)
                .with(Quantity.STIFFNESS_SENSITIVITY_FRONT, k)
                .with(Quantity.STIFFNESS_SENSITIVITY_REAR, k)
                .with(Quantity.REFERENCE_LOAD_FRONT, reference)
                .with(Quantity.REFERENCE_LOAD_REAR, reference);
        // Half the transfer m ay h/t on each axle, for equal roll stiffness.
        double transfer = MASS * LATERAL * 0.5 / TRACK / 2;
        double axle = MASS * GRAVITY / 2;
        double sum = 0;
        for (double load : new double[] {axle / 2 - transfer, axle / 2 + transfer}) {
            sum += c * (1 - k * (load / reference - 1)) * load;
        }
        double without = turning(plain.car(), 0).requiredForce;
        double front = turning(plain.with(Quantity.TOE_FRONT, 0.5).car(), 0).requiredForce;
        double rear = turning(plain.with(Quantity.TOE_REAR, -0.5).car(), 0).requiredForce;
        assertThat(front - without).isCloseTo(toe * toe * sum, within(ROUNDING * without));
        assertThat(rear - without).isCloseTo(toe * toe * sum, within(ROUNDING * without));
    }
}
