package dev.lapwright.lap;

import dev.lapwright.track.StationSpacing;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;

/** Prints the results of {@link LapBenchmark} and {@link ForcesBenchmark} as Markdown; run from the top of the project. */
public final class LapTable {
    private final JmhResults results;
    private final double yardstick;

    private LapTable(JmhResults results) {
        this.results = results;
        yardstick = results.score("yardstick:cpu");
    }

    /** Prints it. */
    public static void main(String... ignored) throws IOException {
        new LapTable(new JmhResults(Path.of("core", "target", "lap-benchmark.csv"))).print();
    }

    private void print() {
        say("| what | wall clock, ms | processor, ms | times the yardstick | allocated, bytes |");
        say("|---|---|---|---|---|");
        row("yardstick", "yardstick");
        for (String spacing : new String[] {"1", "0.5", "0.25"}) {
            int count = BenchmarkScene.circuit()
                    .stations(StationSpacing.DEFAULT.scaled(Double.parseDouble(spacing)))
                    .count();
            row("lap time, default spacing × " + spacing + ": " + count + " stations", "lapTime", "spacing", spacing);
        }
        row("lap in short (what a sweep asks for)", "lapInShort");
        row("lap with all columns", "lapWithColumns");
        row("car as set up (`Vehicle.of`)", "vehicle");
        row("stations of the circuit, once", "stations");
        row("solver's workspace, once", "workspace");
        say("");
        double kernel = results.score("braking");
        say("| one search for the hardest braking | ns | times the kernel's |");
        say("|---|---|---|");
        say(String.format(Locale.ROOT, "| by the kernel | %.0f | 1 |", kernel));
        double plain = results.score("brakingPlainly");
        say(String.format(
                Locale.ROOT, "| by the plain second writing in the tests | %.0f | %.0f |", plain, plain / kernel));
        double once = results.score("forcesOnce");
        say(String.format(Locale.ROOT, "| (forces of the four wheels once) | %.0f | %.2f |", once, once / kernel));
    }

    private void row(String what, String benchmark, String... parameters) {
        double processor = results.score(benchmark + ":cpu", parameters);
        say(String.format(
                Locale.ROOT,
                "| %s | %.4f ± %.4f | %.4f | %.2f | %.0f |",
                what,
                results.score(benchmark, parameters),
                results.error(benchmark, parameters),
                processor,
                processor / yardstick,
                results.score(benchmark + ":gc.alloc.rate.norm", parameters)));
    }

    private static void say(String line) {
        System.out.println(line);
    }
}
