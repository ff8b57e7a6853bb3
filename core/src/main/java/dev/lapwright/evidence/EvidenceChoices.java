package dev.lapwright.evidence;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.OptionalDouble;

/**
 * What to ask of a log.
 *
 * @param rule which laps count
 * @param trend what trend to take out
 * @param before the setup to compare with; empty for the first in the log
 * @param after the setup to be judged; empty for the other one
 * @param predicted change of lap time from before to after that a model predicted, s; below nought is faster
 * @param worth the least change worth knowing, s, above zero
 * @param resamples of the bootstrap, 100 to 1 000 000
 * @param seed of the bootstrap
 */
public record EvidenceChoices(
        CleanRule rule,
        TrendKind trend,
        String before,
        String after,
        OptionalDouble predicted,
        double worth,
        int resamples,
        long seed) {
    /** The standard rule, trend within each run, the log's two setups, 0.1 s, 10 000 resamples, seed 1. */
    public static final EvidenceChoices DEFAULT =
            new EvidenceChoices(CleanRule.DEFAULT, TrendKind.RUN, "", "", OptionalDouble.empty(), 0.1, 10_000, 1);

    private static final int LEAST_RESAMPLES = 100;
    private static final int MOST_RESAMPLES = 1_000_000;

    /** @throws InvalidValueException if a number is outside its range */
    public EvidenceChoices {
        if (predicted.isPresent()) {
            Check.finite("predicted change (s)", predicted.getAsDouble());
        }
        Check.positive("change worth knowing (s)", worth);
        if (resamples < LEAST_RESAMPLES || resamples > MOST_RESAMPLES) {
            throw new InvalidValueException(
                    "resamples",
                    resamples + " is outside its range",
                    "allowed: " + LEAST_RESAMPLES + " to " + MOST_RESAMPLES);
        }
    }

    /** The same with another trend. */
    public EvidenceChoices with(TrendKind other) {
        return new EvidenceChoices(rule, other, before, after, predicted, worth, resamples, seed);
    }

    /** The same for two setups by name. */
    public EvidenceChoices between(String first, String second) {
        return new EvidenceChoices(rule, trend, first, second, predicted, worth, resamples, seed);
    }

    /** The same with what a model predicted, s; below nought is faster. */
    public EvidenceChoices predicting(double change) {
        return new EvidenceChoices(rule, trend, before, after, OptionalDouble.of(change), worth, resamples, seed);
    }
}
