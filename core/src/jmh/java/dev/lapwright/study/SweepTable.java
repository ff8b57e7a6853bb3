package dev.lapwright.study;

import dev.lapwright.lap.JmhResults;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Prints the results of {@link SweepBenchmark} as Markdown; run from the top of the project. */
public final class SweepTable {
    private SweepTable() {}

    /** Prints it. */
    public static void main(String... ignored) throws IOException {
        JmhResults results = new JmhResults(Path.of("core", "target", "sweep-benchmark.csv"));
        say("| laps | one thread, s | two threads, s | times as fast | efficiency | processor time of two over one |");
        say("|---|---|---|---|---|---|");
        for (String side : new String[] {"20", "100"}) {
            double one = results.score("sweep", "side", side, "threads", "1");
            double two = results.score("sweep", "side", side, "threads", "2");
            double work = results.score("sweep:cpu", "side", side, "threads", "2")
                    / results.score("sweep:cpu", "side", side, "threads", "1");
            int laps = SweepBenchmark.grid(Integer.parseInt(side)).laps();
            say(String.format(
                    Locale.ROOT,
                    "| %d | %.2f | %.2f | %.2f | %.2f | %.2f |",
                    laps,
                    one,
                    two,
                    one / two,
                    one / two / 2,
                    work));
        }
        say("");
        Sweep sweep = SweepBenchmark.grid(20);
        List<SweepPoint> points = sweep.onThreads(1).run().points();
        for (int threads : new int[] {2, 3, 8}) {
            boolean same = points.equals(sweep.onThreads(threads).run().points());
            say("Results of " + sweep.laps() + " laps on " + threads + " threads, bit for bit those of one: "
                    + (same ? "yes" : "NO"));
        }
    }

    private static void say(String line) {
        System.out.println(line);
    }
}
