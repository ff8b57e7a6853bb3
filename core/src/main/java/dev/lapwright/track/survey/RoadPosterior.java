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
 * is. Where the road is known to be about straight, Σ u κ² over the nodes there is added ({@link #straighten}). Several laps each have a wander of their own. Where lateral acceleration a was logged with the points, ρ Σ (a − b − (1 + g)
 * u² κ)² is added, u being the speed and ρ = σ²/σₐ²; its constant b and what is wrong with its scale, g, are found with the road,
 * g to first order about the line. λ, ρ and w's variance and length are those of the greatest restricted likelihood (H. D. Patterson
 * and R. Thompson, Biometrika 58, 1971; for splines G. Wahba, Annals of Statistics 13, 1985; both cited from memory).
 */
final class RoadPosterior {
    private static final int REACH = 4;
    private static final double LEAST_VARIANCE = 1e-12;
    /** What is found with the road and has no prior: a logger's constant and scale. */
    private static final int FIXED = 2;

    /**
     * Errors beside the points' own: a stationary one that neighbouring points have in common, and that of accelerations.
     *
     * @param kind of what neighbours have in common, none, or how smooth it is
     * @param ratio of its variance to that of the points' own errors
     * @param length over which it is correlated, m
     * @param precision variance of the points' own errors over that of the accelerations, s⁴; 0 leaves those out
     */
    record Errors(WanderKind kind, double ratio, double length, double precision) {
        static final Errors OWN = new Errors(WanderKind.NONE, 0, 1, 0);

        Errors(double precision) {
            this(WanderKind.NONE, 0, 1, precision);
        }
    }

    /**
     * Points on the plane.
     *
     * @param x m
     * @param y m
     * @param lap of each, from 0
     * @param foot of each on the line, m from its start
     */
    record Placed(double[] x, double[] y, int[] lap, double[] foot) {
        int laps() {
            return Arrays.stream(lap).max().orElse(0) + 1;
        }
    }

    /**
     * Samples of speed and lateral acceleration.
     *
     * @param place of each on the line, m from its start
     * @param speed m/s
     * @param acceleration to the left, m/s²
     */
    record Turning(double[] place, double[] speed, double[] acceleration) {
        static final Turning NONE = new Turning(new double[0], new double[0], new double[0]);
    }

    /** Kinds of correlated errors: Matérn's of smoothness 1/2, 3/2 and 7/2. */
    enum WanderKind {
        /** Points err on their own. */
        NONE,
        /** As an Ornstein and Uhlenbeck process: a receiver's drift. */
        ROUGH,
        /** Once differentiable. */
        SMOOTH,
        /** Three times differentiable: points that somebody has smoothed. */
        SMOOTHED
    }

    /**
     * Expected squares at the nodes.
     *
     * @param roughness of κ″ − κ/ℓ² over the variance of a point's own errors
     * @param curvature of κ, 1/m²
     */
    record Expected(double[] roughness, double[] curvature) {}

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
    private final double[] straight;
    /** Of even parts of a round, one for each node. */
    private final double[] cosines;

    private final int[] lap;
    private final int laps;
    private final int samples;
    /** Of the accelerations, but for ρ: squares with n, four entries each from the diagonal on. */
    private final double[] turned;
    /** Right side of n, and of b and g with n, one after the other. */
    private final double[][] turnedRight = new double[1 + FIXED][];

    private final double[][] fixed = new double[FIXED][FIXED];
    private final double[] fixedRight = new double[FIXED];
    private double turnedSquares;

    /**
     * @param line to look beside
     * @param on the points; not modified
     * @param turning what was logged with them; not modified
     * @param rate 1/ℓ, 1/m; 0 for a road that is rough in κ″ alone
     */
    RoadPosterior(ReferenceLine line, Placed on, Turning turning, double rate) {
        this.line = line;
        this.rate = rate;
        nodes = line.count();
        points = on.x().length;
        cell = new int[points];
        share = new double[points];
        beside = new double[points];
        lap = on.lap();
        laps = on.laps();
        for (int i = 0; i < points; i++) {
            double foot = on.foot()[i];
            cell[i] = cell(foot);
            share[i] = foot / line.step() - cell[i];
            beside[i] = line.beside(on.x()[i], on.y()[i], foot);
        }
        samples = turning.place().length;
        turned = new double[samples == 0 ? 0 : nodes * REACH];
        for (int i = 0; i <= FIXED; i++) {
            turnedRight[i] = new double[samples == 0 ? 0 : nodes];
        }
        for (int i = 0; i < samples; i++) {
            addSample(turning.place()[i], turning.speed()[i], turning.acceleration()[i]);
        }
        rough = new double[nodes * 5];
        constant = new double[nodes];
        weight = new double[nodes];
        Arrays.fill(weight, 1);
        straight = new double[nodes];
        cosines = line.cosines();
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

    private int cell(double place) {
        return Math.min(line.closed() ? nodes - 1 : nodes - 2, (int) (place / line.step()));
    }

    /** Sums of a sample whose acceleration is a = u² κ + b + g u² κ₀ and κ linear in the offsets of four nodes. */
    private void addSample(double place, double speed, double acceleration) {
        int at = line.closed() ? cell(place) : Math.max(1, Math.min(nodes - 3, cell(place)));
        int next = (at + 1) % nodes;
        double w = place / line.step() - at;
        double square = speed * speed;
        double[] here = curvatureRow(at);
        double[] there = curvatureRow(next);
        double[] row = {
            square * (1 - w) * here[0],
            square * ((1 - w) * here[1] + w * there[0]),
            square * ((1 - w) * here[2] + w * there[1]),
            square * w * there[2]
        };
        double known = square * ((1 - w) * line.curvature(at) + w * line.curvature(next));
        double left = acceleration - known;
        double[] causes = {1, known};
        turnedSquares += left * left;
        for (int j = 0; j < REACH; j++) {
            int node = Math.floorMod(at - 1 + j, nodes);
            turnedRight[0][node] += row[j] * left;
            for (int k = j; k < REACH; k++) {
                turned[node * REACH + k - j] += row[j] * row[k];
            }
            for (int k = 0; k < FIXED; k++) {
                turnedRight[1 + k][node] += row[j] * causes[k];
            }
        }
        for (int j = 0; j < FIXED; j++) {
            fixedRight[j] += causes[j] * left;
            for (int k = 0; k < FIXED; k++) {
                fixed[j][k] += causes[j] * causes[k];
            }
        }
    }

    /** Whether a node has neighbours enough for κ. */
    private boolean hasCurvature(int node) {
        return line.closed() || (node >= 1 && node < nodes - 1);
    }

    /** The node, or the nearest that has a curvature. */
    private int within(int node) {
        return line.closed() ? node : Math.max(1, Math.min(nodes - 2, node));
    }

    /** Whether a node has neighbours enough for κ″. */
    private boolean isRough(int node) {
        return line.closed() || (node >= 2 && node < nodes - 2);
    }

    /** Lets the road be rougher where the weight, one for each node, is smaller; copied. */
    void weigh(double[] byNode) {
        System.arraycopy(byNode, 0, weight, 0, nodes);
    }

    /** Takes the curvature of each node for 0, with this precision over that of a point's own errors (m²); copied. */
    void straighten(double[] byNode) {
        System.arraycopy(byNode, 0, straight, 0, nodes);
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
     * The solution for one λ and one kind of errors.
     *
     * @param strength λ
     */
    Solution solve(double strength, Errors errors) {
        return new Solution(strength, errors);
    }

    /** The most probable road, with its likelihood and what is uncertain about it. */
    final class Solution {
        /** Unknowns to a node: n, and where points wander, w of each lap. */
        private final int per;

        private final int stride;
        private final int order;
        private final double[] right;
        private final double[] matrix;
        private final CyclicBandedCholesky factor;
        private final double[] offset = new double[nodes];
        private final double[] unknown;
        private final double[] found = new double[FIXED];
        /** What b and g, one each, move the unknowns by; empty without accelerations. */
        private double[][] moved = new double[0][];
        /** Covariance of b and g over σ². */
        private final double[][] doubt = new double[FIXED][FIXED];

        private final double variance;
        private final double criterion;
        private final double precision;
        private final double strength;

        private Solution(double strength, Errors errors) {
            this.strength = strength;
            per = errors.kind() == WanderKind.NONE ? 1 : 1 + laps;
            order = nodes * per;
            stride = REACH * per + per;
            matrix = new double[order * stride];
            right = new double[order];
            precision = samples == 0 ? 0 : errors.precision();
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
            for (int i = 0; i < nodes; i++) {
                squares += straight[i] > 0 && hasCurvature(i) ? addStraight(i, straight[i]) : 0;
            }
            logPrior += per > 1 ? addWander(errors) : 0;
            squares += precision > 0 ? addTurning() : 0;
            factor = new CyclicBandedCholesky(order, stride - 1);
            factor.factor(matrix);
            unknown = right.clone();
            factor.solve(unknown);
            for (int i = 0; i < order; i++) {
                squares -= right[i] * unknown[i];
            }
            double determinant = factor.logDeterminant();
            if (precision > 0) {
                Eliminated eliminated = eliminated();
                squares -= eliminated.squares();
                determinant += eliminated.logDeterminant();
            }
            for (int i = 0; i < nodes; i++) {
                offset[i] = unknown[i * per];
            }
            // Roads that the roughness does not see: two translations of a loop and, without ℓ, its size.
            int unseen = !line.closed() ? 4 : rate > 0 ? 2 : 3;
            int left = points - unseen + (precision > 0 ? samples - FIXED : 0);
            if (line.closed()) {
                logPrior -= unseen * Math.log(strength);
            }
            logPrior += precision > 0 ? samples * Math.log(precision) : 0;
            variance = Math.max(LEAST_VARIANCE, squares / left);
            criterion = left * Math.log(variance) + determinant - logPrior;
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
                int[] unknowns = per == 1 ? new int[] {0} : new int[] {0, 1 + lap[p]};
                for (int q : unknowns) {
                    for (int r : unknowns) {
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

        private double addTurning() {
            for (int i = 0; i < nodes; i++) {
                right[i * per] += precision * turnedRight[0][i];
                for (int d = 0; d < REACH; d++) {
                    matrix[i * per * stride + d * per] += precision * turned[i * REACH + d];
                }
            }
            return precision * turnedSquares;
        }

        /** What b and g take off the squares, and the logarithm of the determinant that they add. */
        private record Eliminated(double squares, double logDeterminant) {}

        /** Finds b and g with the road: the border of the band, eliminated by Schur's complement. */
        private Eliminated eliminated() {
            double[][] side = new double[FIXED][order];
            double[][] solved = new double[FIXED][];
            double[][] left = new double[FIXED][FIXED];
            double[] rest = new double[FIXED];
            for (int j = 0; j < FIXED; j++) {
                for (int i = 0; i < nodes; i++) {
                    side[j][i * per] = precision * turnedRight[1 + j][i];
                }
                solved[j] = side[j].clone();
                factor.solve(solved[j]);
                rest[j] = precision * fixedRight[j] - product(side[j], unknown);
            }
            for (int j = 0; j < FIXED; j++) {
                for (int k = 0; k < FIXED; k++) {
                    left[j][k] = precision * fixed[j][k] - product(side[j], solved[k]);
                }
            }
            double determinant = left[0][0] * left[1][1] - left[0][1] * left[1][0];
            found[0] = (rest[0] * left[1][1] - rest[1] * left[0][1]) / determinant;
            found[1] = (rest[1] * left[0][0] - rest[0] * left[1][0]) / determinant;
            doubt[0][0] = left[1][1] / determinant;
            doubt[0][1] = -left[0][1] / determinant;
            doubt[1][0] = -left[1][0] / determinant;
            doubt[1][1] = left[0][0] / determinant;
            moved = solved;
            for (int j = 0; j < FIXED; j++) {
                for (int i = 0; i < order; i++) {
                    unknown[i] -= solved[j][i] * found[j];
                }
            }
            return new Eliminated(rest[0] * found[0] + rest[1] * found[1], Math.log(determinant));
        }

        private double product(double[] a, double[] b) {
            double sum = 0;
            for (int i = 0; i < order; i++) {
                sum += a[i] * b[i];
            }
            return sum;
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

        private double addStraight(int i, double w) {
            double[] row = curvatureRow(i);
            double known = line.curvature(i);
            for (int j = -1; j <= 1; j++) {
                int at = Math.floorMod(i + j, nodes) * per;
                right[at] -= w * row[j + 1] * known;
                for (int k = j; k <= 1; k++) {
                    matrix[at * stride + (k - j) * per] += w * row[j + 1] * row[k + 1];
                }
            }
            return w * known * known;
        }

        /** Adds the precision of each lap's wander; returns the logarithm of their determinant, that of closed lines. */
        private double addWander(Errors errors) {
            WanderPrecision wander = new WanderPrecision(errors, line.step(), cosines);
            double[] q = wander.diagonals();
            int power = q.length - 1;
            for (int i = 0; i < order; i++) {
                int node = i / per;
                for (int k = 0; i % per > 0 && k <= power; k++) {
                    if (line.closed() || node + k < nodes) {
                        matrix[i * stride + per * k] += q[k];
                    }
                }
            }
            return laps * wander.logDeterminant();
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
                left[p] = beside[p] - (1 - share[p]) * across(i, lap[p]) - share[p] * across(k, lap[p]);
            }
            return left;
        }

        private double across(int node, int ofLap) {
            return offset[node] + (per > 1 ? unknown[node * per + 1 + ofLap] : 0);
        }

        /** Standard deviation σₐ of the accelerations' own errors, m/s²; infinite where there are none. */
        double accelerationDeviation() {
            return Math.sqrt(variance / precision);
        }

        /** The logger's constant b, m/s². */
        double bias() {
            return found[0];
        }

        /** What the logger's accelerations are too large by, as a share g. */
        double scale() {
            return found[1];
        }

        /** How far each acceleration lies from that of the road, m/s². */
        double[] accelerationResiduals(Turning turning) {
            double[] left = new double[turning.place().length];
            for (int s = 0; s < left.length; s++) {
                double place = turning.place()[s];
                int at = line.closed() ? cell(place) : Math.max(1, Math.min(nodes - 3, cell(place)));
                double w = place / line.step() - at;
                double square = turning.speed()[s] * turning.speed()[s];
                double known = (1 - w) * line.curvature(at) + w * line.curvature((at + 1) % nodes);
                double change = (1 - w) * change(at) + w * change((at + 1) % nodes);
                left[s] = turning.acceleration()[s] - square * ((1 + found[1]) * known + change) - found[0];
            }
            return left;
        }

        private double change(int node) {
            double[] row = curvatureRow(node);
            double sum = 0;
            for (int j = -1; j <= 1; j++) {
                sum += row[j + 1] * offset[Math.floorMod(node + j, nodes)];
            }
            return sum;
        }

        /** Expected squares of κ″ − κ/ℓ² at the nodes over σ²: those of the most probable road and of what is uncertain. */
        double[] roughness() {
            return expected(RoadPosterior.this, variance).roughness();
        }

        /**
         * Expected squares at the nodes, of the most probable road and of what is uncertain about it.
         *
         * @param by the posterior, about the same line, whose ℓ the roughness has
         * @param own variance of the points' own errors, m²
         */
        Expected expected(RoadPosterior by, double own) {
            double[] inverse = factor.inverseBands();
            double[] roughness = new double[nodes];
            double[] curvature = new double[nodes];
            for (int i = 0; i < nodes; i++) {
                double[] row = Arrays.copyOfRange(by.rough, i * 5, i * 5 + 5);
                double z = by.constant[i] + along(row, i);
                roughness[i] = isRough(i) ? (z * z + own * Math.max(0, spread(inverse, row, i))) / own : Double.NaN;
                int at = within(i);
                double[] bend = curvatureRow(at);
                double k = line.curvature(at) + along(bend, at);
                curvature[i] = k * k + own * Math.max(0, spread(inverse, bend, at));
            }
            return new Expected(roughness, curvature);
        }

        /**
         * How many free numbers the road has in effect: the trace of the matrix that takes the points to the road, where the wander is
         * part of their errors.
         */
        double freedom() {
            double[] inverse = factor.inverseBands();
            double held = 0;
            for (int i = 0; i < nodes; i++) {
                held += isRough(i)
                        ? strength
                                * line.step()
                                * weight[i]
                                * spread(inverse, Arrays.copyOfRange(rough, i * 5, i * 5 + 5), i)
                        : 0;
                held += straight[i] > 0 && hasCurvature(i) ? straight[i] * spread(inverse, curvatureRow(i), i) : 0;
            }
            return nodes - held;
        }

        /** Standard deviation of the curvature at the nodes, 1/m. */
        double[] curvatureDeviation() {
            double[] inverse = factor.inverseBands();
            double[] deviation = new double[nodes];
            for (int i = 0; i < nodes; i++) {
                int at = within(i);
                double[] row = curvatureRow(at);
                deviation[i] = Math.sqrt((Math.max(0, spread(inverse, row, at)) + spreadOfFound(row, at)) * variance);
            }
            return deviation;
        }

        /** A row about a node times the offsets. */
        private double along(double[] row, int node) {
            return along(row, node, offset, 1);
        }

        private double along(double[] row, int node, double[] values, int apart) {
            int reach = row.length / 2;
            double sum = 0;
            for (int j = -reach; j <= reach; j++) {
                sum += row[reach + j] * values[Math.floorMod(node + j, nodes) * apart];
            }
            return sum;
        }

        /** Variance of {@link #along} over σ². */
        private double spread(double[] inverse, double[] row, int node) {
            int reach = row.length / 2;
            double sum = 0;
            for (int j = -reach; j <= reach; j++) {
                for (int k = -reach; k <= reach; k++) {
                    sum += row[reach + j] * row[reach + k] * entry(inverse, node + Math.min(j, k), Math.abs(j - k));
                }
            }
            return sum;
        }

        /** Variance over σ² that is added to a row about a node times the offsets by that of b and g. */
        private double spreadOfFound(double[] row, int node) {
            double sum = 0;
            for (int j = 0; j < moved.length; j++) {
                for (int k = 0; k < moved.length; k++) {
                    sum += doubt[j][k] * along(row, node, moved[j], per) * along(row, node, moved[k], per);
                }
            }
            return sum;
        }

        /** Moves unknowns as b and g do, which are drawn as uncertain as they are. */
        private void moveByFound(double[] x, Random random) {
            double first = random.nextGaussian() * Math.sqrt(variance);
            double second = random.nextGaussian() * Math.sqrt(variance);
            double root = Math.sqrt(doubt[0][0]);
            double slope = doubt[1][0] / root;
            double[] drawn = {root * first, slope * first + Math.sqrt(Math.max(0, doubt[1][1] - slope * slope)) * second
            };
            for (int j = 0; j < moved.length; j++) {
                for (int i = 0; i < order; i++) {
                    x[i] -= drawn[j] * moved[j][i];
                }
            }
        }

        /** Changes of the nodes' curvature (1/m) from the most probable road of another solution to one drawn from this posterior. */
        double[] drawn(Random random, Solution from) {
            double[] x = new double[order];
            for (int i = 0; i < order; i++) {
                x[i] = Math.sqrt(variance) * random.nextGaussian();
            }
            factor.solveTransposed(x);
            if (moved.length > 0) {
                moveByFound(x, random);
            }
            double[] change = new double[nodes];
            for (int i = 0; i < nodes; i++) {
                int at = within(i);
                double[] row = curvatureRow(at);
                for (int j = -1; j <= 1; j++) {
                    int node = Math.floorMod(at + j, nodes);
                    change[i] += row[j + 1] * (x[node * per] + offset[node] - from.offset[node]);
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
