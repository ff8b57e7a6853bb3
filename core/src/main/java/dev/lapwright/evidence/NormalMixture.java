package dev.lapwright.evidence;

import dev.lapwright.fault.Check;
import java.util.Arrays;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Mixture of normal distributions: what is known of a difference of lap times (s) when its error is not known itself, one
 * part for each set of variances that the laps allow, by its weight.
 */
public final class NormalMixture {
    /** Parts that weigh less than this share of the heaviest change no figure that is printed. */
    private static final double NO_WEIGHT = 1e-5;
    /** How near limits are found, s. */
    private static final double NEAR = 1e-6;

    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    private final double[] weight;
    private final double[] mean;
    private final double[] deviation;

    private NormalMixture(double[] weight, double[] mean, double[] deviation) {
        this.weight = weight;
        this.mean = mean;
        this.deviation = deviation;
    }

    /**
     * The mixture of these parts.
     *
     * @param logWeight of each part, natural logarithm, up to a constant; not modified
     * @param mean of each part, s; not modified
     * @param deviation standard deviation of each, s, above zero; not modified
     */
    static NormalMixture of(double[] logWeight, double[] mean, double... deviation) {
        double most = Arrays.stream(logWeight).max().orElseThrow();
        int kept = 0;
        double[] w = new double[mean.length];
        double[] m = new double[mean.length];
        double[] s = new double[mean.length];
        double sum = 0;
        for (int i = 0; i < mean.length; i++) {
            double share = Math.exp(logWeight[i] - most);
            if (share > NO_WEIGHT) {
                w[kept] = share;
                m[kept] = mean[i];
                s[kept] = deviation[i];
                sum += share;
                kept++;
            }
        }
        for (int i = 0; i < kept; i++) {
            w[i] /= sum;
        }
        return new NormalMixture(Arrays.copyOf(w, kept), Arrays.copyOf(m, kept), Arrays.copyOf(s, kept));
    }

    /** Mean, s. */
    public double mean() {
        double sum = 0;
        for (int i = 0; i < mean.length; i++) {
            sum += weight[i] * mean[i];
        }
        return sum;
    }

    /** Standard deviation, s. */
    public double deviation() {
        double middle = mean();
        double sum = 0;
        for (int i = 0; i < mean.length; i++) {
            double off = mean[i] - middle;
            sum += weight[i] * (deviation[i] * deviation[i] + off * off);
        }
        return Math.sqrt(sum);
    }

    /** Probability that the difference lies below this (s). */
    public double below(double value) {
        double sum = 0;
        for (int i = 0; i < mean.length; i++) {
            sum += weight[i] * NORMAL.cumulativeProbability((value - mean[i]) / deviation[i]);
        }
        return sum;
    }

    private static double normalDensity(double off, double deviation) {
        double z = off / deviation;
        return Math.exp(-z * z / 2) / (deviation * Math.sqrt(2 * Math.PI));
    }

    /** The difference (s) below which it lies with this probability, between 0 and 1. */
    public double quantile(double probability) {
        // The limits of its narrowest and widest part enclose that of the mixture.
        double z = NORMAL.inverseCumulativeProbability(probability);
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < mean.length; i++) {
            low = Math.min(low, mean[i] + z * deviation[i]);
            high = Math.max(high, mean[i] + z * deviation[i]);
        }
        if (high - low < NEAR) {
            return (low + high) / 2;
        }
        return new BrentSolver(NEAR).solve(200, value -> below(value) - probability, low, high);
    }

    /** Interval that leaves out half of this share on either side, as for a log that is looked at once. */
    public Interval interval(double share) {
        return new Interval(quantile(share / 2), quantile(1 - share / 2));
    }

    /**
     * The mixture together with a normal prediction of the same difference: Bayes' rule, part by part. Of one part it is the
     * mean weighted by inverse variances, 1/s² = 1/s1² + 1/s2².
     *
     * @param predicted s
     * @param doubt standard deviation of the prediction, s, above zero
     */
    public NormalMixture together(double predicted, double doubt) {
        Check.finite("predicted change (s)", predicted);
        Check.positive("doubt of the prediction (s)", doubt);
        int n = mean.length;
        double[] logWeight = new double[n];
        double[] m = new double[n];
        double[] s = new double[n];
        for (int i = 0; i < n; i++) {
            double seen = 1 / (deviation[i] * deviation[i]);
            double model = 1 / (doubt * doubt);
            logWeight[i] = Math.log(weight[i])
                    + Math.log(Math.max(
                            Double.MIN_NORMAL, normalDensity(mean[i] - predicted, Math.hypot(deviation[i], doubt))));
            m[i] = (seen * mean[i] + model * predicted) / (seen + model);
            s[i] = 1 / Math.sqrt(seen + model);
        }
        return of(logWeight, m, s);
    }

    /**
     * Interval of a difference of lap times.
     *
     * @param low s
     * @param high s
     */
    public record Interval(double low, double high) {
        /** Half its width, s. */
        public double half() {
            return (high - low) / 2;
        }

        /** Whether it holds a difference, s. */
        public boolean holds(double difference) {
            return low <= difference && difference <= high;
        }

        /** Whether it leaves nought out. */
        public boolean isSure() {
            return low > 0 || high < 0;
        }
    }
}
