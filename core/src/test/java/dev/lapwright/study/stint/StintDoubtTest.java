package dev.lapwright.study.stint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.doubt.DoubtClass;
import dev.lapwright.doubt.UnknownShare;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.study.StudyCars;
import dev.lapwright.study.StudyRun;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What is in doubt of a stint, against distributions by hand: as stated, nothing but the study's own unknowns is drawn. */
class StintDoubtTest {
    private static final double AT_95 = 1.645;
    private static final RaceLength RACE = new RaceLength(12, 0, 0, 0, 0);

    private static Stint stint(double fuel, Compound... compounds) {
        Car car = PlainCar.ofMass(1000)
                .friction(1.4)
                .drag(0.8)
                .force(5000)
                .topSpeed(80)
                .with(Quantity.FUEL_MASS, fuel)
                .car();
        return Stint.of(car, StudyCars.circuit(), Conditions.STANDARD, RACE).onCompounds(List.of(compounds));
    }

    private static StintDoubtResult drawn(Stint stint) {
        return drawn(stint, 100);
    }

    private static StintDoubtResult drawn(Stint stint, int draws) {
        return stint.doubted().asStated().withDraws(draws).run();
    }

    /** Fuel goes with what the engine burns for its work, which is lognormal: so is the need, and its chance not to exceed what is set. */
    @Test
    @Tag("heavy")
    void theFuelNeededIsInDoubtAsWhatTheEngineBurns() {
        Compound even = Compound.steady("even", 1, 0);
        double needed = stint(0, even).run().startFuel();
        double sigma = Math.log(DoubtClass.CONSUMPTION.factor(1));
        // What one standard deviation and a half more would ask for: Φ(1.5) is 0.9332.
        StintDoubtResult result = drawn(stint(needed * Math.exp(1.5 * sigma), even), 400);
        StintDoubtResult.Interval fuel = result.runs().get(0).fuelNeeded();
        assertThat(fuel.middle()).isEqualTo(needed, within(2e-3 * needed));
        // A slice of 1/400 at the 5 % point is 0.025 deviations wide; heavier fuel costs a little fuel of its own, and
        // grip in doubt by 1 % moves the cars at the ends from slice to slice.
        assertThat(Math.log(fuel.high() / fuel.middle())).isEqualTo(AT_95 * sigma, within(0.15 * sigma));
        assertThat(Math.log(fuel.low() / fuel.middle())).isEqualTo(-AT_95 * sigma, within(0.15 * sigma));
        assertThat(result.runs().get(0).reaching()).isBetween(364, 384);
        UnknownShare most = result.fuelShares().get(0);
        assertThat(most.unknown().title()).isEqualTo(DoubtClass.CONSUMPTION.title());
        assertThat(result.timeShares()).isEmpty();
    }

    /**
     * Two compounds alike but in name differ by both grips, 1 % each: over twelve laps by as much as 12 √2 times what one percent of
     * grip is worth on one.
     */
    @Test
    void compoundsDifferByTheDoubtOfTheirGrips() {
        Stint alike = stint(20, Compound.steady("soft", 1, 0), Compound.steady("hard", 1, 0));
        StintDoubtResult result = drawn(alike);
        StintDoubtResult.OnCompound hard = result.runs().get(1);
        double half = AT_95 * Math.sqrt(2) * 12 * Math.abs(alike.run().timePerGrip());
        // Two unknowns of 100 slices each: the sum's ends are known to a tenth or so.
        assertThat(hard.difference().halfWidth()).isEqualTo(half, within(0.2 * half));
        assertThat(hard.difference().middle()).isEqualTo(0, within(0.2 * half));
        assertThat(hard.ahead()).isBetween(35, 65);
        assertThat(result.runs().get(0).difference().high()).isZero();
        assertThat(result.timeShares().stream().map(share -> share.unknown().title()))
                .contains("grip of soft", "grip of hard");
    }

    /** Straight in fuel and grip by three laps, a drawn car's stint lies in the middle where the stint solved lap by lap does. */
    @Test
    void theMiddleOfDrawnDifferencesIsThatOfLapsSolvedOneByOne() {
        Stint stint = stint(20, Compound.steady("soft", 1.01, 0.002), Compound.steady("hard", 1, 0.0005));
        StintResult solved = stint.run();
        double difference = solved.runs().get(1).time() - solved.runs().get(0).time();
        StintDoubtResult.Interval drawn = drawn(stint).runs().get(1).difference();
        // The median of 100 is known to 1.25 of a tenth of the deviation.
        assertThat(drawn.middle()).isEqualTo(difference, within(2 * 0.125 * drawn.halfWidth() / AT_95));
    }

    @Test
    void itIsTheSameOnAnyNumberOfThreadsAndRefusesTooFewDraws() {
        StintDoubt study =
                stint(20, Compound.steady("even", 1, 0.001)).doubted().withDraws(20);
        assertThat(study.run(StudyRun.onThreads(3))).isEqualTo(study.run(StudyRun.onThreads(1)));
        assertThat(study.withSeed(2).run(StudyRun.onThreads(1))).isNotEqualTo(study.run(StudyRun.onThreads(1)));
        assertThatThrownBy(() -> study.withDraws(3)).isInstanceOf(InvalidValueException.class);
    }
}
