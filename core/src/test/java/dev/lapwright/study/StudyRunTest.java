package dev.lapwright.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.brief.Brief;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.study.gearing.Gearing;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.study.pressures.Pressures;
import dev.lapwright.study.sensitivity.Sensitivity;
import dev.lapwright.study.stint.RaceLength;
import dev.lapwright.study.stint.Stint;
import dev.lapwright.study.sweep.Sweep;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.Track;
import dev.lapwright.tyre.Wheel;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class StudyRunTest {
    private static final Track OVAL = StudyCars.oval(300, 40);
    private static final Car CAR =
            StudyCars.winged(PlainCar.ofMass(1000).friction(1.3).force(5000).topSpeed(80), 0.01, 0.02);

    private static List<Study<?>> studies() {
        return List.of(
                Sweep.of(CAR, OVAL, Conditions.STANDARD).over(SweepAxis.stepped("wing", 0, 10, 1)),
                Sensitivity.of(CAR, OVAL, Conditions.STANDARD),
                Gearing.of(CAR, OVAL, Conditions.STANDARD),
                Optimisation.of(CAR, OVAL, Conditions.STANDARD),
                Stint.of(CAR, OVAL, Conditions.STANDARD, new RaceLength(5, 0, 0, 0, 0)),
                Pressures.of(
                        CAR,
                        OVAL,
                        Conditions.STANDARD,
                        List.of(new PressurePair(Wheel.FRONT_LEFT, 130, 170, 20, new PressureDay(20, 30, 1000)))),
                Brief.of(CAR, OVAL, Conditions.STANDARD));
    }

    @ParameterizedTest
    @MethodSource("studies")
    void everyStudyCanBeStopped(Study<?> study) {
        AtomicInteger asked = new AtomicInteger();
        StudyRun run = StudyRun.onThreads(2).stoppedWhen(() -> asked.incrementAndGet() > 1);
        assertThatThrownBy(() -> study.run(run)).isInstanceOf(StudyStoppedException.class);
    }

    @Test
    void partsStandInTheirOrderOnAnyNumberOfThreads() {
        List<Integer> done = Collections.synchronizedList(new ArrayList<>());
        List<Integer> squares = StudyRun.onThreads(4).inParallel(50, () -> 2, (tool, i) -> tool * i, done::add);
        for (int i = 0; i < 50; i++) {
            assertThat(squares.get(i)).isEqualTo(2 * i);
            assertThat(done.get(i)).isEqualTo(i + 1);
        }
    }

    /** Parts that are tried beforehand are parts of the work: each is done once, and stands at its place. */
    @Test
    void partsTriedBeforehandAreNotDoneTwice() {
        AtomicInteger began = new AtomicInteger();
        List<Integer> done = Collections.synchronizedList(new ArrayList<>());
        Progress tries = new Progress() {
            @Override
            public void begin(long parts, int threads, Runnable part) {
                assertThat(parts).isEqualTo(50);
                assertThat(threads).isEqualTo(4);
                began.incrementAndGet();
                for (int i = 0; i < 10; i++) {
                    part.run();
                }
                assertThat(done).hasSize(10);
            }

            @Override
            public void report(int finished, int total) {
                // Told elsewhere.
            }
        };
        AtomicInteger driven = new AtomicInteger();
        List<Integer> squares = StudyRun.onThreads(4)
                .reporting(tries)
                .allInParallel(
                        50,
                        () -> 2,
                        (tool, i) -> {
                            driven.incrementAndGet();
                            return tool * i;
                        },
                        done::add);
        assertThat(began).hasValue(1);
        assertThat(driven).hasValue(50);
        for (int i = 0; i < 50; i++) {
            assertThat(squares.get(i)).isEqualTo(2 * i);
            assertThat(done.get(i)).isEqualTo(i + 1);
        }
    }

    @Test
    void aRunWithoutThreadsIsRefused() {
        assertThatThrownBy(() -> StudyRun.onThreads(0)).isInstanceOf(InvalidValueException.class);
    }

    @Test
    void anInterruptedStudyStops() {
        Thread.currentThread().interrupt();
        assertThatThrownBy(() -> Sensitivity.of(CAR, OVAL, Conditions.STANDARD).run())
                .isInstanceOf(StudyStoppedException.class);
        assertThat(Thread.interrupted()).isTrue();
    }
}
