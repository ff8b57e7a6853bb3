package dev.lapwright.brief;

import dev.lapwright.evidence.LapsToSee;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Planner of tests: which changes, in which order, and with how many laps. */
final class TestPlanner {
    /** Fewer cannot be split into two runs of two, without which nobody can say whether the old setup came back. */
    private static final int FEWEST = 4;

    private final BriefChoices choices;
    private final BriefLaps laps;
    private final List<TestPlan.Run> candidates = new ArrayList<>();

    TestPlanner(BriefChoices choices, BriefLaps laps) {
        this.choices = choices;
        this.laps = laps;
    }

    /** Tests of the suggestion; without one, of what the sensitivity finds worth changing. */
    BriefResult.Part<TestPlan> plan(
            BriefResult.Part<SuggestedSetup> suggestion, BriefResult.Part<BriefResult.Priorities> sensitivity) {
        if (suggestion.isThere()) {
            suggestion.value().ifPresent(this::suggested);
        } else if (sensitivity.isThere()) {
            sensitivity.value().orElseThrow().worthChanging().forEach(this::best);
        } else {
            return sensitivity.missingToo();
        }
        if (candidates.isEmpty()) {
            return BriefResult.Part.missing(
                    "as far as the model knows the car stands as well as it can: there is no change to test",
                    "drive it as it stands; how its laps scatter tells what a test could show");
        }
        return BriefResult.Part.of(new TestPlan(inOrder(), choices.laps(), choices.scatter()));
    }

    private void suggested(SuggestedSetup setup) {
        if (setup.changes().size() > 1) {
            add(setup.changes().stream().map(SuggestedSetup.Change::change).toList(), setup.effect());
        }
        for (SuggestedSetup.Change change : setup.changes()) {
            change.alone().value().ifPresent(effect -> add(List.of(change.change()), effect));
        }
    }

    private void best(SensitivityResult.Worth worth) {
        BriefResult.SettingChange change = new BriefResult.SettingChange(
                worth.adjustment(), worth.setting(), worth.best().setting());
        laps.effect(() -> laps.changed(List.of(change))).value().ifPresent(effect -> add(List.of(change), effect));
    }

    /** What makes no difference that counts, or a slower lap, when made by itself is no test by itself. */
    private void add(List<BriefResult.SettingChange> changes, BriefResult.ChangeEffect effect) {
        if (!(effect.difference() <= -LapTimeDifference.COUNTS)) {
            return;
        }
        int toSee = LapsToSee.perSetup(effect.difference(), choices.scatter());
        int each = Math.max(FEWEST, toSee);
        TestPlan.Run.Fate fate = each > choices.laps() / 2 ? TestPlan.Run.Fate.NOT_SEEN : TestPlan.Run.Fate.DRIVE;
        candidates.add(new TestPlan.Run(changes, effect, toSee, each / 2 + each % 2, each, each / 2, 0, fate));
    }

    private List<TestPlan.Run> inOrder() {
        List<TestPlan.Run> runs = new ArrayList<>();
        int total = 0;
        candidates.sort(Comparator.comparingDouble(TestPlan.Run::differencePerLap)
                .thenComparingDouble(run -> run.effect().difference()));
        for (TestPlan.Run run : candidates) {
            TestPlan.Run.Fate fate = run.fate();
            if (fate == TestPlan.Run.Fate.DRIVE && total + run.laps() > choices.laps()) {
                fate = TestPlan.Run.Fate.LAPS_USED_UP;
            }
            total += fate == TestPlan.Run.Fate.DRIVE ? run.laps() : 0;
            runs.add(new TestPlan.Run(
                    run.changes(),
                    run.effect(),
                    run.lapsToSee(),
                    run.firstLaps(),
                    run.changedLaps(),
                    run.lastLaps(),
                    total,
                    fate));
        }
        return runs;
    }
}
