package dev.lapwright.checks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whole laps simple enough for a closed form. */
class ToyLapTest {
    private static final double MASS = 1000;
    private static final double RADIUS = 50;
    private static final double STRAIGHT = 400;

    /** Two straights joined by half circles; stations 200 m and 350 m down the first straight. */
    private static Track stadium() {
        List<Segment> path = new ArrayList<>();
        for (double length : new double[] {200, 150, 50}) {
            path.add(Segment.straight(length));
        }
        path.add(Segment.arc(Math.PI * RADIUS, RADIUS));
        path.add(Segment.straight(STRAIGHT));
        path.add(Segment.arc(Math.PI * RADIUS, RADIUS));
        return new SegmentPath(path, true, 1).closedTrack("stadium", 1e-6);
    }

    /**
     * Corners at 10 m/s² and brakes of 10 m/s². Along the car the tyres have more to give than the brakes ask, so that
     * braking is even, and cornering drag takes (mu² / (4 · 200))² / 4 = 4e-7 of the corner speed.
     */
    private static PlainCar car(CheckRow row) {
        PlainCar car = PlainCar.ofMass(MASS)
                .lateralFriction(10 / PlainCar.GRAVITY)
                .longitudinalFriction(4)
                .brakes(10 * MASS);
        // The torque table of 400 cells up to 70 m/s misses 1/v by (0.175 / 22)^4 = 4e-9 where the power is first used.
        return row.text("drive").equals("power") ? car.power(200 * MASS, 15, 70) : car.force(5 * MASS);
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("toy-laps.csv")
    void aSimpleLapTakesTheTimeOfItsClosedForm(CheckRow row) {
        row.verify(computed(row, Runs.FINE));
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile(
            value = "toy-laps.csv",
            quantities = {"lap time", "rest to rest time"})
    void atTheDefaultSpacingTheTimeIsWithinAMillisecond(CheckRow row) {
        // The promise of StationSpacing.DEFAULT.
        assertThat(computed(row, StationSpacing.DEFAULT)).isCloseTo(row.expected(), within(1e-3));
    }

    private static double computed(CheckRow row, StationSpacing spacing) {
        return switch (row.quantity()) {
            case "lap time" -> Runs.drive(car(row), stadium(), spacing).time();
            case "lap length" -> stadium().length();
            case "corner speed" ->
                Runs.drive(car(row), stadium(), spacing).figures().minimumSpeed();
            case "speed 200 m down the straight" -> speedAt(row, 200, spacing);
            case "speed 350 m down the straight" -> speedAt(row, 350, spacing);
            case "rest to rest time" -> restToRest(row, spacing);
            default -> throw new IllegalArgumentException(row.quantity());
        };
    }

    private static double speedAt(CheckRow row, double distance, StationSpacing spacing) {
        Lap lap = Runs.drive(car(row), stadium(), spacing);
        return lap.value(Channel.SPEED, Runs.stationAt(lap, distance));
    }

    private static double restToRest(CheckRow row, StationSpacing spacing) {
        Lap lap = Runs.drive(car(row), Roads.straightToSpeed(0, STRAIGHT, 0, Runs.STANDSTILL), spacing);
        return lap.timeAt(STRAIGHT) + Runs.STANDSTILL / 10;
    }

    /**
     * Drag, downforce and braking at up to 6 g strain the steps of straights most: four straights joined by tight corners,
     * the car of Lenzo and Rossi (2020) with a friction of 1.6. One millisecond is the promise of the default spacing.
     */
    @ParameterizedTest
    @ValueSource(doubles = {200, 400, 800})
    void atTheDefaultSpacingALapOfMuchDownforceIsWithinAMillisecond(double straight) {
        PlainCar car =
                PlainCar.ofMass(620).friction(1.6).drag(0.72).downforce(2.15).power(550e3, 8, 100);
        List<Segment> path = new ArrayList<>();
        for (int side = 0; side < 4; side++) {
            path.add(Segment.straight(straight));
            path.add(Segment.arc(Math.PI / 2 * 20, 20));
        }
        Track square = new SegmentPath(path, true, 1).closedTrack("square", 1e-6);
        double converged =
                Runs.drive(car, square, StationSpacing.DEFAULT.scaled(1.0 / 16)).time();
        assertThat(Runs.drive(car, square).time()).isCloseTo(converged, within(1e-3));
    }
}
