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
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What shifts cost over a given distance, against shifts as events in time: drive until the shift speed, none for the shift time,
 * drive in the next gear. The reference is integrated over time by the 8(5,3) method of Dormand and Prince from Commons Math
 * (Hairer, Nørsett & Wanner, Solving Ordinary Differential Equations I, section II.10) at 1e-10, on the plain
 * {@link ReferenceForces}, not the kernel's.
 */
class ShiftCostTest {
    private static final double ENTRY = 12;
    /**
     * On the cost: during the shift the car loses r t of its speed, so that it rolls r t² / 2 less far than the model says; at
     * 2 m/s² and 40 m/s that is 0.8 % for 0.3 s. A band that lay beside its shift would miss by half its width, 3 %.
     */
    private static final double ROLLING = 0.01;

    private final Map<Quantity, Double> grippy =
            Map.of(Quantity.FRICTION_X_REAR, 3.0, Quantity.POWER_LOCK_REAR, 0.0, Quantity.CG_HEIGHT, 0.2);

    @ParameterizedTest
    @CsvSource({"0.1, 400", "0.3, 1200", "0.3, 600"})
    void aShiftCostsItsTimeAtTheSpeedAtWhichItHappens(double shiftTime, double length) {
        double expected = byEvents(shiftTime, length) - byEvents(0, length);
        double cost = byLap(shiftTime, length) - byLap(0, length);
        assertThat(cost).isCloseTo(expected, within(ROLLING * expected));
    }

    private double byLap(double shiftTime, double length) {
        Track track = new SegmentPath(List.of(Segment.straight(length)), false, 20).openTrack("straight", ENTRY);
        return new LapSolver(track.stations(StationSpacing.DEFAULT.scaled(0.25)))
                .lapTime(Vehicle.of(car(shiftTime), Conditions.STANDARD));
    }

    private Car car(double shiftTime) {
        return TestCars.winged(grippy).with(Quantity.SHIFT_TIME, shiftTime);
    }

    private double byEvents(double shiftTime, double length) {
        Track track = new SegmentPath(List.of(Segment.straight(length)), false, 20).openTrack("straight", ENTRY);
        Car car = car(shiftTime);
        ReferenceForces forces = new ReferenceForces(car, Conditions.STANDARD);
        Drivetrain drivetrain = Drivetrain.of(Vehicle.of(car, Conditions.STANDARD));
        int gear = drivetrain.gearAt(ENTRY);
        double s = 0;
        double v = ENTRY;
        double time = 0;
        while (true) {
            int engaged = gear - 1;
            Rate acceleration = (at, speed) -> forces.drive(track.pointAt(Math.min(at, length)), speed, engaged, 0);
            if (gear < drivetrain.gears()) {
                // In this gear up to the shift, over speed: ds/dv = v/a, dt/dv = 1/a.
                double[] state = {s, time};
                double to = drivetrain.shiftSpeed(gear);
                integrate(
                        equations((speed, y, rate) -> {
                            double a = acceleration.at(y[0], speed);
                            rate[0] = speed / a;
                            rate[1] = 1 / a;
                        }),
                        v,
                        state,
                        to);
                if (state[0] < length) {
                    s = state[0];
                    time = state[1];
                    v = to;
                    if (shiftTime > 0) {
                        double[] rolling = {s, v};
                        integrate(coasting(forces, track, heavy(car, gear)), 0, rolling, shiftTime);
                        s = rolling[0];
                        v = rolling[1];
                        time += shiftTime;
                    }
                    gear++;
                    continue;
                }
            }
            // To the end, over distance: de/ds = a, dt/ds = 1/v.
            double[] state = {v * v / 2, time};
            integrate(
                    equations((at, y, rate) -> {
                        double speed = Math.sqrt(2 * y[0]);
                        rate[0] = acceleration.at(at, speed);
                        rate[1] = 1 / speed;
                    }),
                    s,
                    state,
                    length);
            return state[1];
        }
    }

    private interface Rate {
        double at(double s, double v);
    }

    /** Mass with what rotates in the gear (from 0) that is shifted to, kg. */
    private static double heavy(Car car, int gear) {
        Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
        return vehicle.mass() * vehicle.propulsion.massFactor[gear];
    }

    private static FirstOrderDifferentialEquations coasting(ReferenceForces forces, Track track, double mass) {
        return equations((t, y, rate) -> {
            rate[0] = y[1];
            rate[1] = -forces.new State(track.pointAt(y[0]), y[1], 0, 1, 0).needed / mass;
        });
    }

    private interface Equations {
        void rates(double t, double[] y, double[] rate);
    }

    private static FirstOrderDifferentialEquations equations(Equations of) {
        return new FirstOrderDifferentialEquations() {
            @Override
            public int getDimension() {
                return 2;
            }

            @Override
            public void computeDerivatives(double t, double[] y, double[] rate) {
                of.rates(t, y, rate);
            }
        };
    }

    private static void integrate(FirstOrderDifferentialEquations e, double from, double[] y, double to) {
        new DormandPrince853Integrator(1e-10, 10, 1e-9, 1e-9).integrate(e, from, y, to, y);
    }
}
