package dev.lapwright.study.robust;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.study.MemoryInMind;
import dev.lapwright.study.StudyCars;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.StudyStoppedException;
import dev.lapwright.study.sensitivity.Sensitivity;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Verdicts found without driving what cannot change them, against those for which all is driven. */
class SettledVerdictsTest {
    /** A wing whose drag and downforce nearly cancel or do not, a final drive, and a brake balance that hardly matters. */
    private static SensitivityResult sensitivity(double drag, double lift) {
        Car car = StudyCars.winged(
                PlainCar.ofMass(1050).force(4000).topSpeed(55).drag(0.4),
                drag,
                lift,
                StudyCars.adjustment(
                        "final-drive", 4, 7, 0.25, StudyCars.RATIO, new Effect.Absolute("gearbox.finalDrive", 0, 1)),
                StudyCars.adjustment(
                        "air", 0, 4, 1, 2, new Effect.Absolute(Quantity.ROLLING_RESISTANCE.path(), 0.010, 0.0005)));
        return Sensitivity.of(car, StudyCars.oval(500, 60), Conditions.STANDARD).run();
    }

    @ParameterizedTest
    @Tag("heavy")
    @CsvSource({"0.2, 0.15", "0.05, 0.05", "0.02, 0.05", "0.1, 0.02"})
    void verdictsAreThoseOfAllLapsForFewerOfThem(double drag, double lift) {
        SensitivityResult sensitivity = sensitivity(drag, lift);
        Robustness all = Robustness.of(sensitivity).withDraws(SettledVerdicts.DRAWS);
        SettledVerdicts.Result settled = SettledVerdicts.of(sensitivity).run(StudyRun.onThreads(2));
        assertThat(settled.verdicts()).isEqualTo(Robustness.verdicts(sensitivity, all.run()));
        assertThat(settled.laps()).isPositive().isLessThan((int) all.laps());
        assertThat(SettledVerdicts.of(sensitivity).run(StudyRun.onThreads(1))).isEqualTo(settled);
    }

    /** Of a wing that turned out to gain nothing where it was said to be fastest, so that its ends are asked as well. */
    private static SettledVerdicts asked() {
        SensitivityResult sensitivity = sensitivity(0.2, 0.15);
        double now = sensitivity.car().setting("wing");
        JudgedAdjustments.Known wing =
                new JudgedAdjustments.Known("wing", Optional.empty(), 1, -0.06, List.of(now, now - 1, now + 1));
        return SettledVerdicts.of(
                sensitivity.car(),
                SettledVerdicts.cars(sensitivity.car(), sensitivity.track(), sensitivity.conditions()),
                JudgedAdjustments.of(sensitivity.car(), List.of(wing)));
    }

    /** Stopped at any moment and gone on with from what was kept: the same verdicts, said to rest on as many laps, and none is driven twice. */
    @ParameterizedTest
    @ValueSource(ints = {5, 12})
    void whatWasStoppedGoesOnFromWhatWasKept(int stop) {
        final SettledVerdicts.Result whole = asked().run(StudyRun.onThreads(2));
        MemoryInMind memory = new MemoryInMind();
        AtomicInteger asked = new AtomicInteger();
        StudyRun stopped = StudyRun.onThreads(2).stoppedWhen(() -> asked.incrementAndGet() > stop);
        assertThatThrownBy(() -> asked().remembering(memory).run(stopped)).isInstanceOf(StudyStoppedException.class);
        Map<String, double[]> kept = Map.copyOf(memory.parts());
        assertThat(asked().remembering(memory).run(StudyRun.onThreads(2))).isEqualTo(whole);
        assertThat(kept).isNotEmpty().hasSizeLessThan(memory.parts().size());
        kept.forEach(
                (name, numbers) -> assertThat(memory.parts().get(name)).as(name).isSameAs(numbers));
        assertThat(memory.parts().keySet())
                .anyMatch(name -> name.startsWith("look2/"))
                .anyMatch(name -> name.startsWith("look3/"));
    }

    /** A band asked first of the same cars: its laps count for the words, and the words are none other. */
    @Test
    void lapsThatTheCarsRememberAreNotDrivenAgain() {
        SensitivityResult sensitivity = sensitivity(0.2, 0.15);
        JudgedAdjustments judged = JudgedAdjustments.of(sensitivity);
        DrawnCars cars = SettledVerdicts.cars(sensitivity.car(), sensitivity.track(), sensitivity.conditions());
        Robustness band = Robustness.of(sensitivity.car(), cars.first(20));
        for (Car setUp : judged.cars()) {
            band = band.against(setUp);
        }
        RobustnessResult told = band.run();
        assertThat(told.draws()).isEqualTo(20);
        assertThat(cars.driven()).isEqualTo(20 * (1 + judged.cars().size()));
        SettledVerdicts.Result after =
                SettledVerdicts.of(sensitivity.car(), cars, judged).run();
        SettledVerdicts.Result alone = SettledVerdicts.of(sensitivity).run();
        assertThat(after.verdicts()).isEqualTo(alone.verdicts());
        assertThat(cars.driven()).isEqualTo(20 * (1 + judged.cars().size()) + after.laps());
        // The first 20 of its laps of each setting that decides, and of the car as it stands, are there.
        assertThat(after.laps()).isLessThanOrEqualTo(alone.laps() - 40);
        // And the other way round: nothing is left to drive for the band.
        int driven = cars.driven();
        assertThat(band.run().standings()).isEqualTo(told.standings());
        assertThat(cars.driven()).isEqualTo(driven);
    }

    @Test
    void whatIsLeftOutCannotBeToldAndCostsNoLap() {
        SensitivityResult sensitivity = sensitivity(0.2, 0.15);
        Set<String> names = Set.of("wing", "final-drive", "air");
        SettledVerdicts.Result none = SettledVerdicts.of(sensitivity, names).run();
        assertThat(none.laps()).isZero();
        assertThat(none.draws()).isZero();
        assertThat(none.verdicts()).containsOnly(AdjustmentVerdict.UNTOLD);
    }

    @Test
    void itCanBeStopped() {
        StudyRun stopped = StudyRun.onThreads(1).stoppedWhen(() -> true);
        SettledVerdicts study = SettledVerdicts.of(sensitivity(0.2, 0.15));
        assertThatThrownBy(() -> study.run(stopped)).isInstanceOf(StudyStoppedException.class);
    }

    /** The rule of {@link AdjustmentVerdict} where more than one thing may still be said of a setting. */
    @Test
    void whatMayStillChangeTheVerdictLeavesItOpen() {
        Set<RobustnessResult.Verdict> faster = EnumSet.of(RobustnessResult.Verdict.FASTER);
        Set<RobustnessResult.Verdict> slower = EnumSet.of(RobustnessResult.Verdict.SLOWER);
        Set<RobustnessResult.Verdict> either =
                EnumSet.of(RobustnessResult.Verdict.FASTER, RobustnessResult.Verdict.UNTOLD);
        Set<RobustnessResult.Verdict> cost =
                EnumSet.of(RobustnessResult.Verdict.SLOWER, RobustnessResult.Verdict.UNTOLD);
        // A gain is one whatever the ends do; one that may yet be none is open.
        assertThat(AdjustmentVerdict.of(true, List.of(faster, cost))).contains(AdjustmentVerdict.GAIN);
        assertThat(AdjustmentVerdict.of(true, List.of(either, slower))).isEmpty();
        // An end that is faster or cannot be told: in either case it cannot be told.
        assertThat(AdjustmentVerdict.of(false, List.of(either, cost))).contains(AdjustmentVerdict.UNTOLD);
        assertThat(AdjustmentVerdict.of(false, List.of(slower, cost))).isEmpty();
        // A setting without a lap has nothing to say.
        assertThat(AdjustmentVerdict.of(false, List.of(slower, Set.of()))).contains(AdjustmentVerdict.RIGHT);
    }
}
