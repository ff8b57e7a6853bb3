package dev.lapwright.track.survey;

import dev.lapwright.numerics.CyclicBandedCholesky;
import dev.lapwright.track.survey.RoadPosterior.Errors;
import dev.lapwright.track.survey.RoadPosterior.WanderKind;

/**
 * The precision matrix of the errors of points on a closed line, over that of a point's own: W = (I + P Q⁻¹ Pᵀ)⁻¹, with Q the precision of what
 * neighbours have in common at even steps and P the interpolation between them, by Woodbury's identity.
 */
final class CommonErrors {
    private final int per;
    private final int[] low;
    private final int[] high;
    private final double[] share;
    private final CyclicBandedCholesky factor;
    private final int order;

    /**
     * @param line about which the points stand
     * @param on the points
     */
    CommonErrors(ReferenceLine line, RoadPosterior.Placed on, Errors errors) {
        int n = on.foot().length;
        int nodes = line.count();
        per = on.laps();
        low = new int[n];
        high = new int[n];
        share = new double[n];
        if (errors.kind() == WanderKind.NONE) {
            factor = null;
            order = 0;
            return;
        }
        double[] q = new WanderPrecision(errors, line.step(), line.cosines()).diagonals();
        order = nodes * per;
        int bands = per * (q.length - 1);
        double[] matrix = new double[order * (bands + 1)];
        for (int i = 0; i < order; i++) {
            for (int k = 0; k < q.length; k++) {
                matrix[i * (bands + 1) + per * k] += q[k];
            }
        }
        for (int p = 0; p < n; p++) {
            int cell = Math.min(nodes - 1, (int) (on.foot()[p] / line.step()));
            share[p] = on.foot()[p] / line.step() - cell;
            low[p] = cell * per + on.lap()[p];
            high[p] = (cell + 1) % nodes * per + on.lap()[p];
            matrix[low[p] * (bands + 1)] += (1 - share[p]) * (1 - share[p]);
            matrix[high[p] * (bands + 1)] += share[p] * share[p];
            matrix[low[p] * (bands + 1) + per] += share[p] * (1 - share[p]);
        }
        factor = new CyclicBandedCholesky(order, bands);
        factor.factor(matrix);
    }

    /** W times values at the points. */
    double[] weighted(double[] values) {
        if (factor == null) {
            return values;
        }
        double[] common = new double[order];
        for (int p = 0; p < values.length; p++) {
            common[low[p]] += (1 - share[p]) * values[p];
            common[high[p]] += share[p] * values[p];
        }
        factor.solve(common);
        double[] left = values.clone();
        for (int p = 0; p < values.length; p++) {
            left[p] -= (1 - share[p]) * common[low[p]] + share[p] * common[high[p]];
        }
        return left;
    }
}
