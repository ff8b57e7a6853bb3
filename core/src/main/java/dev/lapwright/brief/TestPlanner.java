package dev.lapwright.brief;

import dev.lapwright.evidence.LapsToSee;
import dev.lapwright.study.robust.RobustnessResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Planner of tests: which steps of a plan of changes are driven by themselves, which together, and with how many laps. */
final class TestPlanner {
    private final double scatter;
    private final int laps;
    private final RunValue value;
    private final BriefDoubt doubt;

    /**
     * @param scatter standard deviation of lap times in one setup, s
     * @param laps that there are
     */
    TestPlanner(double scatter, int laps, BriefDoubt doubt) {
        this.scatter = scatter;
        this.laps = laps;
        this.doubt = doubt;
        value = new RunValue(scatter, laps);
    }

    /** Tests of a plan. */
    BriefResult.Part<TestPlan> plan(BriefResult.Part<ChangePlan> plan) {
        if (!plan.isThere()) {
            return plan.missingToo();
        }
        List<ChangePlan.Step> steps = plan.value().orElseThrow().steps();
        if (steps.isEmpty()) {
            return BriefResult.Part.missing(
                    "as far as the model knows the car stands as well as it can: there is no change to test",
                    "drive it as it stands; how its laps scatter tells what a test could show");
        }
        List<TestPlan.Run> runs = new ArrayList<>();
        int total = 0;
        for (List<ChangePlan.Step> together : parted(steps)) {
            TestPlan.Run run = run(together, total);
            total = run.total();
            runs.add(run);
        }
        return BriefResult.Part.of(new TestPlan(runs, laps, scatter));
    }

    /**
     * As few steps to a test as the laps can show; what is left at the end and would not show goes with the test before it. If all of them
     * together would not show, each stands by itself.
     */
    private List<List<ChangePlan.Step>> parted(List<ChangePlan.Step> steps) {
        List<List<ChangePlan.Step>> tests = new ArrayList<>();
        List<ChangePlan.Step> together = new ArrayList<>();
        for (ChangePlan.Step step : steps) {
            together.add(step);
            if (isSeen(together)) {
                tests.add(List.copyOf(together));
                together.clear();
            }
        }
        if (tests.isEmpty()) {
            return steps.stream().map(List::of).toList();
        }
        if (!together.isEmpty()) {
            List<ChangePlan.Step> last = new ArrayList<>(tests.remove(tests.size() - 1));
            last.addAll(together);
            tests.add(last);
        }
        return tests;
    }

    private boolean isSeen(List<ChangePlan.Step> steps) {
        return each(effect(steps)) <= laps / 2;
    }

    private int each(BriefResult.ChangeEffect effect) {
        return value.lapsWithEach(effect.difference());
    }

    private static BriefResult.ChangeEffect effect(List<ChangePlan.Step> steps) {
        return BriefLaps.effect(
                steps.get(0).effect().comparison().first(),
                steps.get(steps.size() - 1).effect().comparison().second());
    }

    private TestPlan.Run run(List<ChangePlan.Step> steps, int before) {
        BriefResult.ChangeEffect effect = effect(steps);
        int each = each(effect);
        long both = 2L * each;
        TestPlan.Run.Fate fate = both > laps
                ? TestPlan.Run.Fate.NOT_SEEN
                : before + both > laps ? TestPlan.Run.Fate.LAPS_USED_UP : TestPlan.Run.Fate.DRIVE;
        return new TestPlan.Run(
                steps,
                effect,
                doubt(steps, effect),
                LapsToSee.perSetup(effect.difference(), scatter),
                each / 2 + each % 2,
                each,
                each / 2,
                before + (fate == TestPlan.Run.Fate.DRIVE ? (int) both : 0),
                fate);
    }

    private Optional<RobustnessResult.Standing> doubt(List<ChangePlan.Step> steps, BriefResult.ChangeEffect effect) {
        return steps.size() == 1
                ? steps.get(0).doubt()
                : doubt.between(
                        effect.comparison().first().vehicle().car(),
                        effect.comparison().second().vehicle().car());
    }
}
