package dev.lapwright.brief;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.evidence.LapsToSee;
import org.junit.jupiter.api.Test;

/** What to test, in which order, with how many laps: the steps of the plan, together where fewer would not show. */
class TestPlanTest {
    private static final TestPlan PLAN = plan(BriefCars.brief().withScatter(0.3).withLaps(400));

    private static TestPlan plan(Brief brief) {
        return BriefCars.run(brief).tests().value().orElseThrow();
    }

    private static ChangePlan steps(Brief brief) {
        return BriefCars.run(brief).plan().value().orElseThrow();
    }

    /** The car as it is described decides alone, so that there are two steps; of the second too few drawn cars gain. */
    private static Brief twoSteps() {
        return BriefCars.brief().withDraws(0);
    }

    @Test
    void withLapsInPlentyEachStepOfThePlanIsATest() {
        TestPlan plan = plan(BriefCars.brief().withScatter(0.01).withLaps(400));
        assertThat(plan.runs()).hasSameSizeAs(steps(BriefCars.brief()).steps());
        assertThat(plan.runs()).noneMatch(TestPlan.Run::isBundle);
    }

    /** Each is held against the car with the steps of the tests before: a telescoping sum. */
    @Test
    void theTestsAddUpToThePlan() {
        ChangePlan steps = steps(BriefCars.brief());
        double sum = PLAN.runs().stream()
                .mapToDouble(run -> run.effect().difference())
                .sum();
        // Double precision.
        assertThat(sum).isCloseTo(steps.effect().difference(), within(1e-9));
        assertThat(PLAN.runs().stream().flatMap(run -> run.steps().stream()).map(ChangePlan.Step::changes))
                .containsExactlyElementsOf(
                        steps.steps().stream().map(ChangePlan.Step::changes).toList());
    }

    @Test
    void stepsThatWouldNotShowByThemselvesGoTogether() {
        ChangePlan steps = steps(twoSteps());
        assertThat(steps.steps()).hasSize(2);
        int whole = LapsToSee.perSetup(steps.effect().difference(), 5);
        int most = steps.steps().stream()
                .mapToInt(step -> LapsToSee.perSetup(step.effect().difference(), 5))
                .max()
                .orElseThrow();
        assertThat(whole).isLessThan(most);
        // Enough for both together, too few for the lesser of them.
        TestPlan plan = plan(twoSteps().withScatter(5).withLaps(2 * whole));
        assertThat(plan.runs()).hasSize(1);
        assertThat(plan.runs().get(0).isBundle()).isTrue();
        assertThat(plan.runs().get(0).changes()).hasSize(2);
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
        // Laps this even show each step in the fewest there are, 4 with each setup: 8 a test, and 15 are too few for
        // two.
        TestPlan plan = plan(twoSteps().withScatter(0.01).withLaps(15));
        assertThat(plan.runs().get(0).fate()).isEqualTo(TestPlan.Run.Fate.DRIVE);
        assertThat(plan.runs().get(1).fate()).isEqualTo(TestPlan.Run.Fate.LAPS_USED_UP);
        assertThat(plan.toDrive()).hasSize(1);
    }

    @Test
    void lapsThatScatterByAMinuteNeverShowItAndNothingIsDriven() {
        TestPlan plan = plan(BriefCars.brief().withScatter(60));
        assertThat(plan.runs()).allSatisfy(run -> assertThat(run.fate()).isEqualTo(TestPlan.Run.Fate.NOT_SEEN));
        assertThat(plan.runs()).noneMatch(TestPlan.Run::isBundle);
        assertThat(plan.runs().get(0).laps()).isPositive();
        assertThat(plan.toDrive()).isEmpty();
        assertThat(plan.lapsLeft()).isEqualTo(plan.laps());
    }
}
