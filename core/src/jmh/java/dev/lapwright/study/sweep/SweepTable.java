package dev.lapwright.study.sweep;

import com.sun.management.OperatingSystemMXBean;
import dev.lapwright.study.StudyRun;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Prints as Markdown what a second thread brings to the sweep of {@link SweepBenchmark}. Sweeps on one and on two threads take
 * turns in one process, and each pair is compared by itself: on a machine that others use too, runs minutes apart differ by
 * more than the answer. Even so the clock tells the efficiency only of an idle machine. Processor time of one over that of two
 * says the same of any: what two threads with a core each would make of it, as they share the laps one by one.
 */
public final class SweepTable {
    private static final int PAIRS = 5;

    private SweepTable() {}

    /** Prints it. */
    public static void main(String... ignored) {
        say("| laps | one thread, s | two threads, s | times as fast | efficiency | least and most of " + PAIRS
                + " pairs | processor time of one over two |");
        say("|---|---|---|---|---|---|---|");
        for (int side : new int[] {20, 100}) {
            row(SweepBenchmark.grid(side));
        }
        say("");
        Sweep sweep = SweepBenchmark.grid(20);
        List<SweepResult.Point> points = sweep.run(StudyRun.onThreads(1)).points();
        for (int threads : new int[] {2, 3, 8}) {
            boolean same = points.equals(sweep.run(StudyRun.onThreads(threads)).points());
            say("Results of " + sweep.laps() + " laps on " + threads + " threads, bit for bit those of one: "
                    + (same ? "yes" : "NO"));
        }
    }

    private static void row(Sweep sweep) {
        run(sweep, 1);
        run(sweep, 2);
        double[] one = new double[PAIRS];
        double[] two = new double[PAIRS];
        double[] faster = new double[PAIRS];
        double[] work = new double[PAIRS];
        for (int i = 0; i < PAIRS; i++) {
            // In turn first and second, so that a drift of the machine favours neither.
            Spent other = i % 2 == 0 ? null : run(sweep, 2);
            Spent alone = run(sweep, 1);
            Spent both = other == null ? run(sweep, 2) : other;
            one[i] = alone.seconds();
            two[i] = both.seconds();
            faster[i] = alone.seconds() / both.seconds();
            work[i] = alone.processor() / both.processor();
        }
        Arrays.sort(faster);
        say(String.format(
                Locale.ROOT,
                "| %d | %.2f | %.2f | %.2f | %.2f | %.2f, %.2f | %.2f |",
                sweep.laps(),
                median(one),
                median(two),
                median(faster),
                median(faster) / 2,
                faster[0] / 2,
                faster[PAIRS - 1] / 2,
                median(work)));
    }

    private static double median(double[] values) {
        double[] rising = values.clone();
        Arrays.sort(rising);
        return rising[rising.length / 2];
    }

    /** Wall-clock and processor seconds of a sweep. */
    private record Spent(double seconds, double processor) {}

    private static Spent run(Sweep sweep, int threads) {
        OperatingSystemMXBean system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        long processor = system.getProcessCpuTime();
        long start = System.nanoTime();
        sweep.run(StudyRun.onThreads(threads));
        double seconds = (System.nanoTime() - start) / 1e9;
        return new Spent(seconds, (system.getProcessCpuTime() - processor) / 1e9);
    }

    private static void say(String line) {
        System.out.println(line);
    }
}
