package dev.lapwright.track.survey;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.SingularMatrixException;

/**
 * The closing of a loop laid out from a measured curvature. The heading error is spread evenly over the length, which is what a constant
 * error of the curvature leaves. The gap that is left is closed by the least change of curvature that does so, in the sense of
 * its integrated square. To first order a change δκ turns what lies ahead of it about its own place and moves the end by
 * (−∫(yₑ − y) δκ ds, ∫(xₑ − x) δκ ds); the least one is therefore a sum of 1, x and y (Lagrange multipliers), and Newton's
 * method finds its three numbers.
 */
final class LoopClosure {
    /** A log that errs more than this does not show a whole lap in the units said. */
    private static final double WORST_HEADING = Math.toRadians(90);

    private static final double WORST_GAP = 0.15;
    private static final double MPH = 0.44704;
    /** Less than half of what lies between the ratios told apart, 9.8 and 13. */
    private static final double SAME_RATIO = 0.08;

    /** Rounds turned that are those of more laps than one. */
    private static final double SEVERAL = 1.7;

    private static final int STEPS = 30;
    private static final double CLOSED = 1e-6;

    private final double[] curvature;
    private final double headingError;
    private final double positionGap;
    private final double largestChange;

    /**
     * @param measured 1/m, at even steps, the last at the start again
     * @param step m
     * @param crossesItself whether the whole rounds may be other than one
     * @param hint what the units look like; empty if nothing is odd
     */
    LoopClosure(double[] measured, double step, boolean crossesItself, String hint) {
        double turning = new DeadReckoning(measured, step).turning();
        double rounds = crossesItself ? Math.rint(turning / (2 * Math.PI)) : Math.copySign(1, turning);
        double wanted = 2 * Math.PI * rounds;
        headingError = turning - wanted;
        if (!(Math.abs(headingError) <= WORST_HEADING)) {
            throw new InvalidValueException(
                    "log",
                    "the lap turns by " + Math.round(Math.toDegrees(turning)) + "° in all, where one round turns by "
                            + Math.round(Math.toDegrees(wanted)) + "°",
                    hint.isEmpty() ? remedy(wanted / turning) : hint);
        }
        double length = step * (measured.length - 1);
        double[] level = new double[measured.length];
        for (int i = 0; i < level.length; i++) {
            level[i] = measured[i] - headingError / length;
        }
        DeadReckoning path = new DeadReckoning(level, step);
        positionGap = path.gap();
        if (!(positionGap <= WORST_GAP * length)) {
            throw new InvalidValueException(
                    "log",
                    "the lap ends " + Math.round(positionGap) + " m from where it began, after " + Math.round(length)
                            + " m",
                    hint.isEmpty() ? "give one whole lap, and check the units of speed and acceleration" : hint);
        }
        curvature = close(level, path, wanted);
        double largest = 0;
        for (int i = 0; i < level.length; i++) {
            largest = Math.max(largest, Math.abs(curvature[i] - measured[i]));
        }
        largestChange = largest;
    }

    /** Curvature goes with a/v², and over distances from times with a/v: each unit taken for another has its own ratio. */
    private static String remedy(double ratio) {
        String looks = "";
        if (near(ratio, 3.6) || near(ratio, 3.6 * 3.6)) {
            looks = "speeds look like km/h taken for m/s; put the unit in the heading, as in speed (km/h); ";
        } else if (near(ratio, 1 / MPH) || near(ratio, 1 / (MPH * MPH))) {
            looks = "speeds look like mph taken for m/s; put the unit in the heading, as in speed (mph); ";
        } else if (near(ratio, StandardAtmosphere.GRAVITY)) {
            looks = "lateral accelerations look like g; put the unit in the heading, as in lateral acceleration (g); ";
        }
        if (looks.isEmpty() && 1 / ratio > SEVERAL) {
            looks =
                    "there seem to be several laps and nothing that parts them: add a column lap, or let distance or time start"
                            + " anew at the line; ";
        }
        return looks + "give one whole lap, and check the units of speed and acceleration";
    }

    private static boolean near(double ratio, double wanted) {
        return Math.abs(ratio / wanted - 1) < SAME_RATIO;
    }

    private static double[] close(double[] level, DeadReckoning first, double wanted) {
        int n = level.length;
        double length = first.length();
        double[][] basis = new double[3][n];
        for (int i = 0; i < n; i++) {
            // Less the gap so far, so that what is added is the same at the end as at the start.
            double share = (double) i / (n - 1);
            basis[0][i] = 1;
            basis[1][i] = (first.x(i) - share * first.x(n - 1)) / length;
            basis[2][i] = (first.y(i) - share * first.y(n - 1)) / length;
        }
        double[] mended = level.clone();
        for (int step = 0; step < STEPS; step++) {
            DeadReckoning path = new DeadReckoning(mended, first.step());
            double turn = path.turning() - wanted;
            if (path.gap() < CLOSED && Math.abs(turn) < CLOSED / length) {
                return mended;
            }
            double[] change = change(basis, path, turn);
            for (int i = 0; i < n; i++) {
                mended[i] += change[0] * basis[0][i] + change[1] * basis[1][i] + change[2] * basis[2][i];
            }
        }
        throw new InvalidValueException(
                "log",
                "no small change of its curvature brings the end of the lap to its start: a gap of "
                        + Check.text(Math.rint(first.gap())) + " m is left",
                "give one whole lap, and check the units of speed and acceleration");
    }

    private static double[] change(double[][] basis, DeadReckoning path, double turn) {
        int n = path.count();
        double endX = path.x(n - 1);
        double endY = path.y(n - 1);
        double[][] effect = new double[3][3];
        for (int k = 0; k < 3; k++) {
            for (int i = 0; i < n; i++) {
                double part = (i == 0 || i == n - 1 ? 0.5 : 1) * path.step() * basis[k][i];
                effect[0][k] += part;
                effect[1][k] -= (endY - path.y(i)) * part;
                effect[2][k] += (endX - path.x(i)) * part;
            }
        }
        try {
            return new LUDecomposition(new Array2DRowRealMatrix(effect, false))
                    .getSolver()
                    .solve(new ArrayRealVector(new double[] {-turn, -endX, -endY}))
                    .toArray();
        } catch (SingularMatrixException e) {
            // A straight line: the first step has said that it does not close.
            return new double[3];
        }
    }

    /** The mended curvature, 1/m; not copied. */
    double[] curvature() {
        return curvature;
    }

    double headingError() {
        return headingError;
    }

    double positionGap() {
        return positionGap;
    }

    double largestChange() {
        return largestChange;
    }
}
