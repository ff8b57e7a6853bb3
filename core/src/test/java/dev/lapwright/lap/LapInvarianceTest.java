package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.StudyStoppedException;
import dev.lapwright.study.sweep.Sweep;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a lap time must not depend on: the side, the start line, what was solved before, the number of threads. */
class LapInvarianceTest {
    private final Car car = TestCars.winged();
    private final Track track = TestTracks.circuit();
    private final Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);

    @Test
    void mirroredCircuitGivesTheSameTime() {
        // Left and right differ by signs alone, which floating point keeps exactly.
        assertThat(LapSolver.on(track.mirrored()).lapTime(vehicle))
                .isEqualTo(LapSolver.on(track).lapTime(vehicle));
    }

    @ParameterizedTest
    @ValueSource(doubles = {100, 733.3, 1500, 2000, 3333.3})
    void startingElsewhereGivesTheSameTime(double start) {
        // 0.1 ms is the project's goal; the stations differ, since a moved start adds one.
        assertThat(LapSolver.on(track.startingAt(start)).lapTime(vehicle))
                .isCloseTo(LapSolver.on(track).lapTime(vehicle), within(1e-4));
    }

    @Test
    void defaultSpacingIsWithinAMillisecondOfTheConvergedTime() {
        double fine = new LapSolver(track.stations(StationSpacing.DEFAULT.scaled(1.0 / 16))).lapTime(vehicle);
        assertThat(LapSolver.on(track).lapTime(vehicle)).isCloseTo(fine, within(1e-3));
    }

    @Test
    void workspaceCarriesNothingFromOneLapToTheNext() {
        LapSolver used = LapSolver.on(track);
        used.lapTime(Vehicle.of(TestCars.winged(Map.of(Quantity.MASS, 900.0)), Conditions.STANDARD));
        used.solve(Vehicle.of(car, Conditions.STANDARD.with("conditions.windSpeedMps", 8)));
        assertThat(used.lapTime(vehicle)).isEqualTo(LapSolver.on(track).lapTime(vehicle));
    }

    @Test
    void sweepIsTheSameForAnyNumberOfThreads() {
        Sweep sweep = Sweep.of(car, track, Conditions.STANDARD)
                .over(SweepAxis.stepped("aero.wings.rear.angleDeg", 0, 12, 3))
                .over(SweepAxis.stepped("gearbox.finalDrive", 3.5, 4.3, 0.4));
        SweepResult alone = sweep.run(StudyRun.onThreads(1));
        SweepResult together = sweep.run(StudyRun.onThreads(4));
        assertThat(together.points()).isEqualTo(alone.points());
        assertThat(together.baseline()).isEqualTo(alone.baseline());
    }

    @Test
    @Tag("heavy")
    void sweepWithLinesFoundAnewIsTheSameForAnyNumberOfThreads() {
        LineChoices coarse = new LineChoices(0.25, 6);
        Line smoothest = LineSearch.of(track, car, coarse).smoothest();
        Sweep sweep = Sweep.refreshing(car, smoothest, coarse, Conditions.STANDARD)
                .over(SweepAxis.stepped("aero.wings.rear.angleDeg", 0, 12, 6));
        SweepResult alone = sweep.run(StudyRun.onThreads(1));
        SweepResult together = sweep.run(StudyRun.onThreads(3));
        assertThat(together.points()).isEqualTo(alone.points());
        assertThat(together.baseline()).isEqualTo(alone.baseline());
    }

    @Test
    void aLineFoundAnewIsNeverSlowerThanTheOneHeld() {
        LineChoices coarse = new LineChoices(0.25, 6);
        Line held = LineSearch.of(track, car, coarse).smoothest();
        SweepAxis wing = SweepAxis.stepped("aero.wings.rear.angleDeg", 0, 12, 12);
        SweepResult fixed =
                Sweep.of(car, held.driven(), Conditions.STANDARD).over(wing).run();
        SweepResult anew = Sweep.refreshing(car, held, coarse, Conditions.STANDARD)
                .over(wing)
                .run();
        for (int i = 0; i < fixed.points().size(); i++) {
            double heldTime = fixed.points().get(i).figures().orElseThrow().lapTime();
            assertThat(anew.points().get(i).figures().orElseThrow().lapTime()).isLessThan(heldTime);
        }
    }

    /** Asked after each step of a search, not only between laps. */
    @Test
    void aSweepIsStoppedInTheMiddleOfASearchForALine() {
        LineChoices coarse = new LineChoices(0.25, 6);
        Line smoothest = LineSearch.of(track, car, coarse).smoothest();
        AtomicInteger asked = new AtomicInteger();
        StudyRun how = StudyRun.onThreads(1).stoppedWhen(() -> asked.incrementAndGet() > 2);
        assertThatThrownBy(() -> Sweep.refreshing(car, smoothest, coarse, Conditions.STANDARD)
                        .over(SweepAxis.stepped("aero.wings.rear.angleDeg", 0, 12, 6))
                        .run(how))
                .isInstanceOf(StudyStoppedException.class);
        // The baseline's own search alone takes more steps than that.
        assertThat(asked).hasValue(3);
    }

    @Test
    void columnsAddUpToTheLap() {
        Lap lap = LapSolver.on(track).solve(vehicle);
        assertThat(lap.value(Channel.TIME, lap.count() - 1)).isEqualTo(lap.time());
        double sectors = 0;
        for (double sector : lap.sectorTimes()) {
            sectors += sector;
        }
        // Sums of a hundred seconds in another order: a few units in the last place.
        assertThat(sectors).isCloseTo(lap.time(), within(1e-10));
        double shares = lap.limitShares().values().stream().mapToDouble(s -> s).sum();
        assertThat(shares).isCloseTo(1, within(1e-12));
    }

    @Test
    void wheelLoadsAddUpToWeightAndDownforce() {
        Lap lap = LapSolver.on(track).solve(vehicle);
        for (int i = 0; i < lap.count(); i++) {
            double wheels = lap.value(Channel.LOAD_FRONT_LEFT, i)
                    + lap.value(Channel.LOAD_FRONT_RIGHT, i)
                    + lap.value(Channel.LOAD_REAR_LEFT, i)
                    + lap.value(Channel.LOAD_REAR_RIGHT, i);
            double pressing = vehicle.mass() * lap.value(Channel.NORMAL_ACCELERATION, i)
                    + lap.value(Channel.DOWNFORCE_FRONT, i)
                    + lap.value(Channel.DOWNFORCE_REAR, i);
            // Rounding of sums of some 20 kN.
            assertThat(wheels).isCloseTo(pressing, within(1e-7));
        }
    }
}
