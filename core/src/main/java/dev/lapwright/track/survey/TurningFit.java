package dev.lapwright.track.survey;

import dev.lapwright.numerics.CyclicBandedCholesky;
import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * The curvature most probable from speed u and lateral acceleration a alone, at even steps of the way, with its doubt. As in {@link
 * RoadPosterior} the road is a priori rough by κ″ − κ/ℓ², white noise whose variance may differ from place to place, and how rough,
 * the samples tell by their restricted likelihood:
 *
 * <pre>Σ ((a − b)/(1 + g) − u² κ)² + λ ∫ v (κ″ − κ/ℓ²)² ds  →  min</pre>
 *
 * On a circuit κ turns by whole rounds and leads back to where it began: three conditions, linear about the curvature before (as in
 * {@link LoopClosure}). What the measured curvature misses them by tells the logger's constant b and what is wrong with its scale, g,
 * beforehand, by least squares with what white errors of the samples add up to, and with weak priors (b of 0.2 m/s², g of 0.02: ours, what
 * loggers have). They are not sought with κ: the smoothest road would be the one whose logger exaggerates most. The conditions'
 * multipliers are the border of a banded matrix, eliminated by Schur's complement.
 */
final class TurningFit {
    private static final int REACH = 2;
    private static final int CONDITIONS = 3;
    /** What closing misses by without any error: the step from the last sample to the first is a guess; rad and m. Ours. */
    private static final double LEAST_HEADING = 0.005;

    private static final double LEAST_GAP = 1;
    private static final double USUAL_BIAS = 0.2;
    private static final double USUAL_SCALE = 0.02;
    private static final double KNOCK = 5;
    private static final double NINE_OF_TEN = 0.9;
    /**
     * What nine of ten differences from the median are below, in deviations of normal errors: 1.5 where one in five is the median itself, as
     * in noise, 1.2 where three in five are, as in bends that open and close.
     */
    private static final double DEVIATIONS = 1.3;

    private static final double LONGEST = Math.log(400);
    private static final int PASSES = 4;

    private final boolean closed;
    private final double step;
    private final int nodes;
    private final double rate;
    private final double rootMeanSquare;
    private double[] place;
    private double[] speed;
    private double[] acceleration;
    private final int read;
    private double[] about;
    private double bias;
    private double scale;
    /** Covariance of b and g. */
    private RealMatrix logger = new Array2DRowRealMatrix(2, 2);

    private double[] weight;
    private double wave;
    private Solution solution;

    /**
     * @param place of the samples, m from the first; not modified
     * @param speed smoothed, m/s; not modified
     * @param acceleration to the left, m/s²; not modified
     * @param error standard deviation of the accelerations' errors, m/s²
     * @param measured curvature at even steps as it comes, 1/m; not modified
     * @param first curvature near the one sought, 1/m; that of a circuit closes and ends with its first value
     * @param step m
     */
    TurningFit(
            double[] place,
            double[] speed,
            double[] acceleration,
            double error,
            double[] measured,
            double[] first,
            double step,
            boolean closed) {
        this.place = place;
        this.speed = speed;
        this.acceleration = acceleration.clone();
        this.step = step;
        this.closed = closed;
        read = place.length;
        nodes = closed ? first.length - 1 : first.length;
        about = Arrays.copyOf(first, nodes);
        weight = new double[nodes];
        Arrays.fill(weight, 1);
        rootMeanSquare = Math.sqrt(
                Math.max(1e-10, Arrays.stream(about).map(k -> k * k).average().orElse(0)));
        rate = rootMeanSquare / RoadFit.CORNER_SHARE;
        dropKnocks();
        if (closed) {
            findLogger(measured, Double.isNaN(error) ? 0 : error);
        }
        choose(Math.log(4 * step), LONGEST);
        choose(Math.max(Math.log(4 * step), Math.log(wave) - 0.5), Math.log(wave) + 0.5);
        adapt();
        for (int i = 0; i < PASSES; i++) {
            about = solution.curvature;
            solution = new Solution(strength(wave));
        }
    }

    /** Finds b and g by what the measured curvature misses the conditions by. */
    private void findLogger(double[] measured, double error) {
        double[][] by = conditions();
        double[] slow = new double[nodes];
        double[] count = new double[nodes];
        for (int j = 0; j < place.length; j++) {
            slow[cell(place[j])] += 1 / (speed[j] * speed[j]);
            count[cell(place[j])]++;
        }
        double last = 0;
        RealMatrix causes = new Array2DRowRealMatrix(CONDITIONS, 2);
        RealMatrix noise = new Array2DRowRealMatrix(CONDITIONS, CONDITIONS);
        double[] missed = new double[CONDITIONS];
        double samples = place.length / (nodes * step);
        for (int i = 0; i < nodes; i++) {
            last = count[i] > 0 ? slow[i] / count[i] : last;
            for (int k = 0; k < CONDITIONS; k++) {
                missed[k] += by[k][i] * (measured[i] - about[i]);
                causes.addToEntry(k, 0, by[k][i] * last);
                causes.addToEntry(k, 1, by[k][i] * about[i]);
                for (int m = 0; m < CONDITIONS; m++) {
                    double density = Math.max(count[i], 0.5 * samples * step);
                    noise.addToEntry(k, m, error * error * by[k][i] * by[m][i] * last * last / density);
                }
            }
        }
        double[] least = {LEAST_HEADING * LEAST_HEADING, LEAST_GAP * LEAST_GAP, LEAST_GAP * LEAST_GAP};
        for (int k = 0; k < CONDITIONS; k++) {
            noise.addToEntry(k, k, least[k]);
        }
        RealMatrix weights = new LUDecomposition(noise, 0).getSolver().getInverse();
        RealMatrix normal = causes.transpose().multiply(weights).multiply(causes);
        normal.addToEntry(0, 0, 1 / (USUAL_BIAS * USUAL_BIAS));
        normal.addToEntry(1, 1, 1 / (USUAL_SCALE * USUAL_SCALE));
        logger = new LUDecomposition(normal, 0).getSolver().getInverse();
        double[] found = logger.operate(causes.transpose().multiply(weights).operate(missed));
        bias = found[0];
        scale = found[1];
        for (int j = 0; j < place.length; j++) {
            acceleration[j] = (acceleration[j] - bias) / (1 + scale);
        }
    }

    /** What a curvature at the nodes adds to the heading, and moves the end by: rows of whole rounds and of the end at the start. */
    private double[][] conditions() {
        double[] round = Arrays.copyOf(about, nodes + 1);
        round[nodes] = about[0];
        DeadReckoning path = new DeadReckoning(round, step);
        double[][] by = new double[CONDITIONS][nodes];
        for (int i = 0; i < nodes; i++) {
            double half = i == 0 ? 0.5 : 1;
            by[0][i] = step;
            by[1][i] = -step * half * (path.y(nodes) - path.y(i));
            by[2][i] = step * half * (path.x(nodes) - path.x(i));
        }
        return by;
    }

    private void choose(double low, double high) {
        for (int i = 0; i <= 24; i++) {
            consider(low + (high - low) * i / 24, i == 0);
        }
    }

    private boolean consider(double logWave, boolean first) {
        Solution tried = new Solution(strength(Math.exp(logWave)));
        boolean better = first || tried.score < solution.score;
        if (better) {
            solution = tried;
            wave = Math.exp(logWave);
        }
        return better;
    }

    /** Leaves out samples far from the median of five about them, as over kerbs (Hampel's filter, from memory). */
    private void dropKnocks() {
        int n = place.length;
        double[] left = new double[n];
        for (int i = 2; i + 2 < n; i++) {
            double[] five = Arrays.copyOfRange(acceleration, i - 2, i + 3);
            Arrays.sort(five);
            left[i] = Math.abs(acceleration[i] - five[2]);
        }
        double[] sizes = left.clone();
        Arrays.sort(sizes);
        double limit = KNOCK * sizes[(int) (NINE_OF_TEN * n)] / DEVIATIONS;
        int[] kept = new int[left.length];
        int count = 0;
        for (int i = 0; i < left.length; i++) {
            if (left[i] <= limit) {
                kept[count++] = i;
            }
        }
        int[] some = Arrays.copyOf(kept, count);
        place = Arrays.stream(some).mapToDouble(i -> place[i]).toArray();
        speed = Arrays.stream(some).mapToDouble(i -> speed[i]).toArray();
        acceleration = Arrays.stream(some).mapToDouble(i -> acceleration[i]).toArray();
    }

    /**
     * Lets the road be as rough at each place as it is found to be about there. Once: in more rounds it follows the samples' errors, and laps of
     * circuits drawn at random came out slower.
     */
    private void adapt() {
        double[] rough = averaged(solution.roughness());
        double mean = Arrays.stream(rough).average().orElse(1);
        for (int i = 0; i < nodes; i++) {
            weight[i] = 1 / Math.max(RoadFit.LEAST_ROUGHNESS, rough[i] / mean);
        }
        double log = Math.log(wave);
        for (int k = -6; k <= 6; k++) {
            consider(log + 0.05 * k, k == -6);
        }
    }

    private double[] averaged(double[] values) {
        double spread = 1 / (rate * step);
        int far = (int) Math.min(nodes / 2, Math.ceil(3 * spread));
        double[] means = new double[nodes];
        for (int i = 0; i < nodes; i++) {
            double sum = 0;
            double norm = 0;
            for (int k = -far; k <= far; k++) {
                boolean inside = closed || (i + k >= 1 && i + k < nodes - 1);
                if (inside) {
                    double g = Math.exp(-0.5 * k * k / (spread * spread));
                    sum += g * values[Math.floorMod(i + k, nodes)];
                    norm += g;
                }
            }
            means[i] = norm > 0 ? sum / norm : 1;
        }
        return means;
    }

    /** λ at which waves of this length (m) lose half their height at the mean fourth power of the speed. */
    private double strength(double length) {
        double omega = 2 * Math.PI / length;
        double sum = Arrays.stream(speed).map(u -> u * u * u * u).sum();
        return sum / (nodes * step) / Math.pow(omega * omega + rate * rate, 2);
    }

    /** The most probable curvature for one λ. */
    private final class Solution {
        private final CyclicBandedCholesky factor = new CyclicBandedCholesky(nodes, REACH);
        private final double[] curvature;
        private final double[][] side;
        private final double[][] solved;
        private final RealMatrix left;
        private final double variance;
        private final double score;

        private Solution(double strength) {
            double[] matrix = new double[nodes * (REACH + 1)];
            double[] right = new double[nodes];
            int borders = closed ? CONDITIONS : 0;
            side = closed ? conditions() : new double[0][];
            solved = new double[borders][];
            double[] below = closed ? wanted() : new double[0];
            double squares = 0;
            for (int j = 0; j < place.length; j++) {
                squares += acceleration[j] * acceleration[j];
                addSample(j, matrix, right);
            }
            double logPrior = 0;
            for (int i = closed ? 0 : 1; i < (closed ? nodes : nodes - 1); i++) {
                double w = strength * step * weight[i];
                logPrior += Math.log(w);
                addRoughness(matrix, i, w);
            }
            factor.factor(matrix);
            curvature = right.clone();
            factor.solve(curvature);
            squares -= product(right, curvature);
            double determinant = factor.logDeterminant();
            left = borders == 0 ? null : new Array2DRowRealMatrix(borders, borders);
            if (borders > 0) {
                double[] rest = new double[borders];
                for (int j = 0; j < borders; j++) {
                    solved[j] = side[j].clone();
                    factor.solve(solved[j]);
                    rest[j] = below[j] - product(side[j], curvature);
                }
                for (int j = 0; j < borders; j++) {
                    for (int k = 0; k < borders; k++) {
                        left.setEntry(j, k, -product(side[j], solved[k]));
                    }
                }
                LUDecomposition parts = new LUDecomposition(left, 0);
                double[] values =
                        parts.getSolver().solve(new Array2DRowRealMatrix(rest)).getColumn(0);
                for (int j = 0; j < borders; j++) {
                    squares -= rest[j] * values[j];
                    for (int i = 0; i < nodes; i++) {
                        curvature[i] -= solved[j][i] * values[j];
                    }
                }
                determinant += Math.log(Math.abs(parts.getDeterminant()));
            }
            int degrees = place.length - (closed ? 0 : 2);
            variance = Math.max(1e-12, squares / degrees);
            double density = variance / strength / Math.pow(rootMeanSquare, 7);
            double unusual = (Math.log10(density) - RoadFit.USUAL_ROUGHNESS) / RoadFit.ROUGHNESS_SPREAD;
            double all = degrees * Math.log(variance) + determinant - logPrior + unusual * unusual;
            score = Double.isFinite(all) ? all : Double.POSITIVE_INFINITY;
        }

        private void addSample(int j, double[] matrix, double[] right) {
            double square = speed[j] * speed[j];
            int i = cell(place[j]);
            int next = (i + 1) % nodes;
            double w = place[j] / step - i;
            double w0 = square * (1 - w);
            double w1 = square * w;
            matrix[i * (REACH + 1)] += w0 * w0;
            matrix[next * (REACH + 1)] += w1 * w1;
            matrix[i * (REACH + 1) + 1] += w0 * w1;
            right[i] += w0 * acceleration[j];
            right[next] += w1 * acceleration[j];
        }

        private void addRoughness(double[] matrix, int i, double w) {
            double h2 = step * step;
            double[] row = {1 / h2, -2 / h2 - rate * rate, 1 / h2};
            for (int j = 0; j < 3; j++) {
                int at = Math.floorMod(i - 1 + j, nodes);
                for (int k = j; k < 3; k++) {
                    matrix[at * (REACH + 1) + k - j] += w * row[j] * row[k];
                }
            }
        }

        /** What the rows of the border are to come to. */
        private double[] wanted() {
            double[] round = Arrays.copyOf(about, nodes + 1);
            round[nodes] = about[0];
            DeadReckoning path = new DeadReckoning(round, step);
            double turned = product(side[0], about);
            return new double[] {
                2 * Math.PI * Math.rint(turned / (2 * Math.PI)),
                product(side[1], about) - path.x(nodes),
                product(side[2], about) - path.y(nodes)
            };
        }

        private double product(double[] a, double[] b) {
            double sum = 0;
            for (int i = 0; i < nodes; i++) {
                sum += a[i] * b[i];
            }
            return sum;
        }

        /** Expected squares of κ″ − κ/ℓ² over σ². */
        private double[] roughness() {
            double h2 = step * step;
            double[] row = {1 / h2, -2 / h2 - rate * rate, 1 / h2};
            double[] bands = factor.inverseBands();
            double[] expected = new double[nodes];
            for (int i = 0; i < nodes; i++) {
                double z = 0;
                double spread = 0;
                for (int j = 0; j < 3; j++) {
                    z += row[j] * curvature[Math.floorMod(i - 1 + j, nodes)];
                    for (int k = 0; k < 3; k++) {
                        int low = Math.floorMod(i - 1 + Math.min(j, k), nodes);
                        spread += row[j] * row[k] * bands[low * (REACH + 1) + Math.abs(j - k)];
                    }
                }
                expected[i] = z * z / variance + Math.max(0, spread);
            }
            return expected;
        }
    }

    private int cell(double at) {
        return Math.min(closed ? nodes - 1 : nodes - 2, Math.max(0, (int) (at / step)));
    }

    /** The curvature at the steps, 1/m; that of a circuit ends with its first value. */
    double[] curvature() {
        return whole(solution.curvature);
    }

    private double[] whole(double[] values) {
        double[] all = Arrays.copyOf(values, closed ? nodes + 1 : nodes);
        if (closed) {
            all[nodes] = all[0];
        }
        return all;
    }

    /** Standard deviation of the curvature at the steps, 1/m. */
    double[] deviation() {
        double[] bands = solution.factor.inverseBands();
        RealMatrix inverse =
                closed ? new LUDecomposition(solution.left, 0).getSolver().getInverse() : null;
        double[][] followed = {followed(1, 0), followed(0, 1)};
        double[] deviation = new double[nodes];
        for (int i = 0; i < nodes; i++) {
            double sum = bands[i * (REACH + 1)];
            for (int j = 0; j < solution.solved.length; j++) {
                for (int k = 0; k < solution.solved.length; k++) {
                    sum += solution.solved[j][i] * solution.solved[k][i] * inverse.getEntry(j, k);
                }
            }
            double known = 0;
            for (int j = 0; j < 2; j++) {
                for (int k = 0; k < 2; k++) {
                    known += followed[j][i] * followed[k][i] * logger.getEntry(j, k);
                }
            }
            deviation[i] = Math.sqrt(Math.max(0, sum) * solution.variance + Math.max(0, known));
        }
        return whole(deviation);
    }

    /** By how much the curvature at the nodes follows b (m/s²) and g, 1/m; the loop stays closed. */
    private double[] followed(double byBias, double byScale) {
        double[] x = new double[nodes];
        for (int j = 0; j < place.length && closed; j++) {
            double square = speed[j] * speed[j];
            int i = cell(place[j]);
            int next = (i + 1) % nodes;
            double w = place[j] / step - i;
            double bends = (1 - w) * solution.curvature[i] + w * solution.curvature[next];
            double less = byBias + byScale * square * bends;
            x[i] -= square * (1 - w) * less;
            x[next] -= square * w * less;
        }
        solution.factor.solve(x);
        return closed(x);
    }

    /** The nearest change that keeps the conditions, in the posterior's own measure. */
    private double[] closed(double[] x) {
        if (!closed) {
            return x;
        }
        double[] rest = new double[CONDITIONS];
        for (int j = 0; j < CONDITIONS; j++) {
            rest[j] = -solution.product(solution.side[j], x);
        }
        double[] by = new LUDecomposition(solution.left, 0)
                .getSolver()
                .solve(new ArrayRealVector(rest))
                .toArray();
        for (int j = 0; j < CONDITIONS; j++) {
            for (int i = 0; i < nodes; i++) {
                x[i] -= solution.solved[j][i] * by[j];
            }
        }
        return x;
    }

    /** Changes of the curvature (1/m) to one drawn from the posterior. */
    double[] drawn(Random random) {
        double[] x = new double[nodes];
        double size = Math.sqrt(solution.variance);
        for (int i = 0; i < nodes; i++) {
            x[i] = size * random.nextGaussian();
        }
        solution.factor.solveTransposed(x);
        closed(x);
        double l = Math.sqrt(Math.max(1e-30, logger.getEntry(0, 0)));
        double m = logger.getEntry(1, 0) / l;
        double n = Math.sqrt(Math.max(0, logger.getEntry(1, 1) - m * m));
        double first = random.nextGaussian();
        double[] change = followed(l * first, m * first + n * random.nextGaussian());
        for (int i = 0; i < nodes; i++) {
            x[i] += change[i];
        }
        return whole(x);
    }

    /** Length of waves that lose half their height at the mean fourth power of the speed, m. */
    double wave() {
        return wave;
    }

    /** What was found out about the logger; its constant and scale are 0 on an open run, which does not tell them. */
    ImportReport.MotionReport logger() {
        return new ImportReport.MotionReport(
                read, place.length, (1 + scale) * Math.sqrt(solution.variance), bias, scale);
    }
}
