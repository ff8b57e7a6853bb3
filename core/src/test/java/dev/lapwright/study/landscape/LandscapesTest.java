package dev.lapwright.study.landscape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.StudyCars;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.StudyStoppedException;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Lap times over a range, against mechanics by hand. */
class LandscapesTest {
    private static final String GRIP = "conditions.grip";
    private static final String DAMPER = Quantity.FAST_BUMP_FRONT.path();

    private static Lap onACircle() {
        double radius = 50;
        Track circle = new SegmentPath(List.of(Segment.arc(2 * Math.PI * radius, radius)), true, 1)
                .closedTrack("circle", 1e-6);
        return LapSolver.lap(PlainCar.ofMass(1000).car(), circle, Conditions.STANDARD);
    }

    private static List<Double> steps(double from, double step, int count) {
        return IntStream.range(0, count).mapToObj(i -> from + i * step).toList();
    }

    /** On a level circle v² = μ g R, so a lap takes time in proportion to 1/√μ (textbook mechanics). */
    @Test
    void onACircleTheLapTimeFallsWithTheRootOfGrip() {
        Lap lap = onACircle();
        Landscape grip = Landscapes.about(lap)
                .over(GRIP, List.of(0.64, 0.81, 1.0, 1.21))
                .run(StudyRun.onThreads(1))
                .get(0);
        assertThat(grip.points()).hasSize(4);
        for (Landscape.Point point : grip.points()) {
            double expected = lap.time() * (1 / Math.sqrt(point.setting()) - 1);
            // The engine holds the speed against no resistance here: what is left is the solver's own millisecond.
            assertThat(grip.difference(point)).isCloseTo(expected, within(1e-3));
        }
        assertThat(grip.fastest().orElseThrow().setting()).isEqualTo(1.21);
        assertThat(grip.isFlat()).isFalse();
    }

    @Test
    void whatALapDoesNotKnowIsFlat() {
        Landscape damper = Landscapes.about(onACircle())
                .over(DAMPER, List.of(1000.0, 5000.0))
                .run(StudyRun.onThreads(1))
                .get(0);
        assertThat(damper.isFlat()).isTrue();
        assertThat(damper.range()).isZero();
    }

    @Test
    void eachIsToldFromAFewSettingsAndThenFromAllWhateverTheThreads() {
        Lap lap = LapSolver.lap(PlainCar.ofMass(1000).force(4000).car(), StudyCars.oval(300, 40), Conditions.STANDARD);
        List<Double> grips = steps(0.8, 0.05, 9);
        List<Double> masses = steps(900, 50, 3);
        for (int threads : new int[] {1, 3}) {
            List<Landscape> told = new ArrayList<>();
            List<Landscape> found = Landscapes.about(lap)
                    .over(GRIP, grips)
                    .over(Quantity.MASS.path(), masses)
                    .telling(told::add)
                    .run(StudyRun.onThreads(threads));
            assertThat(found).extracting(Landscape::name).containsExactly(GRIP, Quantity.MASS.path());
            assertThat(found).allMatch(Landscape::complete);
            assertThat(found.get(0).points())
                    .extracting(Landscape.Point::setting)
                    .isEqualTo(grips);
            assertThat(told).hasSize(3);
            assertThat(told).filteredOn(one -> one.name().equals(GRIP)).hasSize(2);
            if (threads == 1) {
                // Once with the ends and three between, once with all nine.
                assertThat(told.get(0).complete()).isFalse();
                assertThat(told.get(0).points())
                        .extracting(Landscape.Point::setting)
                        .containsExactly(grips.get(0), grips.get(2), grips.get(4), grips.get(6), grips.get(8));
            }
            // The same laps, bit for bit, as driven one by one.
            for (Landscape.Point point : found.get(1).points()) {
                double alone = LapSolver.on(lap.track())
                        .lapTime(Vehicle.of(
                                lap.vehicle().car().with(Quantity.MASS.path(), point.setting()), Conditions.STANDARD));
                assertThat(point.figures().orElseThrow().lapTime()).isEqualTo(alone);
            }
        }
    }

    /**
     * A car with drag on a straight to the east is fastest with the wind from the west, 270 degrees, by mechanics: a look at four
     * directions that miss it finds a fifth nearer to it.
     */
    @Test
    void theFastestIsLookedAtCloser() {
        Track straight = new SegmentPath(List.of(Segment.straight(1000)), false, 1).openTrack("straight", 5);
        Conditions windy = Conditions.STANDARD.with("conditions.windSpeedMps", 10);
        Lap lap = LapSolver.lap(PlainCar.ofMass(1000).force(4000).drag(1).car(), straight, windy);
        for (int threads : new int[] {1, 3}) {
            Landscape found = Landscapes.about(lap)
                    .over("conditions.windFromDeg", List.of(170.0, 220.0, 310.0, 350.0), steps(170, 10, 19))
                    .run(StudyRun.onThreads(threads))
                    .get(0);
            assertThat(found.points()).hasSize(5);
            assertThat(found.fastest().orElseThrow().setting()).isBetween(250.0, 290.0);
        }
        // At an end there is nothing beyond, and a setting that is known is not driven again.
        for (List<Double> known : List.of(List.of(90.0, 110.0, 130.0), List.of(250.0, 270.0, 290.0))) {
            assertThat(Landscapes.about(lap)
                            .over("conditions.windFromDeg", known, steps(90, 10, 27))
                            .run(StudyRun.onThreads(1))
                            .get(0)
                            .points())
                    .hasSize(3);
        }
    }

    /** A hill of 30 degrees asks for sin 30° = half the weight; a car with less force stands still. */
    @Test
    void aSettingWithoutALapSaysWhyAndLeavesTheOthers() {
        Track hill =
                new SegmentPath(List.of(Segment.straight(400).inclined(Math.PI / 6, 0)), false, 1).openTrack("hill", 5);
        Lap lap = LapSolver.lap(PlainCar.ofMass(500).force(4000).car(), hill, Conditions.STANDARD);
        Landscape mass = Landscapes.about(lap)
                .over(Quantity.MASS.path(), List.of(400.0, 500.0, 2000.0))
                .run(StudyRun.onThreads(1))
                .get(0);
        assertThat(mass.points().get(2).figures()).isEmpty();
        assertThat(mass.points().get(2).failure()).isNotBlank();
        assertThat(mass.difference(mass.points().get(2))).isNaN();
        assertThat(mass.difference(mass.points().get(0))).isNegative();
        assertThat(mass.range()).isPositive();
    }

    @Test
    void itStopsAtTheNextLap() {
        AtomicInteger asked = new AtomicInteger();
        Landscapes study = Landscapes.about(onACircle()).over(GRIP, steps(0.5, 0.01, 60));
        assertThatThrownBy(() -> study.run(StudyRun.onThreads(1).stoppedWhen(() -> asked.incrementAndGet() > 3)))
                .isInstanceOf(StudyStoppedException.class);
        assertThat(asked.get()).isLessThan(10);
    }

    @Test
    void whatCannotBeTurnedIsRefusedAtOnce() {
        Landscapes study = Landscapes.about(onACircle());
        assertThatThrownBy(() -> study.over("grip", List.of(1.0)).run()).isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> study.over(GRIP, List.of(1.0, 0.9))).isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> study.over(GRIP, List.of(1.0)).over(GRIP, List.of(1.0)))
                .isInstanceOf(InvalidValueException.class);
    }
}
