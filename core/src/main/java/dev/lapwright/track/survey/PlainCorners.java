package dev.lapwright.track.survey;

import dev.lapwright.track.survey.PlainRoad.PlainCorner;
import dev.lapwright.track.survey.RoadPosterior.Errors;
import dev.lapwright.track.survey.RoadPosterior.Placed;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * The road of plain parts most probable from the points of a closed lap: straights, and corners that are each an arc between two transitions of
 * equal length ({@link PlainRoad}). Generalised least squares with the errors that the smooth road found, by Levenberg's and
 * Marquardt's steps (Marquardt, SIAM Journal 11, 1963, from memory), distances being across the road. Corners are those that the smooth
 * road seems to have; those that the points do not ask for are left out, and neighbours joined, by the corrected criterion of Akaike
 * (Hurvich and Tsai, Biometrika 76, 1989, from memory).
 */
final class PlainCorners {
    /** No point is taken to err by less, m. */
    private static final double LEAST_ERROR = 1e-4;
    /** How well a lap closes: far better than any survey knows, m and rad. */
    private static final double CLOSE = 0.02;

    private static final double CLOSE_TURN = 1e-4;
    /** How near the start is held to where it was along the road, m: any would do. */
    private static final double HELD = 1e-3;
    /** What is known of a transition's share beforehand, as the spread of its logit: half of them are from 0.3 to 0.8 of their corner. */
    private static final double LOGIT_SPREAD = 2;

    private static final double MOST_LOGIT = 5;
    /** Shortest corner, m, and its tightest curvature, 1/m. */
    private static final double SHORTEST = 2;

    private static final double TIGHTEST = 0.3;
    /** Corners that turn by less are none, rad. */
    private static final double LEAST_TURNING = 0.02;
    /** Mean square of the misfits over the errors' variance beyond which these are not the points of a plain road. */
    private static final double GIVEN_UP = 10;

    private static final int STEPS = 25;
    private static final int TRIES = 6;
    /** Squares, over the variance, by which a step must better the fit to go on. */
    private static final double BETTER = 0.05;

    private static final double FIRST_DAMPING = 1e-3;
    /** What holds the place and the length where they say nothing. */
    private static final double FIXED = 1e6;

    private static final double TURNED_AS = 0.01;
    /** Squares, over the variance, that a corner may be worth and still be tried to be left out: above it no criterion would. */
    private static final double WEAK = 30;

    private final Placed on;
    private final CommonErrors errors;
    private final double variance;

    private PlainRoad road;
    private double[] feet;
    private double squares;
    private double cost;

    private PlainCorners(Placed on, CommonErrors errors, double variance) {
        this.on = on;
        this.errors = errors;
        this.variance = variance;
    }

    /**
     * The fit of a plain road.
     *
     * @param line a closed smooth road near the points
     * @param on the points, with their places on it
     * @param errors of the points
     * @param variance of a point's own error, m²
     * @return null where there is none, or the points are not those of one
     */
    static PlainCorners of(ReferenceLine line, Placed on, Errors errors, double variance) {
        double[] curvature = new double[line.count()];
        for (int i = 0; i < curvature.length; i++) {
            curvature[i] = line.curvature(i);
        }
        List<PlainCorner> corners = CornerCandidates.of(curvature, line.step());
        if (corners.isEmpty()) {
            return null;
        }
        PlainCorner last = corners.get(corners.size() - 1);
        PlainCorner first = corners.get(0);
        double start = (first.from() - first.transition() / 2 + last.to() + last.transition() / 2 - line.length()) / 2;
        List<PlainCorner> moved = corners.stream()
                .map(c -> new PlainCorner(c.from() - start, c.to() - start, c.curvature(), c.transition()))
                .toList();
        double[] p = line.place(start);
        double[] feet = Arrays.stream(on.foot())
                .map(f -> f - start - Math.floor((f - start) / line.length()) * line.length())
                .toArray();
        PlainCorners fit =
                new PlainCorners(on, new CommonErrors(line, on, errors), Math.max(LEAST_ERROR * LEAST_ERROR, variance));
        fit.road = new PlainRoad(bounded(PlainRoad.of(p[0], p[1], Math.atan2(p[3], p[2]), line.length(), moved)
                .numbers()));
        fit.feet = feet;
        try {
            fit.turnAs(line, start);
            return fit.settle() ? fit : null;
        } catch (NonPositiveDefiniteMatrixException e) {
            // The points do not tell the numbers of so many corners: the smooth road stays.
            return null;
        }
    }

    /** Lets the road turn as the smooth one does: from there the points are near enough to begin with. */
    private void turnAs(ReferenceLine line, double start) {
        int count = line.count();
        double[] wanted = new double[count];
        double before = road.headingAt(0);
        for (int i = 0; i < count; i++) {
            double[] p = line.place(start + i * line.step());
            wanted[i] = before + Math.IEEEremainder(Math.atan2(p[3], p[2]) - before, 2 * Math.PI);
            before = wanted[i];
        }
        double damping = FIRST_DAMPING;
        double best = turned(road, wanted, line.step(), null, null);
        for (int step = 0; step < STEPS; step++) {
            int n = road.numbers().length;
            double[][] matrix = new double[n][n];
            double[] right = new double[n];
            turned(road, wanted, line.step(), matrix, right);
            for (int i = 0; i < PlainRoad.OWN; i++) {
                matrix[i][i] += i == 2 ? 0 : FIXED;
            }
            mirror(matrix);
            Normal normal = new Normal(matrix, right);
            double was = best;
            for (int attempt = 0; attempt < TRIES && best == was; attempt++) {
                PlainRoad tried = new PlainRoad(bounded(normal.changed(road.numbers(), damping)));
                double its = turned(tried, wanted, line.step(), null, null);
                if (its < best) {
                    best = its;
                    road = tried;
                    damping = Math.max(1e-9, damping / 10);
                } else {
                    damping *= 10;
                }
            }
            if (was - best < TURNED_AS * was) {
                return;
            }
        }
    }

    private static double turned(PlainRoad road, double[] wanted, double step, double[][] matrix, double[] right) {
        double sum = 0;
        double[] row = new double[road.numbers().length];
        for (int i = 0; i < wanted.length; i++) {
            double left = wanted[i] - road.headingAt(i * step);
            sum += left * left;
            if (matrix != null) {
                road.headingBy(i * step, row);
                add(matrix, right, row, 1, left);
            }
        }
        return sum;
    }

    private static void mirror(double[][] matrix) {
        for (int i = 0; i < matrix.length; i++) {
            for (int k = 0; k < i; k++) {
                matrix[k][i] = matrix[i][k];
            }
        }
    }

    /** Fits, and leaves out and joins corners while the criterion falls. */
    private boolean settle() {
        fit();
        boolean changed = true;
        while (changed && squares < GIVEN_UP * variance * on.foot().length) {
            changed = false;
            for (int i = 0; i < road.corners() && !changed; i++) {
                changed = Math.abs(road.corner(i).turning()) < LEAST_TURNING;
                if (changed) {
                    road = road.changed(List.of(i), List.of());
                    fit();
                }
            }
            changed = changed || simpler();
        }
        // No lap closes with a straight and one corner: such a one would be a circle.
        return road.corners() > 1 && squares < GIVEN_UP * variance * on.foot().length;
    }

    /** Takes the best of the roads with a corner less, if it is better. */
    private boolean simpler() {
        double[] worth = worth();
        for (int i = 0; i < road.corners(); i++) {
            if (worth[i] < WEAK && betterBy(road.changed(List.of(i), List.of()))) {
                return true;
            }
        }
        for (int i = 0; i + 1 < road.corners(); i++) {
            PlainCorner a = road.corner(i);
            PlainCorner b = road.corner(i + 1);
            double apart = b.from() - b.transition() / 2 - a.to() - a.transition() / 2;
            if (a.curvature() * b.curvature() > 0 && apart < Math.min(a.to() - a.from(), b.to() - b.from())) {
                double turning = a.turning() + b.turning();
                PlainCorner joined = new PlainCorner(
                        a.from(), b.to(), turning / (b.to() - a.from()), (a.transition() + b.transition()) / 2);
                if (betterBy(road.changed(List.of(i, i + 1), List.of(joined)))) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean betterBy(PlainRoad other) {
        PlainRoad keptRoad = road;
        double[] keptFeet = feet;
        double keptSquares = squares;
        double keptCost = cost;
        double before = criterion();
        road = other;
        fit();
        if (criterion() < before) {
            return true;
        }
        road = keptRoad;
        feet = keptFeet;
        squares = keptSquares;
        cost = keptCost;
        return false;
    }

    /** Squares over the variance that each corner's curvature is away from none. */
    private double[] worth() {
        Normal normal = normal();
        RealMatrix covariance = normal.factor(0).getSolver().getInverse();
        double[] scale = normal.scale;
        double[] worth = new double[road.corners()];
        for (int i = 0; i < worth.length; i++) {
            int at = PlainRoad.OWN + PlainRoad.EACH * i + 2;
            double k = road.corner(i).curvature();
            worth[i] = k * k / (covariance.getEntry(at, at) * scale[at] * scale[at]);
        }
        return worth;
    }

    /** Akaike's corrected criterion: see {@link #criterion(double, double, int)}. */
    double criterion() {
        // Of the road's own four numbers three are told by its closing; where it starts is free.
        return criterion(squares, PlainRoad.EACH * road.corners(), on.foot().length);
    }

    /**
     * Akaike's corrected criterion of a fit, but for a constant; less is better.
     *
     * @param squares of the misfits
     * @param freedom numbers found, without the errors' variance
     * @param points how many
     */
    static double criterion(double squares, double freedom, int points) {
        double all = freedom + 1;
        return all + 1 < points
                ? points * Math.log(squares + points * LEAST_ERROR * LEAST_ERROR)
                        + 2 * all * points / (points - all - 1)
                : Double.POSITIVE_INFINITY;
    }

    /** Sum of the squares of points' distances from a closed line, weighed by their errors, m². */
    static double squares(ReferenceLine line, Placed on, Errors errors) {
        double[] beside = new double[on.foot().length];
        for (int i = 0; i < beside.length; i++) {
            beside[i] = line.beside(on.x()[i], on.y()[i], on.foot()[i]);
        }
        return product(beside, new CommonErrors(line, on, errors).weighted(beside));
    }

    private static double product(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    private double[] feetOn(PlainRoad tried) {
        double[] found = new double[feet.length];
        for (int i = 0; i < found.length; i++) {
            found[i] = tried.foot(on.x()[i], on.y()[i], feet[i] * tried.length() / road.length());
        }
        return found;
    }

    private static double[] beside(PlainRoad road, Placed on, double[] feet) {
        double[] d = new double[feet.length];
        for (int i = 0; i < d.length; i++) {
            d[i] = road.beside(on.x()[i], on.y()[i], feet[i]);
        }
        return d;
    }

    /** Squares, over their variances, of what is known without the points: that the lap closes, and transitions' shares. */
    private static double known(PlainRoad road) {
        double[] gap = road.gap();
        double unusual = 0;
        double[] numbers = road.numbers();
        for (int c = PlainRoad.OWN; c < numbers.length; c += PlainRoad.EACH) {
            unusual += Math.pow(numbers[c + 3] / LOGIT_SPREAD, 2);
        }
        return (gap[0] * gap[0] + gap[1] * gap[1]) / (CLOSE * CLOSE)
                + gap[2] * gap[2] / (CLOSE_TURN * CLOSE_TURN)
                + unusual;
    }

    private void fit() {
        feet = feetOn(road);
        double[] d = beside(road, on, feet);
        squares = product(d, errors.weighted(d));
        cost = squares / variance + known(road);
        double damping = FIRST_DAMPING;
        for (int step = 0; step < STEPS; step++) {
            Normal normal = normal();
            double before = cost;
            for (int attempt = 0; attempt < TRIES && cost == before; attempt++) {
                double[] numbers = normal.changed(road.numbers(), damping);
                PlainRoad tried = new PlainRoad(bounded(numbers));
                double[] there = feetOn(tried);
                double[] left = beside(tried, on, there);
                double its = product(left, errors.weighted(left));
                double whole = its / variance + known(tried);
                if (whole < cost) {
                    road = tried;
                    feet = there;
                    squares = its;
                    cost = whole;
                    damping = Math.max(1e-9, damping / 10);
                } else {
                    damping *= 10;
                }
            }
            if (before - cost < BETTER) {
                return;
            }
        }
    }

    private static double[] bounded(double[] numbers) {
        for (int c = PlainRoad.OWN; c < numbers.length; c += PlainRoad.EACH) {
            double width = Math.max(SHORTEST, numbers[c + 1] - numbers[c]);
            double middle = (numbers[c] + numbers[c + 1]) / 2;
            numbers[c] = middle - width / 2;
            numbers[c + 1] = middle + width / 2;
            numbers[c + 2] = Math.max(-TIGHTEST, Math.min(TIGHTEST, numbers[c + 2]));
            numbers[c + 3] = Math.max(-MOST_LOGIT, Math.min(MOST_LOGIT, numbers[c + 3]));
        }
        return numbers;
    }

    /** Normal equations about the road, its numbers scaled so that the diagonal is 1. */
    private static final class Normal {
        private static final double ASYMMETRY = 1e-9;
        /** Rounding's; the diagonal is 1. */
        private static final double LEAST_PIVOT = 1e-15;
        /** Added to the diagonal, lest what nothing tells be singular. */
        private static final double RIDGE = 1e-9;

        private final double[][] matrix;
        private final double[] right;
        private final double[] scale;

        Normal(double[][] matrix, double[] right) {
            int n = right.length;
            this.matrix = matrix;
            this.right = right;
            scale = new double[n];
            for (int i = 0; i < n; i++) {
                scale[i] = 1 / Math.sqrt(Math.max(1e-12, matrix[i][i]));
            }
            for (int i = 0; i < n; i++) {
                right[i] *= scale[i];
                for (int k = 0; k < n; k++) {
                    matrix[i][k] *= scale[i] * scale[k];
                }
                matrix[i][i] = 1 + RIDGE;
            }
        }

        private CholeskyDecomposition factor(double damping) {
            double[][] damped = new double[right.length][];
            for (int i = 0; i < right.length; i++) {
                damped[i] = matrix[i].clone();
                damped[i][i] += damping;
            }
            return new CholeskyDecomposition(new Array2DRowRealMatrix(damped, false), ASYMMETRY, LEAST_PIVOT);
        }

        double[] changed(double[] numbers, double damping) {
            RealVector change = factor(damping).getSolver().solve(new ArrayRealVector(right, false));
            for (int i = 0; i < right.length; i++) {
                numbers[i] += scale[i] * change.getEntry(i);
            }
            return numbers;
        }
    }

    private Normal normal() {
        double[][] rows = road.moves(feet);
        int points = feet.length;
        double[] d = beside(road, on, feet);
        double[] numbers = road.numbers();
        int n = numbers.length;
        double[][] matrix = new double[n][n];
        double[] right = new double[n];
        double[][] columns = new double[n][points];
        for (int p = 0; p < points; p++) {
            for (int i = 0; i < n; i++) {
                columns[i][p] = rows[p][i];
            }
        }
        for (int i = 0; i < n; i++) {
            double[] weighted = errors.weighted(columns[i]);
            right[i] = product(weighted, d) / variance;
            for (int k = 0; k <= i; k++) {
                matrix[i][k] = product(weighted, columns[k]) / variance;
            }
        }
        double[] gap = road.gap();
        for (int r = 0; r < 3; r++) {
            double weight = r < 2 ? 1 / (CLOSE * CLOSE) : 1 / (CLOSE_TURN * CLOSE_TURN);
            add(matrix, right, rows[points + r], weight, -gap[r]);
        }
        double[] along = new double[n];
        along[0] = Math.cos(numbers[2]);
        along[1] = Math.sin(numbers[2]);
        add(matrix, right, along, 1 / (HELD * HELD), 0);
        for (int c = PlainRoad.OWN + 3; c < n; c += PlainRoad.EACH) {
            matrix[c][c] += 1 / (LOGIT_SPREAD * LOGIT_SPREAD);
            right[c] -= numbers[c] / (LOGIT_SPREAD * LOGIT_SPREAD);
        }
        mirror(matrix);
        return new Normal(matrix, right);
    }

    private static void add(double[][] matrix, double[] right, double[] row, double weight, double wanted) {
        for (int i = 0; i < right.length; i++) {
            right[i] += weight * row[i] * wanted;
            for (int k = 0; k <= i; k++) {
                matrix[i][k] += weight * row[i] * row[k];
            }
        }
    }

    double sq() {
        return squares;
    }
    /** The road found. */
    PlainRoad road() {
        return road;
    }

    /** Where each point stands beside it, m from its start. */
    double[] feet() {
        return feet.clone();
    }

    /** The road as a line whose nodes stand about so far apart (m); what its end misses its start by is spread over it. */
    ReferenceLine line(double about) {
        int count = (int) Math.round(road.length() / about);
        double[] gap = road.gap();
        double[] x = new double[count];
        double[] y = new double[count];
        for (int i = 0; i < count; i++) {
            double share = i / (double) count;
            double[] p = road.at(share * road.length());
            x[i] = p[0] - share * gap[0];
            y[i] = p[1] - share * gap[1];
        }
        return ReferenceLine.through(x, y, true, about);
    }

    /** The doubt about the road's numbers: draws and deviations from their covariance. */
    final class Doubt {
        private static final int DRAWS = 100;

        private final double[] scale;
        private final RealMatrix upper;

        Doubt() {
            Normal normal = normal();
            scale = normal.scale;
            upper = normal.factor(0).getLT();
        }

        /** Standard deviation of the curvature at even steps, 1/m: that of a hundred draws. */
        double[] deviation(int count) {
            double[] squares = new double[count];
            Random random = new Random(0);
            for (int k = 0; k < DRAWS; k++) {
                double[] change = drawn(random, count);
                for (int i = 0; i < count; i++) {
                    squares[i] += change[i] * change[i] / DRAWS;
                }
            }
            return Arrays.stream(squares).map(Math::sqrt).toArray();
        }

        /** Changes of the curvature at even steps that make another road of those the points allow, 1/m. */
        double[] drawn(Random random, int count) {
            double[] z = new double[scale.length];
            for (int i = 0; i < z.length; i++) {
                z[i] = random.nextGaussian();
            }
            RealVector change = new ArrayRealVector(z, false);
            MatrixUtils.solveUpperTriangularSystem(upper, change);
            double[] numbers = road.numbers();
            for (int i = 0; i < z.length; i++) {
                numbers[i] += scale[i] * change.getEntry(i);
            }
            PlainRoad other = new PlainRoad(bounded(numbers));
            double[] changes = new double[count];
            for (int i = 0; i < count; i++) {
                changes[i] =
                        other.curvatureAt(i * other.length() / count) - road.curvatureAt(i * road.length() / count);
            }
            return changes;
        }
    }
}
