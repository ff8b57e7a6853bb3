package dev.lapwright.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.fault.InvalidValueException;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Passes over kerbs: energy, contact, and the laws that hold in the air. */
class PassSolverTest {
    private static final Damper DAMPER = new Damper(7000, 2500, 9000, 4000, 0.1, 0.1);
    private static final QuarterCar CAR = new QuarterCar(280, 42, 150e3, 320e3, 250, DAMPER, 0.87, 0);
    private static final double SPEED = 30;

    private static RoadProfile kerb(Kerb.Shape shape) {
        return new Kerb(shape, 0.06, 1.2, shape == Kerb.Shape.SAWTOOTH ? 3 : 1).felt(0.1);
    }

    @ParameterizedTest
    @EnumSource(Kerb.Shape.class)
    void whatTheRoadGivesIsTurnedToHeatOrStored(Kerb.Shape shape) {
        RidePass pass = PassSolver.over(kerb(shape), SPEED).drive(CAR);
        RidePass.Energy energy = pass.energy();
        assertThat(pass.contact().timeOffGround()).as("the check covers flight").isPositive();
        // First law. Relative tolerance of the integrator 1e-7 a step, some hundred steps.
        double heat = energy.damper() + energy.tyre();
        assertThat(energy.fromRoad()).isCloseTo(heat + energy.stored(), within(1e-4 * heat));
    }

    @ParameterizedTest
    @EnumSource(Kerb.Shape.class)
    void inTheAirTheCentreOfMassFalls(Kerb.Shape shape) {
        RidePass.Trace trace = PassSolver.over(kerb(shape), SPEED).trace(CAR);
        double[] time = trace.time();
        double[] load = trace.load();
        int checked = 0;
        int n = 10;
        for (int i = n; i + n < time.length; i += n) {
            boolean flight = true;
            for (int k = i - n; k <= i + n; k++) {
                flight &= load[k] == 0;
            }
            double before = time[i] - time[i - n];
            double after = time[i + n] - time[i];
            if (flight && Math.abs(before - after) < 1e-12) {
                double fall = (centre(trace, i - n) - 2 * centre(trace, i) + centre(trace, i + n)) / (before * before);
                // Newton: nothing but weight acts. Heights to 1e-8 m over 5 ms: 4e-8/25e-6 = 2e-3.
                assertThat(fall).isCloseTo(-StandardAtmosphere.GRAVITY, within(5e-3));
                checked++;
            }
        }
        assertThat(checked).isPositive();
    }

    private static double centre(RidePass.Trace trace, int i) {
        double m = CAR.sprungMass() + CAR.unsprungMass();
        return (CAR.sprungMass() * trace.body()[i] + CAR.unsprungMass() * trace.wheel()[i]) / m;
    }

    @Test
    void timeOffTheGroundIsThatWithoutLoad() {
        PassSolver solver = PassSolver.over(kerb(Kerb.Shape.HALF_SINE), SPEED);
        RidePass.Trace trace = solver.trace(CAR);
        double[] time = trace.time();
        double[] load = trace.load();
        double off = 0;
        for (int i = 1; i < time.length; i++) {
            off += load[i] == 0 && load[i - 1] == 0 ? time[i] - time[i - 1] : 0;
        }
        // Sampled every 0.5 ms: up to two samples short for each flight, of which there are few.
        assertThat(solver.drive(CAR).contact().timeOffGround()).isBetween(off, off + 0.004);
    }

    @Test
    void aRigidWheelOverAVerySlowKerbCarriesItsStaticLoad() {
        // 0.2 m/s over a metre of half sine: quasi-static, the load follows the weight alone; accelerations are
        // h (π v/L)² = 0.02 m/s², and the springs' answer to the kerb's two corners little more.
        RidePass pass = PassSolver.over(new Kerb(Kerb.Shape.HALF_SINE, 0.05, 1, 1).felt(0.1), 0.2)
                .drive(CAR);
        assertThat(pass.contact().leastLoad()).isCloseTo(CAR.staticLoad(), Percentage.withPercentage(5));
        assertThat(pass.contact().greatestLoad()).isCloseTo(CAR.staticLoad(), Percentage.withPercentage(5));
    }

    @Test
    void downforceShortensTheFlight() {
        QuarterCar pressed = new QuarterCar(280, 42, 150e3, 320e3, 250, DAMPER, 0.87, 2000);
        PassSolver solver = PassSolver.over(kerb(Kerb.Shape.HALF_SINE), SPEED);
        assertThat(solver.drive(pressed).contact().timeOffGround())
                .isLessThan(solver.drive(CAR).contact().timeOffGround());
    }

    @Test
    void aFlatKerbDoesNothing() {
        RidePass pass = PassSolver.over(new Kerb(Kerb.Shape.RAMP, 0, 1, 1).felt(0.1), SPEED)
                .drive(CAR);
        assertThat(pass.contact().loadVariation()).isZero();
        assertThat(pass.energy().fromRoad()).isZero();
        assertThat(pass.contact().timeOffGround()).isZero();
    }

    @Test
    void aKerbDrivenTwiceAsFinelyGivesTheSame() {
        // The pass does not depend on how often it is looked at: trace and figures come from one integration.
        PassSolver solver = PassSolver.over(kerb(Kerb.Shape.RAMP), SPEED);
        assertThat(solver.drive(CAR)).isEqualTo(solver.drive(CAR));
    }

    @Test
    void aCrawlThatWouldTakeForeverIsRefused() {
        RoadProfile road = RandomRoad.of(RoadClass.A, 1, 0.1);
        assertThatThrownBy(() -> PassSolver.over(road, 1e-3))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("drive faster");
    }
}
