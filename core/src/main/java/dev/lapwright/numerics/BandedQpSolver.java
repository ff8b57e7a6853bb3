package dev.lapwright.numerics;

import java.util.Arrays;

/**
 * Solver of convex quadratic programs with a cyclic banded structure: minimise ½ xᵀHx + gᵀx subject to l ≤ x ≤ u and Cx ≤ d,
 * where each term of H and each row of C touches neighbouring variables only, no more than fit in a window, indices wrapping
 * round. Terms and rows are added one by one; {@link #minimise()} solves. Owns its workspace: not for sharing between threads.
 *
 * <p>Primal-dual interior-point method with a predictor and a corrector (S. Mehrotra, SIAM Journal on Optimization 2, 1992;
 * J. Nocedal and S. J. Wright, <i>Numerical Optimization</i>, 2006, algorithm 16.4; both cited from memory): each of its few
 * steps costs one factorisation in O(n), see {@link CyclicBandedCholesky}.
 */
public final class BandedQpSolver {
    private static final int MOST_STEPS = 60;
    /** Share of the way to the nearest bound. */
    private static final double BACK_OFF = 0.995;
    /** Distance of the first point from its bounds, as a share of the room between them. */
    private static final double INSIDE = 0.1;
    /** What may be missing in the equations at the end: for multipliers as a share of the linear terms. */
    private static final double RESIDUAL = 1e-6;

    /** Keeps the equations definite where neither H nor a bound does, relative to the mean of H's diagonal. */
    private static final double RIDGE = 1e-12;

    private final int n;
    private final int window;
    private final double accuracy;
    private final double[] quadratic;
    private final double[] linear;
    private final double[] lower;
    private final double[] upper;
    private int rows;
    private int[] base;
    private double[] coefficients;
    private double[] bound;

    // Of the interior point: x, slacks and multipliers of bounds and rows.
    private final double[] x;
    private final double[] zl;
    private final double[] zu;
    private double[] s;
    private double[] z;
    private final double[] dual;
    private double[] primal;
    private final double[] right;
    private final double[] matrix;
    private final double[] correctLower;
    private final double[] correctUpper;
    private double[] correct;
    private double[] ds;
    private double[] dz;

    /**
     * @param n variables
     * @param window how many neighbouring variables a squared term or a row may touch
     * @param accuracy how far above the least value the answer may lie
     */
    public BandedQpSolver(int n, int window, double accuracy) {
        this.n = n;
        this.accuracy = accuracy;
        this.window = window;
        quadratic = new double[n * window];
        linear = new double[n];
        lower = new double[n];
        upper = new double[n];
        base = new int[16];
        coefficients = new double[16 * window];
        bound = new double[16];
        x = new double[n];
        zl = new double[n];
        zu = new double[n];
        dual = new double[n];
        right = new double[n];
        matrix = new double[n * window];
        correctLower = new double[n];
        correctUpper = new double[n];
    }

    /** Adds value · x to the objective. */
    public void linear(int variable, double value) {
        linear[wrap(variable)] += value;
    }

    /** Adds ½ value x². */
    public void square(int variable, double value) {
        quadratic[wrap(variable) * window] += value;
    }

    /** Adds ½ weight (Σ c x)² over the variables from {@code first} on. */
    public void square(int first, double weight, double... c) {
        spread(quadratic, first, weight, c, 0, c.length);
    }

    /** Bounds of a variable: least ≤ x ≤ most. */
    public void within(int variable, double least, double most) {
        lower[variable] = least;
        upper[variable] = most;
    }

    /** Adds Σ c x ≤ most over the variables from {@code first} on. */
    public void row(int first, double most, double... c) {
        if (rows == base.length) {
            base = Arrays.copyOf(base, 2 * rows);
            bound = Arrays.copyOf(bound, 2 * rows);
            coefficients = Arrays.copyOf(coefficients, 2 * rows * window);
        }
        base[rows] = wrap(first);
        bound[rows] = most;
        System.arraycopy(c, 0, coefficients, rows * window, c.length);
        rows++;
    }

    private int wrap(int variable) {
        return variable < 0 ? variable + n : variable >= n ? variable - n : variable;
    }

    /** Adds weight · ccᵀ to a matrix of which the entry ((j + d) mod n, j) stands at j · window + d. */
    private void spread(double[] to, int first, double weight, double[] c, int from, int count) {
        for (int a = 0; a < count; a++) {
            double ca = weight * c[from + a];
            if (ca == 0) {
                continue;
            }
            int j = wrap(first + a) * window;
            for (int b = a; b < count; b++) {
                to[j + b - a] += ca * c[from + b];
            }
        }
    }

    /** Objective ½ xᵀHx + gᵀx at a point. */
    public double value(double[] at) {
        double[] product = times(at);
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += at[i] * (linear[i] + 0.5 * product[i]);
        }
        return sum;
    }

    private double[] times(double[] at) {
        double[] product = new double[n];
        for (int j = 0; j < n; j++) {
            product[j] += quadratic[j * window] * at[j];
            for (int d = 1; d < window; d++) {
                double h = quadratic[j * window + d];
                if (h != 0) {
                    int i = wrap(j + d);
                    product[i] += h * at[j];
                    product[j] += h * at[i];
                }
            }
        }
        return product;
    }

    private double rowTimes(int row, double[] at) {
        int from = row * window;
        int first = base[row];
        double sum = 0;
        for (int a = 0; a < window; a++) {
            sum += coefficients[from + a] * at[wrap(first + a)];
        }
        return sum;
    }

    private void addRow(int row, double factor, double[] to) {
        int from = row * window;
        int first = base[row];
        for (int a = 0; a < window; a++) {
            to[wrap(first + a)] += factor * coefficients[from + a];
        }
    }

    /** Minimiser of the objective; every lower bound must lie below its upper one. A new array. */
    public double[] minimise() {
        s = new double[rows];
        z = new double[rows];
        primal = new double[rows];
        correct = new double[rows];
        ds = new double[rows];
        dz = new double[rows];
        double size = start();
        double ridge = ridge();
        CyclicBandedCholesky factors = new CyclicBandedCholesky(n, window - 1);
        double[] dx = new double[n];
        for (int step = 0; step < MOST_STEPS; step++) {
            residuals();
            double gap = gap();
            if (gap * (2 * n + rows) <= accuracy && largest(dual) <= RESIDUAL * size && largest(primal) <= RESIDUAL) {
                break;
            }
            assemble(ridge);
            factors.factor(matrix);
            direction(factors, dx, 0, false);
            double ahead = gapAhead(dx, Math.min(1, reach(dx, 0, false)));
            double share = ahead / gap;
            double target = share * share * share * gap;
            remember(dx);
            direction(factors, dx, target, true);
            if (Double.isNaN(sum(dx))) {
                // Rounding has eaten up a pivot: better than here it will not get.
                break;
            }
            step(dx, target, Math.min(1, BACK_OFF * reach(dx, target, true)));
        }
        return x.clone();
    }

    private static double sum(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum;
    }

    /** The first point and its multipliers; returns the size of the gradient there. */
    private double start() {
        double size = 1e-30;
        for (int i = 0; i < n; i++) {
            // As near to standing still as an interior point may be.
            double edge = INSIDE * (upper[i] - lower[i]);
            x[i] = Math.max(lower[i] + edge, Math.min(upper[i] - edge, 0));
            size = Math.max(size, Math.abs(linear[i]));
        }
        Arrays.fill(zl, size);
        Arrays.fill(zu, size);
        for (int r = 0; r < rows; r++) {
            s[r] = Math.max(bound[r] - rowTimes(r, x), 1e-2);
            z[r] = size;
        }
        return size;
    }

    private double ridge() {
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += quadratic[i * window];
        }
        return RIDGE * sum / n;
    }

    private static double largest(double[] values) {
        double most = 0;
        for (double value : values) {
            most = Math.max(most, Math.abs(value));
        }
        return most;
    }

    /** Leaves what is missing in {@link #dual} and {@link #primal}. */
    private void residuals() {
        double[] product = times(x);
        for (int i = 0; i < n; i++) {
            dual[i] = product[i] + linear[i] - zl[i] + zu[i];
        }
        for (int r = 0; r < rows; r++) {
            addRow(r, z[r], dual);
            primal[r] = rowTimes(r, x) + s[r] - bound[r];
        }
    }

    private double gap() {
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += zl[i] * (x[i] - lower[i]) + zu[i] * (upper[i] - x[i]);
        }
        for (int r = 0; r < rows; r++) {
            sum += z[r] * s[r];
        }
        return sum / (2 * n + rows);
    }

    private void assemble(double ridge) {
        System.arraycopy(quadratic, 0, matrix, 0, matrix.length);
        for (int i = 0; i < n; i++) {
            matrix[i * window] += ridge + zl[i] / (x[i] - lower[i]) + zu[i] / (upper[i] - x[i]);
        }
        for (int r = 0; r < rows; r++) {
            spread(matrix, base[r], z[r] / s[r], coefficients, r * window, window);
        }
    }

    /** Solves for dx; slacks and multipliers follow from it. */
    private void direction(CyclicBandedCholesky factors, double[] dx, double target, boolean corrected) {
        for (int i = 0; i < n; i++) {
            double l = x[i] - lower[i];
            double u = upper[i] - x[i];
            double cl = corrected ? correctLower[i] : 0;
            double cu = corrected ? correctUpper[i] : 0;
            right[i] = -dual[i] + (target - cl) / l - zl[i] - (target - cu) / u + zu[i];
        }
        for (int r = 0; r < rows; r++) {
            double c = corrected ? correct[r] : 0;
            addRow(r, -((target - c) / s[r] - z[r] + z[r] / s[r] * primal[r]), right);
        }
        System.arraycopy(right, 0, dx, 0, n);
        factors.solve(dx);
        for (int r = 0; r < rows; r++) {
            double c = corrected ? correct[r] : 0;
            ds[r] = -primal[r] - rowTimes(r, dx);
            dz[r] = (target - c) / s[r] - z[r] - z[r] / s[r] * ds[r];
        }
    }

    private double lowerChange(int i, double[] dx, double target, boolean corrected) {
        double l = x[i] - lower[i];
        return (target - (corrected ? correctLower[i] : 0)) / l - zl[i] - zl[i] / l * dx[i];
    }

    private double upperChange(int i, double[] dx, double target, boolean corrected) {
        double u = upper[i] - x[i];
        return (target - (corrected ? correctUpper[i] : 0)) / u - zu[i] + zu[i] / u * dx[i];
    }

    /** How far along the direction slacks and multipliers stay above zero. */
    private double reach(double[] dx, double target, boolean corrected) {
        double reach = 1 / BACK_OFF;
        for (int i = 0; i < n; i++) {
            if (dx[i] < 0) {
                reach = Math.min(reach, -(x[i] - lower[i]) / dx[i]);
            } else if (dx[i] > 0) {
                reach = Math.min(reach, (upper[i] - x[i]) / dx[i]);
            }
            double dzl = lowerChange(i, dx, target, corrected);
            double dzu = upperChange(i, dx, target, corrected);
            reach = dzl < 0 ? Math.min(reach, -zl[i] / dzl) : reach;
            reach = dzu < 0 ? Math.min(reach, -zu[i] / dzu) : reach;
        }
        for (int r = 0; r < rows; r++) {
            reach = ds[r] < 0 ? Math.min(reach, -s[r] / ds[r]) : reach;
            reach = dz[r] < 0 ? Math.min(reach, -z[r] / dz[r]) : reach;
        }
        return reach;
    }

    private double gapAhead(double[] dx, double reach) {
        double sum = 0;
        for (int i = 0; i < n; i++) {
            double dzl = lowerChange(i, dx, 0, false);
            double dzu = upperChange(i, dx, 0, false);
            sum += (x[i] - lower[i] + reach * dx[i]) * (zl[i] + reach * dzl)
                    + (upper[i] - x[i] - reach * dx[i]) * (zu[i] + reach * dzu);
        }
        for (int r = 0; r < rows; r++) {
            sum += (s[r] + reach * ds[r]) * (z[r] + reach * dz[r]);
        }
        return sum / (2 * n + rows);
    }

    /** Keeps the products that the predictor's straight line leaves out. */
    private void remember(double[] dx) {
        for (int i = 0; i < n; i++) {
            correctLower[i] = dx[i] * lowerChange(i, dx, 0, false);
            correctUpper[i] = -dx[i] * upperChange(i, dx, 0, false);
        }
        for (int r = 0; r < rows; r++) {
            correct[r] = ds[r] * dz[r];
        }
    }

    private void step(double[] dx, double target, double along) {
        for (int i = 0; i < n; i++) {
            double dzl = lowerChange(i, dx, target, true);
            double dzu = upperChange(i, dx, target, true);
            x[i] += along * dx[i];
            zl[i] += along * dzl;
            zu[i] += along * dzu;
        }
        for (int r = 0; r < rows; r++) {
            s[r] += along * ds[r];
            z[r] += along * dz[r];
        }
    }
}
