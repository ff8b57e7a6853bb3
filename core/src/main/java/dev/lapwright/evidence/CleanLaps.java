package dev.lapwright.evidence;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.descriptive.rank.Median;

/** Lap log with a judgement of each lap: clean, and so counted in all that follows, or left out, and why. */
public final class CleanLaps {
    private final TimingLog log;
    private final Rule rule;
    private final Status[] status;
    private final Map<String, Double> slowLimits = new LinkedHashMap<>();
    private final Map<String, Double> fastLimits = new LinkedHashMap<>();

    private CleanLaps(TimingLog log, Rule rule) {
        this.log = log;
        this.rule = rule;
        status = new Status[log.laps().size()];
    }

    /** The log with each of its laps judged by the rule. */
    public static CleanLaps of(TimingLog log, Rule rule) {
        CleanLaps clean = new CleanLaps(log, rule);
        int[] seen = new int[log.runs()];
        for (int i = 0; i < clean.status.length; i++) {
            boolean warmUp = seen[log.run(i)]++ < rule.warmUpLaps();
            clean.status[i] = switch (log.laps().get(i).flag()) {
                case OUT -> Status.OUT;
                case IN -> Status.IN;
                case SPOILT -> Status.FLAGGED;
                case NONE -> warmUp ? Status.WARM_UP : Status.CLEAN;
            };
        }
        log.setups().forEach(clean::judgeSlow);
        return clean;
    }

    private void judgeSlow(String setup) {
        double[] times = times(setup);
        double median = new Median().evaluate(times);
        double mad = new Median()
                .evaluate(Arrays.stream(times)
                        .map(time -> Math.abs(time - median))
                        .toArray());
        double room = Math.max(rule.slowLimit() * mad / Rule.MAD_SHARE, Rule.LEAST_ROOM * median);
        slowLimits.put(setup, median + room);
        fastLimits.put(setup, median - room);
        for (int i : clean(setup)) {
            if (log.laps().get(i).time() > median + room) {
                status[i] = Status.SLOW;
            }
        }
    }

    public TimingLog log() {
        return log;
    }

    public Rule rule() {
        return rule;
    }

    /** How a lap was judged; laps are counted from 0. */
    public Status status(int index) {
        return status[index];
    }

    /** Laps of a setup slower than this do not count, s; NaN where none was left to judge. */
    public double slowLimit(String setup) {
        return slowLimits.get(setup);
    }

    /** Clean laps that are as far below their setup's median as a slow lap may be above it: a tow, a short cut, a fault. */
    public List<Integer> oddlyFast() {
        List<Integer> fast = new ArrayList<>();
        for (int i : clean()) {
            TimingLog.Lap lap = log.laps().get(i);
            if (lap.time() < fastLimits.get(lap.setup())) {
                fast.add(i);
            }
        }
        return fast;
    }

    /** How many laps were judged so. */
    public int count(Status wanted) {
        return (int) Arrays.stream(status).filter(s -> s == wanted).count();
    }

    /** The clean laps, counted from 0, in order. */
    public int[] clean() {
        return IntStream.range(0, status.length)
                .filter(i -> status[i] == Status.CLEAN)
                .toArray();
    }

    /** The clean laps of a setup, counted from 0, in order. */
    public int[] clean(String setup) {
        return Arrays.stream(clean())
                .filter(i -> log.laps().get(i).setup().equals(setup))
                .toArray();
    }

    /** Times of the clean laps of a setup, s, in order. */
    public double[] times(String setup) {
        return Arrays.stream(clean(setup))
                .mapToDouble(i -> log.laps().get(i).time())
                .toArray();
    }

    /**
     * Rule for leaving laps out. Those that the log flags do not count; nor do the first of each run; nor, of the rest, those slower than their
     * setup's median by more than so many robust standard deviations, MAD/0.6745 with MAD the median absolute deviation.
     *
     * @param warmUpLaps how many laps at the beginning of each run do not count, 0 or more
     * @param slowLimit robust standard deviations, 1 to 100
     */
    public record Rule(int warmUpLaps, double slowLimit) {
        /**
         * One lap, and 3.5: the modified z score of B. Iglewicz and D. Hoaglin (1993), in NIST/SEMATECH, <i>e-Handbook of
         * Statistical Methods</i>, 1.3.5.17; here towards the slow side only.
         */
        public static final Rule DEFAULT = new Rule(1, 3.5);

        /** Share of a normal distribution's standard deviation that is its MAD, as that handbook rounds it. */
        static final double MAD_SHARE = 0.6745;

        /** The limit lies at least so far above the median, as a share of it: common practice, no source. */
        static final double LEAST_ROOM = 0.005;

        /** @throws InvalidValueException if one is outside its range */
        public Rule {
            if (warmUpLaps < 0) {
                throw new InvalidValueException("warm-up laps", warmUpLaps + " is below nought", "give 0 or more");
            }
            Check.inRange("slow limit (robust standard deviations)", slowLimit, 1, 100);
        }
    }

    /** Judgement of a lap: clean, or the reason why it is left out. */
    public enum Status {
        /** It counts. */
        CLEAN("clean"),
        /** The log flags it as an out lap. */
        OUT("out lap"),
        /** The log flags it as an in lap. */
        IN("in lap"),
        /** The log flags it as spoilt. */
        FLAGGED("flagged"),
        /** It is the first of its run, or one of the first. */
        WARM_UP("first of a run"),
        /** It is too much slower than its setup's median. */
        SLOW("slow");

        private final String label;

        Status(String label) {
            this.label = label;
        }

        /** For people. */
        public String label() {
            return label;
        }
    }
}
