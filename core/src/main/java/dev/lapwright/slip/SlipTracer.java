package dev.lapwright.slip;

import static dev.lapwright.slip.SlipForces.EQUATIONS;
import static dev.lapwright.slip.SlipForces.FREE;
import static dev.lapwright.slip.SlipForces.UNKNOWNS;

import java.util.Arrays;

/**
 * Continuation of an equilibrium along the curve of states that one free number leaves (pseudo-arclength: Keller's method; Allgower and Georg,
 * Introduction to Numerical Continuation Methods, chapters 2 to 4, from memory): from a state on to a wanted value, or to where the curve
 * turns back or something other than the tyres is used up. Mutable scratch of one thread; allocates nothing.
 */
final class SlipTracer {
    private static final int CORRECTIONS = 8;
    /** Step of Newton's method beyond which it is cut: slips and angles are of that size at a limit. */
    private static final double LONGEST = 0.15;
    /** Step of Newton's method after which what is left is its square times a curvature of some hundreds. */
    private static final double LAST_STEP = 1e-5;

    private static final double TOLERANCE = 1e-9;

    /** Rise of λ along the curve that counts as its end: λ is off by its square over twice the curvature. */
    private static final double FLAT = 1e-4;
    /** What is spare that counts as none. */
    private static final double USED = 1e-9;

    private static final double FIRST_STEP = 0.05;
    private static final double LONGEST_STEP = 0.2;
    private static final double LEAST_STEP = 1e-5;
    private static final int STEPS = 120;
    /** Cosine of the turn of the curve in one step, least: from a straight into the turn, where it bends evenly, and near an end met before. */
    private static final double BENT = 0.8;
    /** The same towards an end, where another branch passes close by if both axles come to their peaks together. */
    private static final double HARDLY_BENT = 0.97;

    /** Step at which the curve may have a corner: where a law changes, as from drive to brakes. */
    private static final double CORNER = 2e-3;

    private static final int REFINEMENTS = 40;
    private static final int SECANTS = 14;
    /** How much longer a secant's step may be than the one before, and than this. */
    private static final double GROWTH = 3;

    private static final double LEAST_MOVE = 1e-4;
    private static final double CLOSE = 1e-13;
    /** Slower than this nothing is taken to fall along the curve: a plateau is left by longer steps. */
    private static final double LEAST_FALL = 1e-2;

    private static final double FARTHEST_SECANT = 0.08;
    /** A state beyond these is no car on its wheels, rad and slips. */
    private static final double MOST_ANGLE = 0.6;

    private static final double MOST_SLIP = 0.9;

    final SlipForces forces;
    /** Engine's most, N; of account where drive is traced. */
    double engine = Double.POSITIVE_INFINITY;

    private final double[] matrix = new double[UNKNOWNS * UNKNOWNS];
    private final int[] pivot = new int[UNKNOWNS];
    private final double[] right = new double[UNKNOWNS];
    private final double[] border = new double[UNKNOWNS];
    private final double[] from = new double[UNKNOWNS];
    private final double[] fromTangent = new double[UNKNOWNS];
    private final double[] trial = new double[UNKNOWNS];

    /** The state, and the direction of the curve there, of length 1 and towards greater λ where it was met. */
    final double[] state = new double[UNKNOWNS];

    final double[] tangent = new double[UNKNOWNS];
    /** Rise of λ along the curve at the state, and what is spare there. */
    private double rise;

    private double spare;
    /** How fast the watched number falls along the curve, at the last end. */
    private double fall = 1;

    /** Whether the last end was a turn of the curve; else something was used up. */
    boolean turned;

    SlipTracer(SlipForces forces) {
        this.forces = forces;
    }

    /**
     * Newton's method on the equations and border·(y - anchor) = reach, from {@link #trial} to there; leaves the factors of the last matrix.
     */
    private boolean correct(double[] anchor, double reach) {
        for (int i = 0; i < CORRECTIONS; i++) {
            if (!forces.linearise(trial)) {
                return false;
            }
            double off = reach;
            double worst = 0;
            for (int k = 0; k < UNKNOWNS; k++) {
                off -= border[k] * (trial[k] - anchor[k]);
            }
            for (int r = 0; r < EQUATIONS; r++) {
                System.arraycopy(forces.jacobian, UNKNOWNS * r, matrix, UNKNOWNS * r, UNKNOWNS);
                right[r] = -forces.residual[r];
                worst = Math.max(worst, Math.abs(right[r]));
            }
            System.arraycopy(border, 0, matrix, UNKNOWNS * EQUATIONS, UNKNOWNS);
            right[EQUATIONS] = off;
            if (!factor()) {
                return false;
            }
            if (worst < TOLERANCE && Math.abs(off) < TOLERANCE) {
                return true;
            }
            substitute();
            double length = 0;
            for (int k = 0; k < UNKNOWNS; k++) {
                length = Math.max(length, Math.abs(right[k]));
            }
            if (!(length < Double.POSITIVE_INFINITY)) {
                return false;
            }
            double part = length > LONGEST ? LONGEST / length : 1;
            for (int k = 0; k < UNKNOWNS; k++) {
                trial[k] += part * right[k];
            }
            if (!plausible(trial)) {
                return false;
            }
            if (length < LAST_STEP) {
                return true;
            }
        }
        return false;
    }

    private static boolean plausible(double[] y) {
        if (!(Math.abs(y[SlipForces.STEER]) < MOST_ANGLE && Math.abs(y[SlipForces.SIDESLIP]) < MOST_ANGLE)) {
            return false;
        }
        for (int w = 0; w < 4; w++) {
            if (!(Math.abs(y[SlipForces.SLIP + w]) < MOST_SLIP)) {
                return false;
            }
        }
        return true;
    }

    /** Gauss with partial pivoting, in place; false where the matrix is singular. */
    private boolean factor() {
        for (int c = 0; c < UNKNOWNS; c++) {
            int best = c;
            double most = Math.abs(matrix[UNKNOWNS * c + c]);
            for (int r = c + 1; r < UNKNOWNS; r++) {
                double here = Math.abs(matrix[UNKNOWNS * r + c]);
                if (here > most) {
                    most = here;
                    best = r;
                }
            }
            if (!(most > Double.MIN_NORMAL)) {
                return false;
            }
            pivot[c] = best;
            if (best != c) {
                for (int k = 0; k < UNKNOWNS; k++) {
                    double swap = matrix[UNKNOWNS * c + k];
                    matrix[UNKNOWNS * c + k] = matrix[UNKNOWNS * best + k];
                    matrix[UNKNOWNS * best + k] = swap;
                }
            }
            double inverse = 1 / matrix[UNKNOWNS * c + c];
            for (int r = c + 1; r < UNKNOWNS; r++) {
                double factor = matrix[UNKNOWNS * r + c] * inverse;
                matrix[UNKNOWNS * r + c] = factor;
                if (factor != 0) {
                    for (int k = c + 1; k < UNKNOWNS; k++) {
                        matrix[UNKNOWNS * r + k] -= factor * matrix[UNKNOWNS * c + k];
                    }
                }
            }
        }
        return true;
    }

    /** Solves for {@link #right} in place. */
    private void substitute() {
        for (int c = 0; c < UNKNOWNS; c++) {
            int best = pivot[c];
            if (best != c) {
                double swap = right[c];
                right[c] = right[best];
                right[best] = swap;
            }
        }
        for (int r = 1; r < UNKNOWNS; r++) {
            double sum = right[r];
            for (int k = 0; k < r; k++) {
                sum -= matrix[UNKNOWNS * r + k] * right[k];
            }
            right[r] = sum;
        }
        for (int r = UNKNOWNS - 1; r >= 0; r--) {
            double sum = right[r];
            for (int k = r + 1; k < UNKNOWNS; k++) {
                sum -= matrix[UNKNOWNS * r + k] * right[k];
            }
            right[r] = sum / matrix[UNKNOWNS * r + r];
        }
    }

    /** Direction of the curve by the factors of the last matrix, on the side of the border; with its rise and what is spare. */
    private void measure() {
        for (int r = 0; r < EQUATIONS; r++) {
            right[r] = 0;
        }
        right[EQUATIONS] = 1;
        substitute();
        double square = 0;
        for (int k = 0; k < UNKNOWNS; k++) {
            square += right[k] * right[k];
        }
        double inverse = 1 / Math.sqrt(square);
        System.arraycopy(trial, 0, state, 0, UNKNOWNS);
        for (int k = 0; k < UNKNOWNS; k++) {
            tangent[k] = inverse * right[k];
        }
        rise = tangent[FREE];
        forces.evaluate(trial);
        spare = forces.spare(engine);
    }

    /** Solves at the value of λ in {@code guess}; the state stands in {@link #state}. */
    boolean settle(double[] guess) {
        System.arraycopy(guess, 0, trial, 0, UNKNOWNS);
        System.arraycopy(guess, 0, from, 0, UNKNOWNS);
        borderByLambda();
        if (!correct(from, 0)) {
            return false;
        }
        measure();
        return true;
    }

    private void borderByLambda() {
        Arrays.fill(border, 0);
        border[FREE] = 1;
    }

    private void remember() {
        System.arraycopy(state, 0, from, 0, UNKNOWNS);
        System.arraycopy(tangent, 0, fromTangent, 0, UNKNOWNS);
    }

    private double watched() {
        return Math.min(rise, spare);
    }

    /** A state at a reach from {@link #from} along {@link #fromTangent}, looked for from there. */
    private boolean at(double reach) {
        for (int k = 0; k < UNKNOWNS; k++) {
            trial[k] = from[k] + reach * fromTangent[k];
        }
        return corrected(reach);
    }

    /** The same, looked for from the last state, which is at another reach. */
    private boolean onTo(double reach, double last) {
        double step = (reach - last) / cosine();
        for (int k = 0; k < UNKNOWNS; k++) {
            trial[k] = state[k] + step * tangent[k];
        }
        return corrected(reach);
    }

    private boolean corrected(double reach) {
        System.arraycopy(fromTangent, 0, border, 0, UNKNOWNS);
        if (!correct(from, reach)) {
            return false;
        }
        measure();
        return true;
    }

    private double cosine() {
        double sum = 0;
        for (int k = 0; k < UNKNOWNS; k++) {
            sum += tangent[k] * fromTangent[k];
        }
        return sum;
    }

    /**
     * Goes on from {@link #state} towards greater λ, up to {@code target} or to where the curve ends. True if one of them was met: with
     * {@link #turned} and λ telling which.
     */
    boolean march(double target) {
        if (rise < 0) {
            for (int k = 0; k < UNKNOWNS; k++) {
                tangent[k] = -tangent[k];
            }
            rise = -rise;
        }
        turned = false;
        if (!(spare > 0)) {
            return false;
        }
        double bent = forces.free == SlipForces.Free.TURN ? BENT : HARDLY_BENT;
        double step = FIRST_STEP;
        for (int i = 0; i < STEPS; i++) {
            remember();
            double before = watched();
            boolean found = at(step);
            if (!found || cosine() < (step > CORNER ? bent : 0)) {
                restore();
                step *= 0.4;
                if (step < LEAST_STEP) {
                    return false;
                }
                continue;
            }
            if (watched() <= 0) {
                return end(0, before, step, watched(), step) && (state[FREE] <= target || back(target));
            }
            if (state[FREE] >= target) {
                return back(target);
            }
            step = Math.min(LONGEST_STEP, 1.6 * step);
        }
        return false;
    }

    private void restore() {
        System.arraycopy(from, 0, state, 0, UNKNOWNS);
        System.arraycopy(fromTangent, 0, tangent, 0, UNKNOWNS);
        rise = tangent[FREE];
    }

    /** Back to a value of λ that was passed. */
    private boolean back(double target) {
        turned = false;
        double share = (target - from[FREE]) / (state[FREE] - from[FREE]);
        for (int k = 0; k < UNKNOWNS; k++) {
            trial[k] = from[k] + share * (state[k] - from[k]);
        }
        System.arraycopy(trial, 0, from, 0, UNKNOWNS);
        from[FREE] = target;
        trial[FREE] = target;
        borderByLambda();
        if (!correct(from, 0)) {
            return false;
        }
        measure();
        return true;
    }

    /**
     * The end between two reaches from {@link #from}, with what is watched at each, above 0 at the first and not at the second; the state is that
     * of {@code last}. False position, halved where it creeps (Illinois).
     */
    private boolean end(double within, double above, double beyond, double below, double last) {
        double inside = within;
        double outside = beyond;
        double a = above;
        double b = below;
        double here = last;
        int side = 0;
        for (int i = 0; i < REFINEMENTS; i++) {
            if (ended() || Math.abs(outside - inside) < CLOSE) {
                turned = rise <= spare;
                return true;
            }
            double share = a / (a - b);
            double next = inside + (share > 0 && share < 1 ? share : 0.5) * (outside - inside);
            if (!onTo(next, here)) {
                return false;
            }
            double watched = watched();
            fall = Math.abs(watched - (watched > 0 ? a : b))
                    / Math.max(Math.abs(next - (watched > 0 ? inside : outside)), CLOSE);
            here = next;
            if (watched > 0) {
                inside = next;
                a = watched;
                b = side > 0 ? 0.5 * b : b;
                side = 1;
            } else {
                outside = next;
                b = watched;
                a = side < 0 ? 0.5 * a : a;
                side = -1;
            }
        }
        return false;
    }

    private boolean ended() {
        return rise <= spare ? Math.abs(rise) < FLAT : Math.abs(spare) < USED;
    }

    /**
     * The end near a state and direction at which it was met before: from there by secants. False where they do not lead to one.
     *
     * @param near the state
     * @param direction of the curve there
     * @param falls how fast what ends the curve fell along it
     */
    boolean endNear(double[] near, double[] direction, double falls) {
        System.arraycopy(near, 0, from, 0, UNKNOWNS);
        System.arraycopy(direction, 0, fromTangent, 0, UNKNOWNS);
        if (!at(0) || cosine() < BENT) {
            return false;
        }
        remember();
        fall = falls > LEAST_FALL ? falls : 1;
        double here = 0;
        double watched = watched();
        double moved = 0;
        for (int i = 0; i < SECANTS; i++) {
            if (ended()) {
                turned = rise <= spare;
                return true;
            }
            double reach = watched / fall;
            double longest = i == 0 ? FARTHEST_SECANT : Math.min(FARTHEST_SECANT, GROWTH * moved);
            double next = here + (Math.abs(reach) < longest ? reach : Math.copySign(longest, reach));
            if (!onTo(next, here) || cosine() < BENT) {
                return false;
            }
            double now = watched();
            double falling = (watched - now) / (next - here);
            if (now > 0 != watched > 0) {
                return watched > 0 ? end(here, watched, next, now, next) : end(next, now, here, watched, next);
            }
            fall = falling > LEAST_FALL ? falling : 0.5 * fall;
            moved = Math.max(LEAST_MOVE, Math.abs(next - here));
            here = next;
            watched = now;
        }
        return false;
    }

    /** How fast what ended the curve fell along it at the last end. */
    double fall() {
        return fall;
    }
}
