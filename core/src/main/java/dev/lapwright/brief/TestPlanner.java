package dev.lapwright.brief;

import dev.lapwright.evidence.LapsToSee;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What to test, in which order, and with how many laps. */
final class TestPlanner {
    /** Fewer cannot be split into two runs of two, without which nobody can say whether the old setup came back. */
    private static final int FEWEST = 4;

    private final BriefChoices choices;
    private final BriefLaps laps;
    private final List<TestRun> candidates = new ArrayList<>();

    TestPlanner(BriefChoices choices, BriefLaps laps) {
        this.choices = choices;
        this.laps = laps;
    }

    /** Tests of the suggestion; without one, of what the sensitivity finds worth changing. */
    BriefPart<TestPlan> plan(BriefPart<SuggestedSetup> suggestion, BriefPart<BriefSensitivity> sensitivity) {
        if (suggestion.isThere()) {
            suggestion.value().ifPresent(this::suggested);
        } else if (sensitivity.isThere()) {
            sensitivity.value().orElseThrow().worthChanging().forEach(this::best);
        } else {
            return sensitivity.missingToo();
        }
        if (candidates.isEmpty()) {
            return BriefPart.missing(
                    "as far as the model knows the car stands as well as it can: there is no change to test",
                    "drive it as it stands; how its laps scatter tells what a test could show");
        }
        return BriefPart.of(new TestPlan(inOrder(), choices.laps(), choices.scatter()));
    }

    private void suggested(SuggestedSetup setup) {
        if (setup.changes().size() > 1) {
            add(setup.changes().stream().map(SuggestedChange::change).toList(), setup.effect());
        }
        for (SuggestedChange change : setup.changes()) {
            change.alone().value().ifPresent(effect -> add(List.of(change.change()), effect));
        }
    }

    private void best(SensitivityResult.Gain gain) {
        SettingChange change = new SettingChange(gain.adjustment(), gain.setting(), gain.best());
        laps.effect(() -> laps.changed(List.of(change))).value().ifPresent(effect -> add(List.of(change), effect));
    }

    /** What gains nothing made by itself is no test by itself. */
    private void add(List<SettingChange> changes, ChangeEffect effect) {
        if (effect.gain() < SensitivityResult.Gain.NOTHING) {
            return;
        }
        int toSee = LapsToSee.perSetup(effect.gain(), choices.scatter());
        int each = Math.max(FEWEST, toSee);
        TestRun.Fate fate = each > choices.laps() / 2 ? TestRun.Fate.NOT_SEEN : TestRun.Fate.DRIVE;
        candidates.add(new TestRun(changes, effect, toSee, each / 2 + each % 2, each, each / 2, 0, fate));
    }

    private List<TestRun> inOrder() {
        List<TestRun> runs = new ArrayList<>();
        int total = 0;
        candidates.sort(Comparator.comparingDouble(TestRun::gainPerLap)
                .thenComparingDouble(run -> run.effect().gain())
                .reversed());
        for (TestRun run : candidates) {
            TestRun.Fate fate = run.fate();
            if (fate == TestRun.Fate.DRIVE && total + run.laps() > choices.laps()) {
                fate = TestRun.Fate.LAPS_USED_UP;
            }
            total += fate == TestRun.Fate.DRIVE ? run.laps() : 0;
            runs.add(new TestRun(
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
