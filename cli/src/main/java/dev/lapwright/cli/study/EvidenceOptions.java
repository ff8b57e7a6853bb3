package dev.lapwright.cli.study;

import dev.lapwright.evidence.CleanLaps;
import dev.lapwright.evidence.Evidence;
import dev.lapwright.evidence.Trend;
import dev.lapwright.fault.InvalidValueException;
import java.util.Locale;
import java.util.OptionalDouble;
import picocli.CommandLine.Option;

/** Which laps count, and what is compared. */
public final class EvidenceOptions {
    @Option(
            names = "--before",
            paramLabel = "SETUP",
            description = "The setup to compare with; the log's first if left out.")
    public String before = "";

    @Option(
            names = "--after",
            paramLabel = "SETUP",
            description = "The setup to judge; the log's other one if left out.")
    public String after = "";

    @Option(
            names = "--predicted-s",
            paramLabel = "SECONDS",
            description = "What a model predicted that the change does to the lap time; below 0 is faster.")
    public Double predicted;

    @Option(
            names = "--worth-s",
            paramLabel = "SECONDS",
            defaultValue = "0.1",
            description = "The least change worth knowing, where none was predicted; 0.1 if left out.")
    public double worth;

    @Option(
            names = "--trend",
            paramLabel = "run|session|none",
            defaultValue = "run",
            description =
                    "What trend to take out: over the laps of each run, as where each run starts with like fuel and"
                            + " tyres (so if left out); over those of the session; or none.")
    public String trend;

    @Option(
            names = "--warm-up-laps",
            paramLabel = "N",
            defaultValue = "1",
            description = "How many laps at the beginning of each run do not count; 1 if left out.")
    public int warmUpLaps;

    @Option(
            names = "--slow-limit",
            paramLabel = "K",
            defaultValue = "3.5",
            description = "A lap does not count if it is slower than its setup's median by more than K robust standard"
                    + " deviations (MAD/0.6745); 3.5 if left out.")
    public double slowLimit;

    @Option(
            names = "--resamples",
            paramLabel = "N",
            defaultValue = "10000",
            description = "How many logs the bootstrap draws; 10000 if left out.")
    public int resamples;

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            description = "From which the bootstrap draws; the same seed draws the same. 1 if left out.")
    public long seed;

    /** @param modelled what the model predicts, if it was asked */
    public Evidence choices(OptionalDouble modelled) {
        if (predicted != null && modelled.isPresent()) {
            throw new InvalidValueException(
                    "--predicted-s", "the prediction is given, and asked of the model too", "leave one out");
        }
        return Evidence.DEFAULT
                .rule(new CleanLaps.Rule(warmUpLaps, slowLimit))
                .trend(kind())
                .between(before, after)
                .predicted(predicted == null ? modelled : OptionalDouble.of(predicted))
                .worth(worth)
                .bootstrap(resamples, seed);
    }

    private Trend.Kind kind() {
        for (Trend.Kind kind : Trend.Kind.values()) {
            if (kind.name().toLowerCase(Locale.ROOT).equals(trend)) {
                return kind;
            }
        }
        throw new InvalidValueException("--trend", "'" + trend + "' is not known", "use run, session or none");
    }
}
