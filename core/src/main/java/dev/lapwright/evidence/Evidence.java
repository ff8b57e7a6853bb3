package dev.lapwright.evidence;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.OptionalDouble;

/**
 * Study of a lap log for a change of setup: an immutable builder. {@code
 * Evidence.DEFAULT.between("wing=2", "wing=6").predicting(-0.28).run(log)}.
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
public record Evidence(
        CleanLaps.Rule rule,
        Trend.Kind trend,
        String before,
        String after,
        OptionalDouble predicted,
        double worth,
        int resamples,
        long seed) {
    /** The standard rule, trend within each run, the log's two setups, 0.1 s, 10 000 resamples, seed 1. */
    public static final Evidence DEFAULT =
            new Evidence(CleanLaps.Rule.DEFAULT, Trend.Kind.RUN, "", "", OptionalDouble.empty(), 0.1, 10_000, 1);

    /** Fewer clean laps than this with a setup are not tested: common practice, no source. */
    public static final int LEAST_LAPS = 3;

    private static final int LEAST_RESAMPLES = 100;
    private static final int MOST_RESAMPLES = 1_000_000;

    /** @throws InvalidValueException if a number is outside its range */
    public Evidence {
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

    /** The same with another rule for which laps count. */
    public Evidence rule(CleanLaps.Rule other) {
        return new Evidence(other, trend, before, after, predicted, worth, resamples, seed);
    }

    /** The same with another trend. */
    public Evidence trend(Trend.Kind other) {
        return new Evidence(rule, other, before, after, predicted, worth, resamples, seed);
    }

    /** The same for two setups by name; an empty one for that which the log offers. */
    public Evidence between(String first, String second) {
        return new Evidence(rule, trend, first, second, predicted, worth, resamples, seed);
    }

    /** The same with what a model predicted, s; below nought is faster. */
    public Evidence predicting(double change) {
        return predicted(OptionalDouble.of(change));
    }

    /** The same with what a model predicted, s, or with nothing predicted; below nought is faster. */
    public Evidence predicted(OptionalDouble change) {
        return new Evidence(rule, trend, before, after, change, worth, resamples, seed);
    }

    /** The same with another least change worth knowing, s. */
    public Evidence worth(double seconds) {
        return new Evidence(rule, trend, before, after, predicted, seconds, resamples, seed);
    }

    /** The same with another bootstrap: how many logs it draws, and from what seed. */
    public Evidence bootstrap(int logs, long start) {
        return new Evidence(rule, trend, before, after, predicted, worth, logs, start);
    }

    /**
     * What a log shows.
     *
     * @throws InvalidValueException if no lap is clean, the laps do not scatter, or it is not clear which setups to compare
     */
    public EvidenceResult run(TimingLog log) {
        return new Comparer(log, this).result();
    }
}
