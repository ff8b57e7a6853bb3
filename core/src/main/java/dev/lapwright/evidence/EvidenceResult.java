package dev.lapwright.evidence;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.descriptive.rank.Median;

/**
 * Result of the study of a lap log: the laps as judged, the course of the day, the pace of each setup, and the comparison of two.
 *
 * @param how what was asked
 * @param laps the log, and which laps count
 * @param course of lap times over run and session; flat where there are too few laps to tell
 * @param paces of all setups in the order of their first laps; unmodifiable
 * @param comparison of two setups; empty if the log holds but one
 * @param plan of runs that would tell; empty where the answer is there, or too little is known of the scatter
 */
public record EvidenceResult(
        Evidence how,
        CleanLaps laps,
        Course course,
        List<SetupPace> paces,
        Optional<Comparison> comparison,
        Optional<DayPlan> plan) {
    public EvidenceResult {
        paces = List.copyOf(paces);
    }

    /**
     * Course of lap times over the lap of a run and through the session, the same for all setups.
     *
     * @param lapSlope s a lap of a run
     * @param drift s a lap of the session, at its middle
     * @param bend s a lap²
     * @param lapOfRun where lap times are compared: the mean of the clean laps
     * @param lapOfSession the same in the session
     */
    public record Course(Slope lapSlope, Slope drift, Slope bend, double lapOfRun, double lapOfSession) {
        /** None known. */
        public static final Course FLAT = new Course(Slope.NONE, Slope.NONE, Slope.NONE, 0, 0);

        /** What to take from the time of a lap, counted from 0, s. */
        public double share(TimingLog log, int lap) {
            double run = log.runLap(lap) - lapOfRun;
            double session = log.sessionLap(lap) - lapOfSession;
            return lapSlope.value * run + drift.value * session + bend.value * session * session;
        }

        /** Time of a lap without it, s; the lap counted from 0. */
        public double without(TimingLog log, int lap) {
            return log.laps().get(lap).time() - share(log, lap);
        }
    }

    /**
     * Change of lap times with the laps, and its 95 % interval.
     *
     * @param value s a lap, or s a lap²
     * @param low the same
     * @param high the same
     */
    public record Slope(double value, double low, double high) {
        static final Slope NONE = new Slope(0, 0, 0);

        static Slope of(NormalMixture known) {
            NormalMixture.Interval interval = known.interval(LapsToSee.SIGNIFICANCE);
            return new Slope(known.mean(), interval.low(), interval.high());
        }
    }

    /**
     * Pace of one setup over its clean laps. All but best and median are NaN where there are too few.
     *
     * @param setup its name
     * @param logged laps with it, clean or not
     * @param runs with clean laps
     * @param clean laps that count
     * @param best s
     * @param median s
     * @param mean with the day's course taken out, s
     * @param spread standard deviation with the day's course taken out, s
     * @param lapToLap standard deviation by the differences of laps that follow each other in a run, s: no slow change of any
     *     shape counts in it
     */
    public record SetupPace(
            String setup,
            int logged,
            int runs,
            int clean,
            double best,
            double median,
            double mean,
            double spread,
            double lapToLap) {
        /**
         * Mean range of two values from a normal distribution, over its standard deviation: d2 of charts for individuals, as
         * in NIST/SEMATECH, <i>e-Handbook of Statistical Methods</i>, 6.3.2.2.
         */
        private static final double MOVING_RANGE = 1.128;

        static SetupPace of(CleanLaps laps, Course course, String setup) {
            TimingLog log = laps.log();
            int[] clean = laps.clean(setup);
            double[] times = laps.times(setup);
            double[] without = Arrays.stream(clean)
                    .mapToDouble(i -> course.without(log, i))
                    .toArray();
            int logged = (int)
                    log.laps().stream().filter(lap -> lap.setup().equals(setup)).count();
            return new SetupPace(
                    setup,
                    logged,
                    (int) Arrays.stream(clean).map(log::run).distinct().count(),
                    times.length,
                    times.length > 0 ? StatUtils.min(times) : Double.NaN,
                    new Median().evaluate(times),
                    StatUtils.mean(without),
                    times.length > 1 ? Math.sqrt(StatUtils.variance(without)) : Double.NaN,
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
     * @param differences under each assumption looked at, that which decides among them; empty if one setup has fewer than
     *     {@link Evidence#LEAST_LAPS} clean laps; unmodifiable
     * @param scatter of the laps; empty together with the differences
     * @param together with what a model predicted; empty without a prediction or a difference
     * @param verdict what it all says
     */
    public record Comparison(
            SetupPace before,
            SetupPace after,
            Map<Assumption, Difference> differences,
            Optional<Scatter> scatter,
            Optional<NormalMixture> together,
            Verdict verdict) {
        public Comparison {
            differences = Map.copyOf(differences);
        }

        /** The difference that decides; empty if there are too few laps for one. */
        public Optional<Difference> difference() {
            return Optional.ofNullable(differences.get(Assumption.DAY));
        }

        /** Runs with clean laps of the two setups. */
        public int runs() {
            return before.runs + after.runs;
        }
    }

    /** Assumption about the day under which a difference is looked at. */
    public enum Assumption {
        /** All that the priors allow: this one decides. */
        DAY("drift may bend"),
        /** No bend of the drift. */
        EVEN_DRIFT("even drift"),
        /** No drift through the session. */
        NO_DRIFT("no drift"),
        /** The spread of runs by these laps alone, by restricted likelihood, without a prior. */
        RUNS_ALONE("no prior for the runs"),
        /** Runs that differ half as much as the prior says. */
        RUNS_HALF("runs half as different"),
        /** Runs that differ twice as much. */
        RUNS_TWICE("runs twice as different");

        private final String label;

        Assumption(String label) {
            this.label = label;
        }

        /** For people. */
        public String label() {
            return label;
        }
    }

    /**
     * Difference of lap times of two setups; below nought the second is faster.
     *
     * @param mean s
     * @param once 95 % interval for a log that is looked at once
     * @param repeated interval that keeps to 95 % through {@link Evidence#LOOKS} looks, laps being added in between
     * @param faster chance that the second setup is faster, as far as this log tells
     */
    public record Difference(double mean, NormalMixture.Interval once, NormalMixture.Interval repeated, double faster) {
        static Difference of(NormalMixture known, double share) {
            return new Difference(
                    known.mean(), known.interval(LapsToSee.SIGNIFICANCE), known.interval(share), known.below(0));
        }

        /** Whether the other leaves nought out on the same side, looked at once. */
        boolean agrees(Difference other) {
            return other.once.isSure() && Math.signum(other.mean) == Math.signum(mean);
        }
    }

    /**
     * Scatter of the clean laps, all setups together.
     *
     * @param lap standard deviation from lap to lap, s
     * @param run that which the laps of a run share, s, the prior weighed in
     * @param runAlone the same without the prior, by restricted maximum likelihood, s; it may be 0
     * @param correlation of neighbouring laps
     * @param freedom degrees of freedom of the difference without the prior, by Satterthwaite; empty where runs are too few
     */
    public record Scatter(double lap, double run, double runAlone, double correlation, OptionalDouble freedom) {}

    /**
     * Verdict on a change.
     *
     * @param finding what the laps say
     * @param target change looked for, s, without sign: what a model predicted, or else the change seen, but no less than
     *     what is worth knowing
     * @param dissent assumptions under which the laps, looked at once, would not say the same; unmodifiable
     */
    public record Verdict(Finding finding, double target, List<Assumption> dissent) {
        public Verdict {
            dissent = List.copyOf(dissent);
        }
    }

    /** Answer of the laps about a change. */
    public enum Finding {
        /** There is a difference. */
        REAL("real"),
        /** If there is one, it is smaller than that looked for. */
        SMALLER("smaller than looked for"),
        /** The laps do not decide. */
        OPEN("open");

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
