package dev.lapwright.evidence;

import java.util.Arrays;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.descriptive.rank.Median;

/**
 * The clean laps of one setup. All but best and median are NaN where there are too few.
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
        String setup, int logged, int clean, double best, double median, double mean, double spread, double lapToLap) {
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
