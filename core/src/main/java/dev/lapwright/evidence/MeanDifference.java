package dev.lapwright.evidence;

import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.StatUtils;

/**
 * Difference of two mean lap times with its 95 % interval and p value: the t test of B. L. Welch, <i>Biometrika</i> 34 (1947), for samples that
 * need not scatter alike, with degrees of freedom by F. E. Satterthwaite, <i>Biometrics Bulletin</i> 2 (1946).
 *
 * @param difference s; below nought is faster
 * @param error its standard error, s
 * @param freedom degrees of freedom, need not be whole
 * @param low lower end of the 95 % interval, s
 * @param high upper end, s
 * @param p chance of a difference as large, of either sign, if there were none
 */
public record MeanDifference(double difference, double error, double freedom, double low, double high, double p) {
    /** The second mean less the first. */
    static MeanDifference of(Sample first, Sample second) {
        return of(List.of(first, second), new double[] {-1, 1}, 0, 1);
    }

    /**
     * A weighted sum of means.
     *
     * @param weights as many as samples, with the sum 0
     * @param more variance from elsewhere, s²: that of the trend taken out
     * @param freedom of that
     */
    static MeanDifference of(List<Sample> samples, double[] weights, double more, double freedom) {
        double difference = 0;
        double variance = more;
        double denominator = more * more / freedom;
        for (int i = 0; i < weights.length; i++) {
            Sample sample = samples.get(i);
            double part = weights[i] * weights[i] * sample.deviation() * sample.deviation() / sample.count();
            difference += weights[i] * sample.mean();
            variance += part;
            denominator += part * part / (sample.count() - 1);
        }
        double error = Math.sqrt(variance);
        double degrees = variance * variance / denominator;
        TDistribution t = new TDistribution(null, degrees);
        double half = t.inverseCumulativeProbability(0.975) * error;
        double p = 2 * t.cumulativeProbability(-Math.abs(difference) / error);
        return new MeanDifference(difference, error, degrees, difference - half, difference + half, p);
    }

    /** Difference over its standard error. */
    public double t() {
        return difference / error;
    }

    /** Whether chance alone makes one so large less often than {@link LapsToSee#SIGNIFICANCE}. */
    public boolean isSignificant() {
        return p < LapsToSee.SIGNIFICANCE;
    }

    /** Summary of a sample of lap times, as a test of means needs it: number, mean (s) and standard deviation (s). */
    record Sample(int count, double mean, double deviation) {
        static Sample of(double[] values) {
            return new Sample(values.length, StatUtils.mean(values), Math.sqrt(StatUtils.variance(values)));
        }

        /** The same with its variance multiplied. */
        Sample inflated(double factor) {
            return new Sample(count, mean, deviation * Math.sqrt(factor));
        }

        /** Standard deviation within two samples, taken to scatter alike. */
        static double pooled(Sample a, Sample b) {
            double squares = squares(a) + squares(b);
            return Math.sqrt(squares / (a.count + b.count - 2));
        }

        private static double squares(Sample sample) {
            return sample.count > 1 ? (sample.count - 1) * sample.deviation * sample.deviation : 0;
        }
    }
}
