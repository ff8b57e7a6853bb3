package dev.lapwright.fit;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Bayesian update of normal unknowns by a {@link LimitWord} on a margin m = h·z that is linear in them. A word "front first" has the
 * likelihood Φ(m/σ), "rear first" Φ(−m/σ); the mean and variance of the margin given the word are exact, and the unknowns follow it
 * (moment matching; Rasmussen and Williams, Gaussian Processes for Machine Learning, 2006, section 3.9, from memory). "Both at once" is a
 * reading of m = 0 with the deviation σ.
 */
final class WordUpdate {
    private static final NormalDistribution NORMAL = new NormalDistribution();
    /** Of Φ; below, a word is against all that was known, and its logarithm's slope is −t. */
    private static final double LEAST = 1e-300;

    /** Shift of the unknowns. */
    final RealVector shift;
    /** Their covariance thereafter. */
    final RealMatrix covariance;

    /**
     * The update.
     *
     * @param margin expected before the word
     * @param slopes h, of the margin with each unknown
     * @param covariance of the unknowns before
     */
    static WordUpdate of(LimitWord word, double margin, double[] slopes, RealMatrix covariance) {
        RealVector h = new ArrayRealVector(slopes, false);
        RealVector vh = covariance.operate(h);
        if (word.first() == LimitWord.End.BOTH) {
            return reading(-margin, word.error(), slopes, covariance);
        }
        double variance = Math.max(h.dotProduct(vh), Double.MIN_NORMAL);
        double total = variance + word.error() * word.error();
        double sign = word.first() == LimitWord.End.FRONT ? 1 : -1;
        double t = sign * margin / Math.sqrt(total);
        double chance = NORMAL.cumulativeProbability(t);
        double ratio = chance > LEAST ? NORMAL.density(t) / chance : -t;
        double moved = sign * variance * ratio / Math.sqrt(total);
        double kept = variance * (1 - variance / total * ratio * (t + ratio));
        return new WordUpdate(vh, variance, moved, kept, covariance);
    }

    /**
     * The update by a reading of what is linear in the unknowns.
     *
     * @param difference of the reading to what was expected
     * @param error standard deviation of the reading
     */
    static WordUpdate reading(double difference, double error, double[] slopes, RealMatrix covariance) {
        RealVector h = new ArrayRealVector(slopes, false);
        RealVector vh = covariance.operate(h);
        double variance = Math.max(h.dotProduct(vh), Double.MIN_NORMAL);
        double total = variance + error * error;
        return new WordUpdate(
                vh, variance, difference * variance / total, variance * error * error / total, covariance);
    }

    private WordUpdate(RealVector vh, double variance, double moved, double kept, RealMatrix covariance) {
        RealMatrix less = vh.outerProduct(vh).scalarMultiply((variance - kept) / (variance * variance));
        shift = vh.mapMultiply(moved / variance);
        this.covariance = covariance.subtract(less);
    }
}
