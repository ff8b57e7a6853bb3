package dev.lapwright.evidence;

import dev.lapwright.fault.Check;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * How many laps with each of two setups it takes to see a gain on the timing screen: the power of the two-sample t test with
 * laps that scatter alike and by chance (J. Cohen, <i>Statistical Power Analysis for the Behavioral Sciences</i>, 1988,
 * chapter 2; cited from memory). The statistic follows a noncentral t distribution, taken here as the mean of normal
 * probabilities over the distribution of the estimated scatter.
 */
public final class LapsToSee {
    /** Chance of calling a gain real when there is none, both signs together. */
    public static final double SIGNIFICANCE = 0.05;
    /** Chance of calling a gain real when it is. */
    public static final double POWER = 0.8;

    private static final int MOST = 1_000_000;
    private static final int NODES = 40;
    /** Share of the scatter's distribution left out at either end. */
    private static final double TAIL = 1e-13;

    /** Keeps the rule once it is made. */
    private static final GaussIntegratorFactory RULES = new GaussIntegratorFactory();

    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    private LapsToSee() {}

    /**
     * Laps with each setup, the fewest that give a power of {@link #POWER} at a significance of {@link #SIGNIFICANCE}.
     *
     * @param gain difference of the mean lap times, s; its sign does not matter
     * @param scatter standard deviation of lap times of one setup, s, above zero
     * @return at least 2; {@link Integer#MAX_VALUE} where a million laps would not do
     */
    public static int perSetup(double gain, double scatter) {
        Check.finite("gain (s)", gain);
        Check.positive("scatter (s)", scatter);
        double effect = Math.abs(gain) / scatter;
        if (power(MOST, effect) < POWER) {
            return Integer.MAX_VALUE;
        }
        int low = 1;
        int high = 2;
        while (power(high, effect) < POWER) {
            low = high;
            high *= 2;
        }
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (power(middle, effect) < POWER) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
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
        double from = spread.inverseCumulativeProbability(TAIL);
        double to = spread.inverseCumulativeProbability(1 - TAIL);
        // √W is the smoother variable: with few degrees of freedom W's density is steep at nought.
        GaussIntegrator rule = RULES.legendre(NODES, Math.sqrt(from), Math.sqrt(to));
        return rule.integrate(
                y -> 2 * y * spread.density(y * y) * NORMAL.cumulativeProbability(t * y / Math.sqrt(freedom) - shift));
    }
}
