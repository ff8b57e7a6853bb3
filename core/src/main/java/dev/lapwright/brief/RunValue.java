package dev.lapwright.brief;

import dev.lapwright.evidence.LapsToSee;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Value of driving a change, per lap: what the lap time is expected to gain if it is driven and then kept or put back by what is known by then,
 * over the laps that takes. Expected value of the better of two after a sample, both normal: H. Raiffa and R. Schlaifer, <i>Applied
 * Statistical Decision Theory</i>, 1961, chapter 5 (cited from memory). With the change's difference d known as N(m, s²) beforehand and
 * seen with the error e, what is known afterwards has a mean that is N(m, s⁴/(s² + e²)), and of it counts what is below nought.
 */
final class RunValue {
    /** Fewer laps with each setup cannot be split into two runs of two, without which nobody can say whether the old setup came back. */
    static final int FEWEST = 4;

    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    private final double scatter;
    private final int laps;

    /**
     * @param scatter standard deviation of lap times in one setup, s, above 0
     * @param laps that there are, all setups together
     */
    RunValue(double scatter, int laps) {
        this.scatter = scatter;
        this.laps = laps;
    }

    /** Laps with each of two setups to see a difference, s. */
    int lapsWithEach(double difference) {
        return Math.max(FEWEST, LapsToSee.perSetup(difference, scatter));
    }

    /**
     * Gain per lap driven, s, 0 or more.
     *
     * @param mean of the difference, s, minus where faster
     * @param deviation of it, s, 0 or more
     */
    double perLap(double mean, double deviation) {
        int each = Math.max(1, Math.min(lapsWithEach(mean), laps / 2));
        double error = scatter * Math.sqrt(2.0 / each);
        double known = deviation * deviation / Math.hypot(deviation, error);
        double gain = known > 0
                ? -mean * NORMAL.cumulativeProbability(-mean / known) + known * NORMAL.density(mean / known)
                : Math.max(0, -mean);
        return gain / (2 * each);
    }
}
