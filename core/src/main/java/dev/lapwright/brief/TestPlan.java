package dev.lapwright.brief;

import java.util.List;

/**
 * Tests in the order in which to drive them: the most gain for each lap spent first.
 *
 * @param runs all that could be tested, also what is not worth it
 * @param laps there are
 * @param scatter standard deviation of lap times taken, s
 */
public record TestPlan(List<TestRun> runs, int laps, double scatter) {
    public TestPlan {
        runs = List.copyOf(runs);
    }

    /** Those to drive. */
    public List<TestRun> toDrive() {
        return runs.stream().filter(run -> run.fate() == TestRun.Fate.DRIVE).toList();
    }

    /** Laps left when all of those are driven. */
    public int lapsLeft() {
        return laps - toDrive().stream().mapToInt(TestRun::laps).sum();
    }
}
