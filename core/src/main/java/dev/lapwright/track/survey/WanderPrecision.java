package dev.lapwright.track.survey;

import dev.lapwright.track.survey.RoadPosterior.Errors;
import dev.lapwright.track.survey.RoadPosterior.WanderKind;
import java.util.Arrays;

/**
 * The precision, over that of a point's own errors, of the errors that neighbouring points have in common at even steps of a closed line:
 * a stationary process whose spectrum is a power of 1/(1/ℓ² + ω²) (Matérn).
 */
final class WanderPrecision {
    private final double[] diagonals;
    private final double logDeterminant;

    /**
     * @param step m
     * @param cosines of even parts of a round, one for each node
     */
    WanderPrecision(Errors errors, double step, double[] cosines) {
        int nodes = cosines.length;
        double[] q = unscaled(errors, step);
        double trace = 0;
        double log = 0;
        for (int k = 0; k < nodes; k++) {
            double e = q[0];
            for (int m = 1; m < q.length; m++) {
                e += 2 * q[m] * cosines[m * k % nodes];
            }
            trace += 1 / e;
            log += Math.log(e);
        }
        double scale = trace / nodes / errors.ratio();
        diagonals = Arrays.stream(q).map(d -> scale * d).toArray();
        logDeterminant = log + nodes * Math.log(scale);
    }

    /** From the main one on; not copied. */
    double[] diagonals() {
        return diagonals;
    }

    /** Logarithm of the determinant of a whole round. */
    double logDeterminant() {
        return logDeterminant;
    }

    /** Diagonals of (1/ℓ² − d²/ds²) to the kind's power, but for a factor. */
    private static double[] unscaled(Errors errors, double step) {
        double e = step / errors.length();
        if (errors.kind() == WanderKind.ROUGH) {
            double f = Math.exp(-e);
            return new double[] {1 + f * f, -f};
        }
        double d = 2 + e * e;
        double[] twice = {1, -2 * d, d * d + 2, -2 * d, 1};
        if (errors.kind() == WanderKind.SMOOTH) {
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
}
