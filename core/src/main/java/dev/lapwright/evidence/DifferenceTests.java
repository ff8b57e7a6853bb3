package dev.lapwright.evidence;

import java.util.Map;

/**
 * A difference looked at in several ways.
 *
 * @param welch of the means; it alone decides
 * @param rankSum of the ranks
 * @param bootstrap of the means, by resampling
 * @param byTrend difference of the means for each way to take out a trend; unmodifiable
 */
public record DifferenceTests(
        MeanDifference welch, RankSum rankSum, BootstrapInterval bootstrap, Map<TrendKind, MeanDifference> byTrend) {
    public DifferenceTests {
        byTrend = Map.copyOf(byTrend);
    }

    /** Whether the ranks say the same as the means. */
    public boolean rankSumAgrees() {
        return welch.isSignificant() == rankSum.p() < LapsToSee.SIGNIFICANCE;
    }

    /** Whether the bootstrap's interval leaves out nought if the means say so, and holds it if they do not. */
    public boolean bootstrapAgrees() {
        return welch.isSignificant() == (bootstrap.low() > 0 || bootstrap.high() < 0);
    }

    /** Whether another way to take out the trend would say something else: no difference, one, or one of the other sign. */
    public boolean dependsOn(TrendKind kind) {
        MeanDifference other = byTrend.get(kind);
        boolean otherSign = welch.isSignificant()
                && other.isSignificant()
                && Math.signum(other.difference()) != Math.signum(welch.difference());
        return welch.isSignificant() != other.isSignificant() || otherSign;
    }
}
