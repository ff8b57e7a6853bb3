package dev.lapwright.evidence;

import dev.lapwright.fault.Check;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * Sample size for seeing a difference on the timing screen, in laps with each of two setups: the power of the two-sample t test
 * with laps that scatter alike and by chance (J. Cohen, <i>Statistical Power Analysis for the Behavioral Sciences</i>, 1988,
 * chapter 2; cited from memory). The statistic follows a noncentral t distribution, taken here as the mean of normal
 * probabilities over the distribution of the estimated scatter.
 */
public final class LapsToSee {
    /** Chance of calling a difference real when there is none, both signs together. */
    public static final double SIGNIFICANCE = 0.05;
    /** Chance of calling a difference real when it is. */
    public static final double POWER = 0.8;

    private static final int MOST = 1_000_000;
    private static final int FEWEST = 2;
    /** Relative difference below which two effects are the same. */
    private static final double SAME = 1e-9;

    private static final int NODES = 40;
    /** Share of the scatter's distribution left out at either end. */
    private static final double TAIL = 1e-13;

    /** Degrees of freedom from which the distribution of the estimated scatter is cut at a fixed distance. */
    private static final double MANY = 200;
    /** Eight standard deviations, which leave out less than 1e-14. */
    private static final double REACH = 8 * Math.sqrt(0.5);

    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);
    /** Taken once: its points are found in many digits. */
    private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(NODES);
    /** What a difference must be over its standard error if the scatter is known: both normal quantiles together. */
    private static final double KNOWN_SHIFT =
            NORMAL.inverseCumulativeProbability(1 - SIGNIFICANCE / 2) + NORMAL.inverseCumulativeProbability(POWER);

    private LapsToSee() {}

    /**
     * Laps with each setup, the fewest that give a power of {@link #POWER} at a significance of {@link #SIGNIFICANCE}.
     *
     * @param difference of the mean lap times, s; its sign does not matter
     * @param scatter standard deviation of lap times of one setup, s, above zero
     * @return at least 2; {@link Integer#MAX_VALUE} where a million laps would not do
     */
    public static int perSetup(double difference, double scatter) {
        Check.finite("difference (s)", difference);
        Check.positive("scatter (s)", scatter);
        double effect = Math.abs(difference) / scatter;
        // With the scatter known beforehand it would take a few laps less: where the search begins.
        double known = 2 * Math.pow(KNOWN_SHIFT / effect, 2);
        if (!(known <= MOST)) {
            return Integer.MAX_VALUE;
        }
        int low = Math.max(1, (int) known - 1);
        low = low > 1 && power(low, effect) >= POWER ? 1 : low;
        int step = 1;
        while (power(low + step, effect) < POWER) {
            low += step;
            step *= 2;
        }
        int high = low + step;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (power(middle, effect) < POWER) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high <= MOST ? high : Integer.MAX_VALUE;
    }

    /**
     * The least difference (s), without a sign, that so many laps with each setup show with a power of {@link #POWER}: the other way round from
     * {@link #perSetup}.
     *
     * @param laps with each setup, 2 to a million
     * @param scatter standard deviation of lap times of one setup, s, above zero
     */
    public static double visible(int laps, double scatter) {
        Check.inRange("laps with each setup", laps, FEWEST, MOST);
        Check.positive("scatter (s)", scatter);
        double low = 0;
        double high = KNOWN_SHIFT * Math.sqrt(2.0 / laps);
        while (power(laps, high) < POWER) {
            low = high;
            high *= 2;
        }
        while (high - low > SAME * high) {
            double middle = (low + high) / 2;
            if (power(laps, middle) < POWER) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high * scatter;
    }

    /**
     * Chance that a two-sided test at {@link #SIGNIFICANCE} finds a difference of means.
     *
     * @param laps with each setup, at least 2; need not be whole
     * @param effect difference over scatter
     */
    public static double power(double laps, double effect) {
        double freedom = 2 * laps - 2;
        double critical = new TDistribution(null, freedom).inverseCumulativeProbability(1 - SIGNIFICANCE / 2);
        double shift = effect * Math.sqrt(laps / 2);
        return noncentral(-critical, freedom, shift) + 1 - noncentral(critical, freedom, shift);
    }

    /** Probability that a noncentral t lies below a value: that of Z + shift below t √(W/ν), over W's distribution. */
    private static double noncentral(double t, double freedom, double shift) {
        ChiSquaredDistribution spread = new ChiSquaredDistribution(null, freedom);
        // √W is the smoother variable: with few degrees of freedom W's density is steep at nought. With many it is
        // nearly
        // normal with a variance of a half.
        double middle = Math.sqrt(freedom - 0.5);
        boolean many = freedom > MANY;
        double from = many ? middle - REACH : Math.sqrt(spread.inverseCumulativeProbability(TAIL));
        double to = many ? middle + REACH : Math.sqrt(spread.inverseCumulativeProbability(1 - TAIL));
        double half = (to - from) / 2;
        double sum = 0;
        for (int i = 0; i < NODES; i++) {
            double y = from + half * (1 + RULE.getPoint(i));
            double weight = RULE.getWeight(i) * 2 * y * spread.density(y * y);
            sum += weight * NORMAL.cumulativeProbability(t * y / Math.sqrt(freedom) - shift);
        }
        return half * sum;
    }
}
