package dev.lapwright.evidence;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.OptionalDouble;

/**
 * Study of a lap log for a change of setup: an immutable builder. {@code
 * Evidence.DEFAULT.between("wing=2", "wing=6").predicting(-0.28).run(log)}.
 *
 * @param rule which laps count
 * @param prior what is taken to be known of the day
 * @param before the setup to compare with; empty for the first in the log
 * @param after the setup to be judged; empty for the other one
 * @param predicted change of lap time from before to after that a model predicted, s; below nought is faster
 * @param predictedDoubt standard deviation of that prediction, s; if left out, {@link #DOUBT} of it
 * @param worth the least change worth knowing, s, above zero
 */
public record Evidence(
        CleanLaps.Rule rule,
        Prior prior,
        String before,
        String after,
        OptionalDouble predicted,
        OptionalDouble predictedDoubt,
        double worth) {
    /** The standard rule and priors, the log's two setups, no prediction, 0.1 s. */
    public static final Evidence DEFAULT = new Evidence(
            CleanLaps.Rule.DEFAULT, Prior.DEFAULT, "", "", OptionalDouble.empty(), OptionalDouble.empty(), 0.1);

    /** Fewer clean laps than this with a setup are not compared: common practice, no source. */
    public static final int LEAST_LAPS = 3;

    /** So often may one look at a log, laps being added in between, without more than 5 % false alarms in all. */
    public static final int LOOKS = 5;

    /** Doubt of a predicted change whose own is not known, as a share of it: common practice, no source. */
    public static final double DOUBT = 0.35;

    /** No change of a car is worth an hour a lap, s: more is a slip of the pen. */
    private static final double MOST_S = 3600;

    /** @throws InvalidValueException if a number is outside its range */
    public Evidence {
        if (predicted.isPresent()) {
            Check.inRange("predicted change (s)", predicted.getAsDouble(), -MOST_S, MOST_S);
        }
        if (predictedDoubt.isPresent()) {
            Check.positive("doubt of the prediction (s)", predictedDoubt.getAsDouble());
        }
        Check.positive("change worth knowing (s)", worth);
    }

    /** The same with another rule for which laps count. */
    public Evidence rule(CleanLaps.Rule other) {
        return new Evidence(other, prior, before, after, predicted, predictedDoubt, worth);
    }

    /** The same with other priors. */
    public Evidence prior(Prior other) {
        return new Evidence(rule, other, before, after, predicted, predictedDoubt, worth);
    }

    /** The same for two setups by name; an empty one for that which the log offers. */
    public Evidence between(String first, String second) {
        return new Evidence(rule, prior, first, second, predicted, predictedDoubt, worth);
    }

    /** The same with what a model predicted, s; below nought is faster. */
    public Evidence predicting(double change) {
        return predicted(OptionalDouble.of(change), OptionalDouble.empty());
    }

    /** The same with what a model predicted, s, and its standard deviation, s; either may be unknown. */
    public Evidence predicted(OptionalDouble change, OptionalDouble doubt) {
        return new Evidence(rule, prior, before, after, change, doubt, worth);
    }

    /** The same with another least change worth knowing, s. */
    public Evidence worth(double seconds) {
        return new Evidence(rule, prior, before, after, predicted, predictedDoubt, seconds);
    }

    /**
     * What a log shows.
     *
     * @throws InvalidValueException if no lap is clean, the laps do not scatter, or it is not clear which setups to compare
     */
    public EvidenceResult run(TimingLog log) {
        return new Comparer(log, this).result();
    }

    /** Doubt of the prediction, standard deviation, s; a tenth of what is worth knowing at least. */
    public double doubt() {
        return predictedDoubt.orElse(Math.max(worth / 10, DOUBT * Math.abs(predicted.orElse(0))));
    }

    /**
     * Share of logs without a difference that one look may call different, so that {@link #LOOKS} looks together keep to 5 %
     * however much they hang together: Z. &Scaron;id&aacute;k, <i>Journal of the American Statistical Association</i> 62 (1967)
     * 626 (cited from memory).
     */
    public double share() {
        return 1 - Math.pow(1 - LapsToSee.SIGNIFICANCE, 1.0 / LOOKS);
    }

    /**
     * What is taken to be known before the laps are seen. Slopes are normal about nought, by their standard deviations. All are
     * common practice, no source; docs/limits.md has their worth in seconds.
     *
     * @param runToRun deviation that the laps of one run share, beside their setup, s: tyres, road, air, driver. Its median; its
     *     logarithm is normal with {@link #LOG_RUN_TO_RUN}
     * @param lapSlope change from lap to lap within a run, s a lap: fuel and tyres
     * @param drift even change through the session, s a lap: road and driver; 0 for none
     * @param bend of that change, s a lap²: how it dies away; 0 for none
     * @param mostCorrelation of neighbouring laps: alike likely from 0 to this, which is below 1
     */
    public record Prior(double runToRun, double lapSlope, double drift, double bend, double mostCorrelation) {
        /** Runs differ by 0.15 s, slopes of 0.1 and 0.02 s a lap, a drift that is lost within 40 laps, and 0 to 0.8. */
        public static final Prior DEFAULT = new Prior(0.15, 0.1, 0.02, 0.0005, 0.8);
        /** The run-to-run deviation is known to a factor of e to this: 1.8. */
        public static final double LOG_RUN_TO_RUN = 0.6;

        /** @throws InvalidValueException if one is outside its range */
        public Prior {
            Check.inRange("run-to-run deviation (s)", runToRun, 0, 60);
            Check.inRange("change from lap to lap (s a lap)", lapSlope, 0, 60);
            Check.inRange("drift (s a lap)", drift, 0, 60);
            Check.inRange("bend of the drift (s a lap²)", bend, 0, 60);
            Check.inRange("largest correlation of neighbouring laps", mostCorrelation, 0, 0.95);
        }

        /** The same with runs that differ otherwise, s; 0 for runs that differ in nothing but their setup. */
        public Prior runToRun(double seconds) {
            return new Prior(seconds, lapSlope, drift, bend, mostCorrelation);
        }

        /** The same with another drift, s a lap, and bend, s a lap². */
        public Prior drift(double even, double bending) {
            return new Prior(runToRun, lapSlope, even, bending, mostCorrelation);
        }
    }
}
