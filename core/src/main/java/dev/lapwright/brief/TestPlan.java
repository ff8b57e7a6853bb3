package dev.lapwright.brief;

import dev.lapwright.study.robust.RobustnessResult;
import java.util.List;
import java.util.Optional;

/**
 * Tests in the order in which to drive them, that of the plan of changes: a step of it each, or as many steps together as it takes to
 * show in the laps there are.
 *
 * @param runs all steps of the plan, also those that the laps cannot show
 * @param laps there are
 * @param scatter standard deviation of lap times taken, s
 */
public record TestPlan(List<Run> runs, int laps, double scatter) {
    public TestPlan {
        runs = List.copyOf(runs);
    }

    /** Those to drive. */
    public List<Run> toDrive() {
        return runs.stream().filter(run -> run.fate() == Run.Fate.DRIVE).toList();
    }

    /** Laps left when all of those are driven. */
    public int lapsLeft() {
        return laps - toDrive().stream().mapToInt(Run::laps).sum();
    }

    /**
     * Test of a change: the car as it stood, with the change, and as it stood again. Laps are clean ones; each of the
     * three runs takes an out lap and an in lap beside.
     *
     * @param steps of the plan that are tried, at least one; several where fewer would not show
     * @param effect what the model expects, against the car with all steps of the tests before
     * @param doubt how that stands on drawn cars; empty where none were drawn
     * @param lapsToSee laps with each of the two setups that it takes to see that on the timing screen;
     *     {@link Integer#MAX_VALUE} if never
     * @param firstLaps to drive as the car stood, before
     * @param changedLaps to drive with the change
     * @param lastLaps to drive as the car stood, after
     * @param total laps of this and all tests before it that are to be driven
     * @param fate whether it is to be driven
     */
    public record Run(
            List<ChangePlan.Step> steps,
            BriefResult.ChangeEffect effect,
            Optional<RobustnessResult.Standing> doubt,
            int lapsToSee,
            int firstLaps,
            int changedLaps,
            int lastLaps,
            int total,
            Fate fate) {
        public Run {
            steps = List.copyOf(steps);
        }

        /** Decision about a test. */
        public enum Fate {
            /** Its laps are there. */
            DRIVE,
            /** The laps there are would show it, but the tests before it need them. */
            LAPS_USED_UP,
            /** The laps there are cannot show it. */
            NOT_SEEN
        }

        /** Whether it tries several steps of the plan at once. */
        public boolean isBundle() {
            return steps.size() > 1;
        }

        /** What is turned. */
        public List<BriefResult.SettingChange> changes() {
            return steps.stream().flatMap(step -> step.changes().stream()).toList();
        }

        /** Laps of all three runs; {@link Integer#MAX_VALUE} if no number would do. */
        public int laps() {
            long all = (long) firstLaps + changedLaps + lastLaps;
            return (int) Math.min(Integer.MAX_VALUE, all);
        }
    }
}
