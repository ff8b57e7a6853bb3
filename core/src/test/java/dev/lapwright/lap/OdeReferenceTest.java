package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleBinaryOperator;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The forward and backward passes on the full vehicle against a general-purpose adaptive integrator: the 8(5,3) method of
 * Dormand and Prince from Commons Math (Hairer, Nørsett & Wanner, Solving Ordinary Differential Equations I, section II.10)
 * at 1e-10, whose right-hand side is the plain {@link ReferenceForces}, not the kernel's.
 */
class OdeReferenceTest {
    /** Asked for by the project's numerical goals: 1e-5 of the speed. */
    private static final double RELATIVE = 1e-5;

    @Tag("long")
    @ParameterizedTest
    @ValueSource(doubles = {50, 100})
    void forwardPassFollowsTheAdaptiveIntegratorWithAnyDrive(double frontDriveShare) {
        follows(frontDriveShare);
    }

    @Test
    void forwardPassFollowsTheAdaptiveIntegrator() {
        follows(0);
    }

    private static void follows(double frontDriveShare) {
        // One gear and a bend that opens: grip, then power, over changing bank and slope and a crest. No drive at low
        // engine
        // speed would be left out, so the run is entered rolling.
        Car car = TestCars.winged(Map.of(Quantity.FRONT_DRIVE_SHARE, frontDriveShare, Quantity.SHIFT_TIME, 0.0));
        Track track = TestTracks.opening(15);
        Lap lap = new LapSolver(track.stations(StationSpacing.DEFAULT.scaled(0.25)))
                .solve(Vehicle.of(car, Conditions.STANDARD));
        ReferenceForces forces = new ReferenceForces(car, Conditions.STANDARD);
        Propulsion gears = lap.vehicle().propulsion;
        DoubleBinaryOperator slope = (s, e) -> {
            int gear = gears.gear[gears.pieceAt(e)];
            return forces.drive(track.pointAt(s), Math.sqrt(2 * e), gear, 0);
        };
        compare(lap, slope, 0, track.length(), 60);
    }

    @Test
    void backwardPassFollowsTheAdaptiveIntegrator() {
        // From a fast straight into a tightening bend.
        List<Segment> path = List.of(
                Segment.straight(250).inclined(-0.03, 0),
                Segment.clothoid(120, Double.POSITIVE_INFINITY, 40).inclined(-0.02, 0.03),
                Segment.arc(40, 40).inclined(0, 0.03));
        Track track = new SegmentPath(path, false, 60).openTrack("closing bend", 55);
        Car car = TestCars.winged();
        Lap lap = new LapSolver(track.stations(StationSpacing.DEFAULT.scaled(0.25)))
                .solve(Vehicle.of(car, Conditions.STANDARD));
        int first = 0;
        while (lap.limit(first) != Limit.BRAKES) {
            first++;
        }
        int last = first;
        while (lap.limit(last) == Limit.BRAKES) {
            last++;
        }
        assertThat(lap.value(Channel.DISTANCE, last - 1) - lap.value(Channel.DISTANCE, first))
                .as("length of the braking zone, m")
                .isGreaterThan(60);
        ReferenceForces forces = new ReferenceForces(car, Conditions.STANDARD);
        Propulsion gears = lap.vehicle().propulsion;
        DoubleBinaryOperator slope =
                (s, e) -> forces.brake(track.pointAt(s), Math.sqrt(2 * e), gears.gear[gears.pieceAt(e)]);
        // Start where the car is clear of its cornering limit, some metres before the arc.
        compare(lap, slope, lap.value(Channel.DISTANCE, last) - 8, lap.value(Channel.DISTANCE, first), 30);
    }

    private static void compare(Lap lap, DoubleBinaryOperator slope, double from, double to, int samples) {
        FirstOrderDifferentialEquations equations = new FirstOrderDifferentialEquations() {
            @Override
            public int getDimension() {
                return 1;
            }

            @Override
            public void computeDerivatives(double s, double[] e, double[] rate) {
                double inside = Math.max(0, Math.min(s, lap.track().length()));
                rate[0] = slope.applyAsDouble(inside, e[0]);
            }
        };
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-9, 10, 1e-10, 1e-10);
        double[] s = lap.column(Channel.DISTANCE);
        double[] v = lap.column(Channel.SPEED);
        int start = nearest(s, from);
        int end = nearest(s, to);
        double[] e = {0.5 * v[start] * v[start]};
        double at = s[start];
        int step = (int) Math.signum(end - start);
        int stride = Math.max(1, Math.abs(end - start) / samples);
        for (int i = start + step * stride; step * (end - i) >= 0; i += step * stride) {
            if (s[i] == at) {
                continue;
            }
            integrator.integrate(equations, at, e, s[i], e);
            at = s[i];
            double reference = Math.sqrt(2 * e[0]);
            assertThat(v[i]).as("speed at %.2f m", s[i]).isCloseTo(reference, within(RELATIVE * reference));
        }
    }

    private static int nearest(double[] s, double at) {
        int best = 0;
        for (int i = 1; i < s.length; i++) {
            if (Math.abs(s[i] - at) < Math.abs(s[best] - at)) {
                best = i;
            }
        }
        return best;
    }
}
