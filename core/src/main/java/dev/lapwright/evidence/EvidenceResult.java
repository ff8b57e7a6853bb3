package dev.lapwright.evidence;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.descriptive.rank.Median;

/**
 * Result of the study of a lap log: the laps as judged, the pace of each setup, and the comparison of two.
 *
 * @param choices what was asked
 * @param laps the log, and which laps count
 * @param trend that was taken out
 * @param paces of all setups in the order of their first laps; unmodifiable
 * @param comparison of two setups; empty if the log holds but one
 */
public record EvidenceResult(
        Evidence choices, CleanLaps laps, Trend trend, List<SetupPace> paces, Optional<Comparison> comparison) {
    public EvidenceResult {
        paces = List.copyOf(paces);
    }

    /**
     * Pace of one setup over its clean laps. All but best and median are NaN where there are too few.
     *
     * @param setup its name
     * @param logged laps with it, clean or not
     * @param clean laps that count
     * @param best s
     * @param median s
     * @param mean with the trend taken out, s
     * @param spread standard deviation with the trend taken out, s
     * @param lapToLap standard deviation by the differences of laps that follow each other in a run, s: no slow change of any
     *     shape counts in it
     */
    public record SetupPace(
            String setup,
            int logged,
            int clean,
            double best,
            double median,
            double mean,
            double spread,
            double lapToLap) {
        /**
         * Mean range of two values from a normal distribution, over its standard deviation: d2 of charts for individuals, as in
         * NIST/SEMATECH, <i>e-Handbook of Statistical Methods</i>, 6.3.2.2.
         */
        private static final double MOVING_RANGE = 1.128;

        static SetupPace of(CleanLaps laps, Trend trend, String setup) {
            TimingLog log = laps.log();
            int[] clean = laps.clean(setup);
            double[] times = laps.times(setup);
            double[] without =
                    Arrays.stream(clean).mapToDouble(i -> trend.without(log, i)).toArray();
            int logged = (int)
                    log.laps().stream().filter(lap -> lap.setup().equals(setup)).count();
            double spread = times.length > 1 ? Math.sqrt(trend.inflation() * StatUtils.variance(without)) : Double.NaN;
            return new SetupPace(
                    setup,
                    logged,
                    times.length,
                    times.length > 0 ? StatUtils.min(times) : Double.NaN,
                    new Median().evaluate(times),
                    StatUtils.mean(without),
                    spread,
                    lapToLap(log, clean));
        }

        private static double lapToLap(TimingLog log, int... clean) {
            double sum = 0;
            int count = 0;
            for (int k = 1; k < clean.length; k++) {
                boolean follows = log.run(clean[k]) == log.run(clean[k - 1])
                        && log.sessionLap(clean[k]) == log.sessionLap(clean[k - 1]) + 1;
                if (follows) {
                    sum += Math.abs(log.laps().get(clean[k]).time()
                            - log.laps().get(clean[k - 1]).time());
                    count++;
                }
            }
            return count > 0 ? sum / count / MOVING_RANGE : Double.NaN;
        }

        /** Spread over median: the smaller, the more alike the laps. */
        public double consistency() {
            return spread / median;
        }
    }

    /**
     * Comparison of two setups.
     *
     * @param before the setup compared with
     * @param after the setup judged
     * @param scatter standard deviation of clean laps within the two, trend taken out, s; NaN if there are too few
     * @param tests empty if one setup has fewer than {@link Evidence#LEAST_LAPS} clean laps
     * @param returned whether the setup before came back, if it was run again; each time with two clean laps or more
     * @param verdict what it all says
     */
    public record Comparison(
            SetupPace before,
            SetupPace after,
            double scatter,
            Optional<Tests> tests,
            Optional<ReturnCheck> returned,
            Verdict verdict) {}

    /**
     * Tests of one difference in several ways.
     *
     * @param welch of the means; it alone decides
     * @param rankSum of the ranks
     * @param bootstrap of the means, by resampling
     * @param byTrend difference of the means for each way to take out a trend; unmodifiable
     */
    public record Tests(
            MeanDifference welch,
            RankSum rankSum,
            BootstrapInterval bootstrap,
            Map<Trend.Kind, MeanDifference> byTrend) {
        public Tests {
            byTrend = Map.copyOf(byTrend);
        }

        /** Whether the ranks say the same as the means. */
        public boolean rankSumAgrees() {
            return welch.isSignificant() == rankSum.p() < LapsToSee.SIGNIFICANCE;
        }

        /** Whether the bootstrap's interval leaves out nought if the means say so, and holds it if they do not. */
        public boolean bootstrapAgrees() {
            return welch.isSignificant() == (bootstrap.low() > 0 || bootstrap.high() < 0);
        }

        /** Whether another way to take out the trend would say something else: no difference, one, or one of the other sign. */
        public boolean dependsOn(Trend.Kind kind) {
            MeanDifference other = byTrend.get(kind);
            boolean otherSign = welch.isSignificant()
                    && other.isSignificant()
                    && Math.signum(other.difference()) != Math.signum(welch.difference());
            return welch.isSignificant() != other.isSignificant() || otherSign;
        }
    }

    /**
     * Check of whether the old setup came back to its lap time when it was run again: what changed meanwhile was not the setup.
     *
     * @param firstLaps clean laps with it before the new setup's first
     * @param lastLaps clean laps with it after the new setup's last
     * @param change its mean afterwards less its mean before
     * @param bracketed the new setup's mean less the middle of those two: a drift that goes on evenly falls out
     */
    public record ReturnCheck(int firstLaps, int lastLaps, MeanDifference change, MeanDifference bracketed) {
        /** Whether it is sure that the old setup did not come back. */
        public boolean drifted() {
            return change.isSignificant();
        }

        /** Whether it is sure that the old setup came back to within the difference that the new one makes. */
        public boolean cameBack() {
            double size = Math.abs(bracketed.difference());
            return !drifted() && change.low() > -size && change.high() < size;
        }

        /** Whether the new setup lies beyond both runs of the old one, and surely off their middle. */
        public boolean isBeyondBoth() {
            return bracketed.isSignificant() && Math.abs(bracketed.difference()) > Math.abs(change.difference()) / 2;
        }
    }

    /**
     * Verdict on a change, and how many laps it takes.
     *
     * @param finding what they say
     * @param target the change looked for, s, without sign: what a model predicted, or else the change seen, but no less than
     *     what is worth knowing
     * @param needed clean laps with each setup to see that change; {@link Integer#MAX_VALUE} for more than a million; 0 if the
     *     scatter is not known
     * @param moreBefore laps still to run with the setup before, to have as many
     * @param moreAfter laps still to run with the setup after
     */
    public record Verdict(Finding finding, double target, int needed, int moreBefore, int moreAfter) {
        static Verdict of(Finding finding, double target, int needed, int before, int after) {
            return new Verdict(finding, target, needed, Math.max(0, needed - before), Math.max(0, needed - after));
        }
    }

    /** Answer of the laps about a change. */
    public enum Finding {
        /** There is a difference. */
        REAL("real"),
        /** The laps would have shown a difference of the size looked for, and do not. */
        NOT_SHOWN("not shown"),
        /** The old setup did not come back: the change cannot be told from what changed meanwhile. */
        DRIFTED("not shown: drift"),
        /** The laps are too few to show a difference of the size looked for. */
        TOO_FEW("too few laps");

        private final String label;

        Finding(String label) {
            this.label = label;
        }

        /** For people. */
        public String label() {
            return label;
        }
    }
}
