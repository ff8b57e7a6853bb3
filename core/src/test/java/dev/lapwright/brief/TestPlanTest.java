package dev.lapwright.brief;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.evidence.LapsToSee;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What to test, in which order, with how many laps. */
class TestPlanTest {
    private static final TestPlan PLAN = plan(BriefCars.brief().withScatter(0.3).withLaps(400));

    private static TestPlan plan(Brief brief) {
        return BriefCars.run(brief).tests().value().orElseThrow();
    }

    @Test
    void theSuggestionAsAWholeAndEachOfItsChangesIsATest() {
        assertThat(PLAN.runs().stream().map(run -> run.changes().size())).containsExactlyInAnyOrder(2, 1, 1);
    }

    @Test
    void eachShowsWhatTheModelExpectsOfTheCarSoChanged() {
        double before = BriefCars.time(BriefCars.CAR);
        for (TestPlan.Run run : PLAN.runs()) {
            var car = BriefCars.CAR;
            for (BriefResult.SettingChange change : run.changes()) {
                car = car.with(change.adjustment().name(), change.to());
            }
            // Double precision.
            assertThat(run.effect().difference()).isCloseTo(BriefCars.time(car) - before, within(1e-9));
        }
    }

    @Test
    void lapsWithEachSetupAreThoseThatShowTheDifference() {
        for (TestPlan.Run run : PLAN.runs()) {
            int needed = LapsToSee.perSetup(run.effect().difference(), 0.3);
            assertThat(run.lapsToSee()).isEqualTo(needed);
            assertThat(run.changedLaps()).isEqualTo(Math.max(4, needed));
            assertThat(run.firstLaps() + run.lastLaps()).isEqualTo(run.changedLaps());
        }
    }

    /** Two laps at least before and after, or nobody can say whether the old setup came back. */
    @Test
    void theOldSetupIsRunBeforeAndAfter() {
        for (TestPlan.Run run : plan(BriefCars.brief().withScatter(0.001)).runs()) {
            assertThat(run.firstLaps()).isGreaterThanOrEqualTo(2);
            assertThat(run.lastLaps()).isGreaterThanOrEqualTo(2);
        }
    }

    @Test
    void theFastestForEachLapSpentComesFirst() {
        List<TestPlan.Run> runs = PLAN.runs();
        for (int i = 1; i < runs.size(); i++) {
            assertThat(runs.get(i).effect().difference() / runs.get(i).laps())
                    .isGreaterThanOrEqualTo(runs.get(i - 1).effect().difference()
                            / runs.get(i - 1).laps());
        }
    }

    @Test
    void theRunningTotalCountsTheLapsOfWhatIsDriven() {
        int total = 0;
        for (TestPlan.Run run : PLAN.runs()) {
            total += run.fate() == TestPlan.Run.Fate.DRIVE ? run.laps() : 0;
            assertThat(run.total()).isEqualTo(total);
        }
        assertThat(total).isPositive();
        assertThat(PLAN.lapsLeft()).isEqualTo(400 - total);
    }

    @Test
    void withLapsForTheFirstTestAloneTheOthersAreLeftForWantOfLaps() {
        TestPlan.Run first = PLAN.runs().get(0);
        TestPlan.Run second = PLAN.runs().get(1);
        // Enough for either of the two, not for both.
        int laps = Math.max(first.laps(), second.laps()) + first.laps() - 1;
        TestPlan plan = plan(BriefCars.brief().withScatter(0.3).withLaps(laps));
        assertThat(plan.runs().get(0).fate()).isEqualTo(TestPlan.Run.Fate.DRIVE);
        assertThat(plan.runs().get(1).fate()).isEqualTo(TestPlan.Run.Fate.LAPS_USED_UP);
        assertThat(plan.toDrive()).hasSize(1);
    }

    @Test
    void whatTheLapsCannotShowIsSaidAndNotDriven() {
        TestPlan.Run first = PLAN.runs().get(0);
        TestPlan plan = plan(BriefCars.brief().withScatter(0.3).withLaps(Math.max(4, first.laps() - 1)));
        assertThat(plan.runs()).allSatisfy(run -> assertThat(run.fate()).isEqualTo(TestPlan.Run.Fate.NOT_SEEN));
        assertThat(plan.toDrive()).isEmpty();
        assertThat(plan.lapsLeft()).isEqualTo(plan.laps());
    }

    @Test
    void lapsThatScatterByAMinuteNeverShowIt() {
        TestPlan.Run run = plan(BriefCars.brief().withScatter(60)).runs().get(0);
        assertThat(run.fate()).isEqualTo(TestPlan.Run.Fate.NOT_SEEN);
        assertThat(run.laps()).isPositive();
        assertThat(run.differencePerLap()).isNotPositive();
    }

    @Test
    void withoutASuggestionWhatIsWorthChangingIsTested() {
        BriefLaps laps = new BriefLaps(BriefCars.CAR, BriefCars.OVAL, BriefCars.DAY);
        BriefResult.Priorities sensitivity =
                BriefCars.run(BriefCars.brief()).sensitivity().value().orElseThrow();
        TestPlan plan = new TestPlanner(BriefChoices.DEFAULT, laps)
                .plan(BriefResult.Part.missing("none", ""), BriefResult.Part.of(sensitivity))
                .value()
                .orElseThrow();
        assertThat(plan.runs()).hasSameSizeAs(sensitivity.worthChanging());
        for (TestPlan.Run run : plan.runs()) {
            double best = sensitivity.worthChanging().stream()
                    .filter(worth ->
                            worth.adjustment().equals(run.changes().get(0).adjustment()))
                    .findFirst()
                    .orElseThrow()
                    .best()
                    .difference();
            // Double precision.
            assertThat(run.effect().difference()).isCloseTo(best, within(1e-9));
        }
    }
}
