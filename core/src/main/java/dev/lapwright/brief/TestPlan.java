package dev.lapwright.brief;

import java.util.List;

/**
 * Tests in the order in which to drive them: the one that makes the most faster for each lap spent first.
 *
 * @param runs all that could be tested, also what is not worth it
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
     * Test of a change: the car as it stands, with the change, and as it stands again. Laps are clean ones; each of the
     * three runs takes an out lap and an in lap beside.
     *
     * @param changes what is turned, at least one; several where the suggestion is tried as a whole
     * @param effect what the model expects
     * @param lapsToSee laps with each of the two setups that it takes to see that on the timing screen;
     *     {@link Integer#MAX_VALUE} if never
     * @param firstLaps to drive as the car stands, before
     * @param changedLaps to drive with the change
     * @param lastLaps to drive as the car stands, after
     * @param total laps of this and all tests before it that are to be driven
     * @param fate whether it is to be driven
     */
    public record Run(
            List<BriefResult.SettingChange> changes,
            BriefResult.ChangeEffect effect,
            int lapsToSee,
            int firstLaps,
            int changedLaps,
            int lastLaps,
            int total,
            Fate fate) {
        public Run {
            changes = List.copyOf(changes);
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

        /** Whether it tries several changes at once, as the suggestion as a whole; false for one change by itself. */
        public boolean isWhole() {
            return changes.size() > 1;
        }

        /** Laps of all three runs; {@link Integer#MAX_VALUE} if no number would do. */
        public int laps() {
            long all = (long) firstLaps + changedLaps + lastLaps;
            return (int) Math.min(Integer.MAX_VALUE, all);
        }

        /** Difference expected for each lap spent, s, minus where faster; 0 where no number of laps would do. */
        public double differencePerLap() {
            return lapsToSee == Integer.MAX_VALUE ? 0 : effect.difference() / laps();
        }
    }
}
