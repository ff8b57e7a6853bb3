package dev.lapwright.track.survey;

import dev.lapwright.numerics.CyclicBandedCholesky;
import java.util.Arrays;
import java.util.Random;

/**
 * The posterior of a road beside a reference line, given surveyed points: a linear problem with normal errors. Its unknowns are
 * the offsets n of the line's nodes to the left (m), whose curvature is κ = κ₀ + n″ + κ₀² n, and where points wander together,
 * the wander w at the nodes (m).
 *
 * <p>A point errs across the line by w and by an error of its own, of variance σ². The road is a priori rough by κ″ − κ/ℓ²,
 * which is taken for white noise; w for a stationary process. So it minimises
 *
 * <pre>Σ (d − n − w)² + λ ∫ v(s) (κ″ − κ/ℓ²)² ds + σ² wᵀ Q w</pre>
 *
 * where d is how far a point lies beside the line, ℓ the length of corners and v a weight that lets the road be rough where it
 * is. λ and w's variance and length are those of the greatest restricted likelihood (H. D. Patterson and R. Thompson, Biometrika
 * 58, 1971; for splines G. Wahba, Annals of Statistics 13, 1985; both cited from memory).
 */
final class RoadPosterior {
    private static final int REACH = 4;
    private static final double LEAST_VARIANCE = 1e-12;

    /**
     * A stationary error that neighbouring points have in common.
     *
     * @param kind none, or how smooth it is
     * @param ratio of its variance to that of the points' own errors
     * @param length over which it is correlated, m
     */
    record Wander(WanderKind kind, double ratio, double length) {
        static final Wander NONE = new Wander(WanderKind.NONE, 0, 1);
    }

    /** Kinds of correlated errors by the power of 1/(1/ℓ² + ω²) in their spectrum: Matérn's of smoothness 1/2, 3/2 and 7/2. */
    enum WanderKind {
        /** Points err on their own. */
        NONE(0),
        /** As an Ornstein and Uhlenbeck process: a receiver's drift. */
        ROUGH(1),
        /** Once differentiable. */
        SMOOTH(2),
        /** Three times differentiable: points that somebody has smoothed. */
        SMOOTHED(4);

        private final int power;

        WanderKind(int power) {
            this.power = power;
        }
    }

    private final ReferenceLine line;
    private final int nodes;
    private final int points;
    private final int[] cell;
    private final double[] share;
    private final double[] beside;
    private final double rate;
    /** Rows of κ″ − κ/ℓ² = B n + c, five entries each, about the diagonal. */
    private final double[] rough;

    private final double[] constant;
    private final double[] weight;

    /**
     * @param line to look beside
     * @param x of the points, m
     * @param y of the points, m
     * @param foot of each point on the line, m from its start
     * @param rate 1/ℓ, 1/m; 0 for a road that is rough in κ″ alone
     */
    RoadPosterior(ReferenceLine line, double[] x, double[] y, double[] foot, double rate) {
        this.line = line;
        this.rate = rate;
        nodes = line.count();
        cell = new int[x.length];
        share = new double[x.length];
        beside = new double[x.length];
        points = x.length;
        for (int i = 0; i < points; i++) {
            double u = foot[i] / line.step();
            cell[i] = Math.min(line.closed() ? nodes - 1 : nodes - 2, (int) u);
            share[i] = u - cell[i];
            beside[i] = line.beside(x[i], y[i], foot[i]);
        }
        rough = new double[nodes * 5];
        constant = new double[nodes];
        weight = new double[nodes];
        Arrays.fill(weight, 1);
        double h2 = line.step() * line.step();
        double[] operator = {1 / h2, -2 / h2 - rate * rate, 1 / h2};
        for (int i = 0; i < nodes; i++) {
            for (int j = -1; j <= 1 && isRough(i); j++) {
                double k = line.curvature(Math.floorMod(i + j, nodes));
                double w = operator[j + 1];
                rough[i * 5 + 1 + j] += w / h2;
                rough[i * 5 + 2 + j] += w * (k * k - 2 / h2);
                rough[i * 5 + 3 + j] += w / h2;
                constant[i] += w * k;
            }
        }
    }

    /** Whether a node has neighbours enough for κ″. */
    private boolean isRough(int node) {
        return line.closed() || (node >= 2 && node < nodes - 2);
    }

    /** Lets the road be rougher where the weight, one for each node, is smaller; copied. */
    void weigh(double[] byNode) {
        System.arraycopy(byNode, 0, weight, 0, nodes);
    }

    /** λ at which waves of this length (m) on a straight lose half their height where points stand evenly. */
    double strength(double wave) {
        double omega2 = Math.pow(2 * Math.PI / wave, 2);
        return points / line.length() / Math.pow(omega2 * (omega2 + rate * rate), 2);
    }

    /** The wave (m) of which {@link #strength} gives this λ. */
    double wave(double strength) {
        double root = Math.sqrt(points / line.length() / strength);
        double rate2 = rate * rate;
        return 2 * Math.PI / Math.sqrt((Math.sqrt(rate2 * rate2 + 4 * root) - rate2) / 2);
    }

    int points() {
        return points;
    }

    /**
     * The solution for one λ and one wander.
     *
     * @param strength λ
     */
    Solution solve(double strength, Wander wander) {
        return new Solution(strength, wander);
    }

    /** The most probable road, with its likelihood and what is uncertain about it. */
    final class Solution {
        /** Unknowns to a node: n, or n and w. */
        private final int per;

        private final int stride;
        private final int order;
        private final double[] right;
        private final double[] matrix;
        private final CyclicBandedCholesky factor;
        private final double[] offset = new double[nodes];
        private final double[] wandered = new double[nodes];
        private final double variance;
        private final double criterion;

        private Solution(double strength, Wander wander) {
            per = wander.kind() == WanderKind.NONE ? 1 : 2;
            order = nodes * per;
            stride = REACH * per + per;
            matrix = new double[order * stride];
            right = new double[order];
            double squares = addPoints();
            double logPrior = 0;
            for (int i = 0; i < nodes; i++) {
                if (isRough(i)) {
                    double w = strength * line.step() * weight[i];
                    logPrior += Math.log(w);
                    squares += w * constant[i] * constant[i];
                    addRoughness(i, w);
                }
            }
            logPrior += per == 2 ? addWander(wander) : 0;
            factor = new CyclicBandedCholesky(order, stride - 1);
            factor.factor(matrix);
            double[] x = right.clone();
            factor.solve(x);
            for (int i = 0; i < order; i++) {
                squares -= right[i] * x[i];
            }
            for (int i = 0; i < nodes; i++) {
                offset[i] = x[i * per];
                wandered[i] = per == 2 ? x[i * per + 1] : 0;
            }
            // Roads that the roughness does not see: two translations of a loop and, without ℓ, its size.
            int unseen = !line.closed() ? 4 : rate > 0 ? 2 : 3;
            int left = points - unseen;
            if (line.closed()) {
                logPrior -= unseen * Math.log(strength);
            }
            variance = Math.max(LEAST_VARIANCE, squares / left);
            criterion = left * Math.log(variance) + factor.logDeterminant() - logPrior;
        }

        private double addPoints() {
            double squares = 0;
            for (int p = 0; p < points; p++) {
                int i = cell[p];
                int k = (i + 1) % nodes;
                double w1 = share[p];
                double w0 = 1 - w1;
                double d = beside[p];
                squares += d * d;
                for (int q = 0; q < per; q++) {
                    for (int r = 0; r < per; r++) {
                        if (r >= q) {
                            matrix[(i * per + q) * stride + r - q] += w0 * w0;
                            matrix[(k * per + q) * stride + r - q] += w1 * w1;
                        }
                        matrix[(i * per + q) * stride + per + r - q] += w0 * w1;
                    }
                    right[i * per + q] += w0 * d;
                    right[k * per + q] += w1 * d;
                }
            }
            return squares;
        }

        private void addRoughness(int i, double w) {
            for (int j = -2; j <= 2; j++) {
                int at = Math.floorMod(i + j, nodes) * per;
                double bj = rough[i * 5 + 2 + j];
                right[at] -= w * bj * constant[i];
                for (int k = j; k <= 2; k++) {
                    matrix[at * stride + (k - j) * per] += w * bj * rough[i * 5 + 2 + k];
                }
            }
        }

        /** Adds the precision of the wander; returns the logarithm of its determinant, that of a closed line. */
        private double addWander(Wander wander) {
            int power = wander.kind().power;
            double[] q = precision(wander);
            double trace = 0;
            double log = 0;
            for (int k = 0; k < nodes; k++) {
                double turn = 2 * Math.PI * k / nodes;
                double e = q[0];
                for (int m = 1; m <= power; m++) {
                    e += 2 * q[m] * Math.cos(m * turn);
                }
                trace += 1 / e;
                log += Math.log(e);
            }
            double scale = trace / nodes / wander.ratio();
            for (int i = 0; i < nodes; i++) {
                int at = (2 * i + 1) * stride;
                for (int k = 0; k <= power; k++) {
                    if (line.closed() || i + k < nodes) {
                        matrix[at + 2 * k] += scale * q[k];
                    }
                }
            }
            return log + nodes * Math.log(scale);
        }

        /** Diagonals of (1/ℓ² − d²/ds²) to the kind's power, but for a factor. */
        private double[] precision(Wander wander) {
            double e = line.step() / wander.length();
            if (wander.kind() == WanderKind.ROUGH) {
                double f = Math.exp(-e);
                return new double[] {1 + f * f, -f};
            }
            double d = 2 + e * e;
            double[] twice = {1, -2 * d, d * d + 2, -2 * d, 1};
            if (wander.kind() == WanderKind.SMOOTH) {
                return Arrays.copyOfRange(twice, 2, 5);
            }
            double[] q = new double[5];
            for (int i = 0; i < 5; i++) {
                for (int k = 0; k <= i; k++) {
                    q[i - k] += twice[i] * twice[k];
                }
            }
            return q;
        }

        /** Most probable offsets of the nodes to the left, m; not copied. */
        double[] offset() {
            return offset;
        }

        /** Variance σ² of the points' own errors, m². */
        double variance() {
            return variance;
        }

        /** −2 times the logarithm of the restricted likelihood, but for a constant: less is likelier. */
        double criterion() {
            return criterion;
        }

        /** How far each point used lies from the road and the wander, m. */
        double[] residuals() {
            double[] left = new double[points];
            for (int p = 0; p < points; p++) {
                int i = cell[p];
                int k = (i + 1) % nodes;
                left[p] = beside[p] - (1 - share[p]) * (offset[i] + wandered[i]) - share[p] * (offset[k] + wandered[k]);
            }
            return left;
        }

        /** Expected squares of κ″ − κ/ℓ² at the nodes over σ²: those of the most probable road and of what is uncertain. */
        double[] roughness() {
            double[] inverse = factor.inverseBands();
            double[] expected = new double[nodes];
            for (int i = 0; i < nodes; i++) {
                double z = constant[i];
                double spread = 0;
                for (int j = -2; j <= 2; j++) {
                    double bj = rough[i * 5 + 2 + j];
                    z += bj * offset[Math.floorMod(i + j, nodes)];
                    for (int k = -2; k <= 2; k++) {
                        spread += bj * rough[i * 5 + 2 + k] * entry(inverse, i + Math.min(j, k), Math.abs(j - k));
                    }
                }
                expected[i] = isRough(i) ? z * z / variance + Math.max(0, spread) : Double.NaN;
            }
            return expected;
        }

        /** Standard deviation of the curvature at the nodes, 1/m. */
        double[] curvatureDeviation() {
            double[] inverse = factor.inverseBands();
            double[] deviation = new double[nodes];
            for (int i = 0; i < nodes; i++) {
                int at = line.closed() ? i : Math.max(1, Math.min(nodes - 2, i));
                double[] row = curvatureRow(at);
                double sum = 0;
                for (int j = -1; j <= 1; j++) {
                    for (int k = -1; k <= 1; k++) {
                        sum += row[j + 1] * row[k + 1] * entry(inverse, at + Math.min(j, k), Math.abs(j - k));
                    }
                }
                deviation[i] = Math.sqrt(Math.max(0, sum) * variance);
            }
            return deviation;
        }

        /** Changes of the nodes' curvature (1/m) from the most probable road to one drawn from the posterior. */
        double[] drawn(Random random) {
            double[] x = new double[order];
            for (int i = 0; i < order; i++) {
                x[i] = Math.sqrt(variance) * random.nextGaussian();
            }
            factor.solveTransposed(x);
            double[] change = new double[nodes];
            for (int i = 0; i < nodes; i++) {
                int at = line.closed() ? i : Math.max(1, Math.min(nodes - 2, i));
                double[] row = curvatureRow(at);
                for (int j = -1; j <= 1; j++) {
                    change[i] += row[j + 1] * x[Math.floorMod(at + j, nodes) * per];
                }
            }
            return change;
        }

        private double entry(double[] inverse, int node, int apart) {
            return inverse[Math.floorMod(node, nodes) * per * stride + apart * per];
        }
    }

    private double[] curvatureRow(int node) {
        double h2 = line.step() * line.step();
        double k = line.curvature(node);
        return new double[] {1 / h2, k * k - 2 / h2, 1 / h2};
    }
}
