package dev.lapwright.brief;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Unit;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.study.robust.RobustnessResult;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The way to a suggested setup, step by step. */
class ChangePlanTest {
    /** Sums and differences of lap times in double precision. */
    private static final double ROUNDING = 1e-9;

    private static final BriefResult BRIEF = BriefCars.run(BriefCars.brief());
    private static final ChangePlan PLAN = BRIEF.plan().value().orElseThrow();

    /** The car as it is described decides alone, so that there are two. */
    private static final ChangePlan UNDRAWN =
            BriefCars.run(BriefCars.brief().withDraws(0)).plan().value().orElseThrow();

    @Test
    void theStepsAddUpToTheWhole() {
        assertThat(UNDRAWN.steps()).hasSize(2);
        double sum = UNDRAWN.steps().stream()
                .mapToDouble(step -> step.effect().difference())
                .sum();
        assertThat(sum).isCloseTo(UNDRAWN.effect().difference(), within(ROUNDING));
        assertThat(BriefCars.time(UNDRAWN.car()) - BriefCars.time(BriefCars.CAR))
                .isCloseTo(sum, within(ROUNDING));
    }

    @Test
    void eachStepIsHeldAgainstTheCarAsTheStepsBeforeLeftIt() {
        Car car = BriefCars.CAR;
        for (ChangePlan.Step step : UNDRAWN.steps()) {
            double before = BriefCars.time(car);
            for (BriefResult.SettingChange change : step.changes()) {
                assertThat(change.from())
                        .isEqualTo(car.setting(change.adjustment().name()));
                car = car.with(change.adjustment().name(), change.to());
            }
            assertThat(step.effect().difference()).isCloseTo(BriefCars.time(car) - before, within(ROUNDING));
        }
    }

    @Test
    void everyStepCounts() {
        assertThat(UNDRAWN.steps())
                .allSatisfy(
                        step -> assertThat(step.effect().difference()).isLessThanOrEqualTo(-LapTimeDifference.COUNTS));
    }

    @Test
    void whatMostDrawnCarsGainMostFromComesFirst() {
        RobustnessResult.Standing first = PLAN.steps().get(0).doubt().orElseThrow();
        assertThat(LapTimeDifference.isFaster(first.middle())).isTrue();
        assertThat(first.low()).isLessThanOrEqualTo(first.middle());
        assertThat(first.middle()).isLessThanOrEqualTo(first.high());
        assertThat(first.laps()).isEqualTo(BriefChoices.DRAWS);
    }

    /** Of the second step of the car as described too few drawn cars gain what counts: it is left out, and how it stands is said. */
    @Test
    void whatIsNoGainOnMostDrawnCarsIsLeftOut() {
        assertThat(PLAN.steps())
                .isNotEmpty()
                .allSatisfy(step -> assertThat(3 * step.doubt().orElseThrow().gains())
                        .isGreaterThanOrEqualTo(2 * BriefChoices.DRAWS));
        ChangePlan.Left left = PLAN.left().stream()
                .filter(one -> one.reason() == ChangePlan.Reason.NOT_FIRM)
                .findFirst()
                .orElseThrow();
        assertThat(UNDRAWN.steps().stream()
                        .flatMap(step -> step.changes().stream())
                        .map(BriefResult.SettingChange::adjustment))
                .contains(left.change().adjustment());
        RobustnessResult.Standing standing = left.doubt().orElseThrow();
        assertThat(3 * standing.gains() < 2 * BriefChoices.DRAWS || standing.middle() > -LapTimeDifference.COUNTS)
                .isTrue();
    }

    @Test
    void withoutDrawsThereIsNoDoubtAndTheCarAsDescribedDecides() {
        ChangePlan plan = UNDRAWN;
        assertThat(plan.doubt()).isEmpty();
        assertThat(plan.steps()).allSatisfy(step -> assertThat(step.doubt()).isEmpty());
        double first = plan.steps().get(0).effect().difference();
        for (BriefResult.SettingChange change :
                plan.steps().stream().flatMap(step -> step.changes().stream()).toList()) {
            Car alone = BriefCars.CAR.with(change.adjustment().name(), change.to());
            assertThat(first).isLessThanOrEqualTo(BriefCars.time(alone) - BriefCars.time(BriefCars.CAR) + ROUNDING);
        }
    }

    /** With this rev limit less wing alone only meets it sooner, and a longer final drive alone only loses force. */
    @Test
    void whatIsFasterOnlyTogetherIsOneStep() {
        ChangePlan plan = BriefCars.run(Brief.of(BriefCars.car(BriefCars.plain(45)), BriefCars.OVAL, BriefCars.DAY)
                        .withDraws(0))
                .plan()
                .value()
                .orElseThrow();
        assertThat(plan.steps()).hasSize(1);
        assertThat(plan.steps().get(0).isBundle()).isTrue();
    }

    private static ChangePlan.Turn turn(double from, double to) {
        Adjustment bar = new Adjustment(
                "bar",
                "Bar",
                Unit.NONE,
                Adjustment.Range.stepped(1, 6, 1, 3),
                List.of(new Effect.Absolute("suspension.front.antiRollBarNmPerDeg", 0, 1)));
        return ChangePlanner.turn(new BriefResult.SettingChange(bar, from, to));
    }

    @Test
    void nothingGoesToItsEndStopInOneStep() {
        assertThat(turn(3, 6).change().to()).isEqualTo(5);
        assertThat(turn(3, 6).goal()).isEqualTo(6);
        assertThat(turn(3, 6).isPartial()).isTrue();
        assertThat(turn(3, 1).change().to()).isEqualTo(2);
        // One step from the end there is none before it.
        assertThat(turn(5, 6).isPartial()).isFalse();
        assertThat(turn(3, 5).isPartial()).isFalse();
    }

    @Test
    void partsToChooseAmongHaveNoEndStop() {
        Adjustment drive = new Adjustment(
                "final-drive",
                "Final drive",
                Unit.NONE,
                Adjustment.Range.among(4, List.of(3.5, 4.0, 4.5)),
                List.of(new Effect.Absolute("gearbox.finalDrive", 0, 1)));
        assertThat(ChangePlanner.turn(new BriefResult.SettingChange(drive, 4.5, 3.5))
                        .isPartial())
                .isFalse();
    }

    @Test
    void whatTheSuggestionTurnsAsWellIsLeft() {
        SuggestedSetup suggested = BRIEF.suggestion().value().orElseThrow();
        Car car = PLAN.car();
        for (ChangePlan.Left left : PLAN.left()) {
            car = car.with(left.change().adjustment().name(), left.change().to());
        }
        assertThat(BriefCars.time(car)).isEqualTo(BriefCars.time(suggested.car()));
        assertThat(BriefCars.time(car) - BriefCars.time(PLAN.car())).isCloseTo(PLAN.leftToGoal(), within(ROUNDING));
    }

    @Test
    void everyAdjustmentIsInOneListOfVerdicts() {
        AdjustmentVerdicts verdicts = BRIEF.verdicts().value().orElseThrow();
        assertThat(Stream.of(
                                verdicts.planned(),
                                verdicts.gains(),
                                verdicts.right(),
                                verdicts.alike(),
                                verdicts.unseen(),
                                verdicts.untold())
                        .flatMap(List::stream))
                .containsExactlyInAnyOrderElementsOf(
                        BRIEF.sensitivity().value().orElseThrow().study().worths());
        // Less mass is always faster, so a lap time does not decide about ballast.
        assertThat(verdicts.unseen().stream().map(worth -> worth.adjustment().name()))
                .containsExactly("ballast");
    }

    @Test
    void withoutDrawsNothingIsUntold() {
        AdjustmentVerdicts verdicts =
                BriefCars.run(BriefCars.brief().withDraws(0)).verdicts().value().orElseThrow();
        assertThat(verdicts.untold()).isEmpty();
        assertThat(verdicts.doubt().isThere()).isFalse();
        assertThat(Stream.of(verdicts.planned(), verdicts.gains())
                        .flatMap(List::stream)
                        .map(worth -> worth.adjustment().name()))
                .containsExactlyInAnyOrderElementsOf(BRIEF.sensitivity().value().orElseThrow().worthChanging().stream()
                        .map(worth -> worth.adjustment().name())
                        .toList());
    }
}
