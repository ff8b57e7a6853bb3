package dev.lapwright.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.descriptive.rank.Median;

/** A log and which of its laps count by a rule. */
public final class CleanLaps {
    private final TimingLog log;
    private final CleanRule rule;
    private final LapStatus[] status;
    private final Map<String, Double> slowLimits = new LinkedHashMap<>();
    private final Map<String, Double> fastLimits = new LinkedHashMap<>();

    private CleanLaps(TimingLog log, CleanRule rule) {
        this.log = log;
        this.rule = rule;
        status = new LapStatus[log.laps().size()];
    }

    /** Judges each lap. */
    public static CleanLaps of(TimingLog log, CleanRule rule) {
        CleanLaps clean = new CleanLaps(log, rule);
        int[] seen = new int[log.runs()];
        for (int i = 0; i < clean.status.length; i++) {
            boolean warmUp = seen[log.run(i)]++ < rule.warmUpLaps();
            clean.status[i] = switch (log.laps().get(i).flag()) {
                case OUT -> LapStatus.OUT;
                case IN -> LapStatus.IN;
                case SPOILT -> LapStatus.FLAGGED;
                case NONE -> warmUp ? LapStatus.WARM_UP : LapStatus.CLEAN;
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
        double room = Math.max(rule.slowLimit() * mad / CleanRule.MAD_SHARE, CleanRule.LEAST_ROOM * median);
        slowLimits.put(setup, median + room);
        fastLimits.put(setup, median - room);
        for (int i : clean(setup)) {
            if (log.laps().get(i).time() > median + room) {
                status[i] = LapStatus.SLOW;
            }
        }
    }

    public TimingLog log() {
        return log;
    }

    public CleanRule rule() {
        return rule;
    }

    /** How a lap was judged; laps are counted from 0. */
    public LapStatus status(int index) {
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
            TimedLap lap = log.laps().get(i);
            if (lap.time() < fastLimits.get(lap.setup())) {
                fast.add(i);
            }
        }
        return fast;
    }

    /** How many laps were judged so. */
    public int count(LapStatus wanted) {
        return (int) Arrays.stream(status).filter(s -> s == wanted).count();
    }

    /** The clean laps, counted from 0, in order. */
    public int[] clean() {
        return IntStream.range(0, status.length)
                .filter(i -> status[i] == LapStatus.CLEAN)
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
}
