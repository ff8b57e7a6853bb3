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

    private WordUpdate(RealVector shift, RealMatrix covariance) {
        this.shift = shift;
        this.covariance = covariance;
    }

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
        double variance = Math.max(h.dotProduct(vh), Double.MIN_NORMAL);
        double total = variance + word.error() * word.error();
        double moved;
        double kept;
        if (word.first() == LimitWord.End.BOTH) {
            moved = -margin * variance / total;
            kept = variance * word.error() * word.error() / total;
        } else {
            double sign = word.first() == LimitWord.End.FRONT ? 1 : -1;
            double t = sign * margin / Math.sqrt(total);
            double chance = NORMAL.cumulativeProbability(t);
            double ratio = chance > LEAST ? NORMAL.density(t) / chance : -t;
            moved = sign * variance * ratio / Math.sqrt(total);
            kept = variance * (1 - variance / total * ratio * (t + ratio));
        }
        RealMatrix less = vh.outerProduct(vh).scalarMultiply((variance - kept) / (variance * variance));
        return new WordUpdate(vh.mapMultiply(moved / variance), covariance.subtract(less));
    }
}
