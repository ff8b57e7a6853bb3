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
        // M = D t / 2 with the D at which slips differ by κ t (check value for stiffnesses that do not fall), K = C = c
        // F, with what slip
        // stiffness is left: the chord of sin(1.5 atan(sqrt(3) r)), which the fit meets within 0.025. By halving.
        double c = 20;
        WheelForces wheels =
                turning(car().stiffness(c).with(Quantity.POWER_LOCK_REAR, 100).car(), ACCELERATION);
        double transfer = MASS * LATERAL * 0.5 / TRACK / 2;
        double wheel = MASS * GRAVITY / 4 + MASS * ACCELERATION * 0.5 / 2.5 / 2;
        double share = MASS * LATERAL / 2 / (1.4 * 2 * wheel);
        double slip = TRACK * LATERAL / (SPEED * SPEED);
        double low = -1.4 * wheel;
        double high = 1.4 * wheel;
        for (int i = 0; i < 60; i++) {
            double difference = 0.5 * (low + high);
            double inner = slip((wheels.tyreForce - difference) / 2, share, c, wheel - transfer);
            double outer = slip((wheels.tyreForce + difference) / 2, share, c, wheel + transfer);
            if (inner - outer > slip) {
                low = difference;
            } else {
                high = difference;
            }
        }
        double scrub = c * (wheel * wheel - transfer * transfer) / wheel * slip;
        assertThat(wheels.yawMoment).isCloseTo(low * TRACK / 2, within(0.03 * scrub * TRACK / 2));
        assertThat(wheels.yawMoment).isNegative();
    }

    private static double slip(double force, double lateralShare, double stiffness, double load) {
        double spent = Math.hypot(lateralShare, force / (1.4 * load));
        double chord = spent / (1.5 * Math.tan(Math.asin(spent) / 1.5));
        return force / (stiffness * load * chord);
    }

    @Test
    void anOpenDifferentialTurnsNothing() {
        assertThat(turning(car().car(), ACCELERATION).yawMoment).isZero();
    }

    @Test
    void inABendToeCostsWhatTheWheelsDoAgainstEachOther() {
        // By hand, small angles: slip angles α - τ and α + τ, force F = Ci (α - τ) + Co (α + τ), drag Ci (α - τ)² + Co
        // (α + τ)²
        // = F² / (Ci + Co) + 4 Ci Co τ² / (Ci + Co); C = c F (1 - k (F/F0 - 1)). The first term is that without toe,
        // but for
        // the peak, which toe lowers by its square, here by 0.2 %: so much less stiffness is left, some thousandths of
        // the toe's drag.
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
        double inner = axle / 2 - transfer;
        double outer = axle / 2 + transfer;
        double cInner = c * (1 - k * (inner / reference - 1)) * inner;
        double cOuter = c * (1 - k * (outer / reference - 1)) * outer;
        double toeDrag = 4 * cInner * cOuter / (cInner + cOuter) * toe * toe;
        double without = turning(plain.car(), 0).requiredForce;
        double front = turning(plain.with(Quantity.TOE_FRONT, 0.5).car(), 0).requiredForce;
        double rear = turning(plain.with(Quantity.TOE_REAR, -0.5).car(), 0).requiredForce;
        assertThat(front - without).isCloseTo(toeDrag, within(5e-3 * toeDrag));
        assertThat(rear - without).isCloseTo(toeDrag, within(5e-3 * toeDrag));
    }
}
