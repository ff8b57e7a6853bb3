package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.air.Wind;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/**
 * A study compares hundredths of a second, so lap time must be a smooth function of a setting: the project's goal is that
 * second differences over small steps stay below 0.1 ms. (Second differences of the true function are far below that: with
 * curvatures of the order of 1 s per unit squared they are 1e-4 s for 0.01 and 1e-6 s for 0.001 steps at the very most.)
 */
class SmoothnessTest {
    private static final double GOAL = 1e-4;

    private final Car car = TestCars.winged();
    private final LapSolver solver = LapSolver.on(TestTracks.circuit());

    @Test
    void lapTimeIsSmoothInTheWingAngle() {
        String wing = "aero.wings.rear.angleDeg";
        double worst = worstSecondDifference(
                a -> solver.lapTime(Vehicle.of(car.with(wing, a), Conditions.STANDARD)), 5, 0.01, 150);
        assertThat(worst).isLessThan(GOAL);
    }

    /** Half the step: where a shift comes to lie at the beginning of braking lap time has a kink, which falls with the step. */
    @Test
    void lapTimeIsSmoothInTheFinalDrive() {
        double worst = worstSecondDifference(
                f -> solver.lapTime(Vehicle.of(car.with(Quantity.FINAL_DRIVE, f), Conditions.STANDARD)),
                3.6,
                0.0005,
                800);
        assertThat(worst).isLessThan(GOAL);
    }

    @Test
    void lapTimeIsSmoothInRideHeight() {
        double worst = worstSecondDifference(
                h -> solver.lapTime(Vehicle.of(car.with(Quantity.RIDE_HEIGHT_REAR, h), Conditions.STANDARD)),
                75,
                0.1,
                100);
        assertThat(worst).isLessThan(GOAL);
    }

    @Test
    void lapTimeIsSmoothInPitch() {
        Car moving = car.with(Quantity.PITCH_REAR, 80).with(Quantity.HEAVE, 100);
        double worst = worstSecondDifference(
                p -> solver.lapTime(Vehicle.of(moving.with(Quantity.PITCH_FRONT, p), Conditions.STANDARD)),
                60,
                0.2,
                100);
        assertThat(worst).isLessThan(GOAL);
    }

    @Test
    void lapTimeIsSmoothInTyreSlip() {
        double worst = worstSecondDifference(
                k -> solver.lapTime(Vehicle.of(car.with(Quantity.TYRE_SLIP, k), Conditions.STANDARD)), 2, 0.01, 100);
        assertThat(worst).isLessThan(GOAL);
    }

    @Test
    void lapTimeIsSmoothInWhatALightWheelBrakes() {
        double worst = worstSecondDifference(
                l -> solver.lapTime(Vehicle.of(car.with(Quantity.LIGHT_WHEEL, l), Conditions.STANDARD)), 40, 0.1, 100);
        assertThat(worst).isLessThan(GOAL);
    }

    /**
     * A climb on which the car neither gains nor loses right where a gear is changed: there the gear above leads down and the gear
     * below up, and a step can go to and fro between them without end. Whatever it does, a cell takes at least its length over the
     * highest speed in it, and a little more speed at the start changes the time by no more than it changes the speed.
     */
    @Test
    void noCellIsDrivenInNoTimeWhereTheCarCanHardlyHoldTheGearAbove() {
        Car heavy = car.with(Quantity.MASS, 5000).with(Quantity.SHIFT_TIME, 0.4);
        Vehicle vehicle = Vehicle.of(heavy, Conditions.STANDARD);
        double shift = Drivetrain.of(vehicle).shiftSpeed(3);
        double step = 0.01;
        int held = 0;
        for (int slope = 0; slope < 20; slope++) {
            double before = Double.NaN;
            for (int i = -100; i <= 100; i++) {
                double entry = shift + i * step;
                Track climb = new SegmentPath(
                                List.of(
                                        Segment.straight(60),
                                        Segment.straight(60).inclined(0.04 + 0.005 * slope, 0),
                                        Segment.straight(60)),
                                false,
                                60)
                        .openTrack("climb", entry);
                Kernel kernel = new Kernel(new Road(climb.stations(StationSpacing.DEFAULT), Wind.CALM), null);
                double time = kernel.solve(vehicle);
                for (int c = 0; c < kernel.road.cells; c++) {
                    double fastest = Math.sqrt(2 * Math.max(kernel.energy[c], kernel.energy[c + 1]));
                    // Inside a cell the speed is over that of its ends by far less than a thousandth.
                    assertThat(kernel.time[c]).isGreaterThan(0.999 * kernel.road.length[c] / fastest);
                    held += kernel.energy[c] == kernel.energy[c + 1] ? 1 : 0;
                }
                if (i > -100) {
                    assertThat(Math.abs(time - before)).isLessThan(2 * step / shift * time);
                }
                before = time;
            }
        }
        assertThat(held).as("cells at the speed of a change of gear").isPositive();
    }

    private static double worstSecondDifference(DoubleUnaryOperator lapTime, double first, double step, int count) {
        double worst = 0;
        double before = lapTime.applyAsDouble(first);
        double here = lapTime.applyAsDouble(first + step);
        for (int i = 2; i < count; i++) {
            double after = lapTime.applyAsDouble(first + i * step);
            worst = Math.max(worst, Math.abs(before - 2 * here + after));
            before = here;
            here = after;
        }
        return worst;
    }
}
