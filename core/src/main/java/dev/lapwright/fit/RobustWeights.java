package dev.lapwright.fit;

import java.util.Arrays;

/**
 * Weight functions of robust regression, which keep a driver's errors out of the fit, in the two steps of an MM-estimate (Yohai
 * 1987; Maronna, Martin and Yohai, Robust Statistics): Huber's weights until settled, then Tukey's bisquare, zero for what is
 * far off, both tuned to 95 % efficiency where residuals are normal. The scale is 1.4826 times the median absolute residual.
 */
final class RobustWeights {
    /** Tuning constants from the books named, for 95 % efficiency. */
    private static final double HUBER = 1.345;

    private static final double BISQUARE = 4.685;
    /** Median size of a standard normal is 1/1.4826. */
    private static final double NORMAL = 1.4826;
    /** Least scale, m/s: no log knows its speed better, and a log without noise would drop all but half of itself. */
    private static final double LEAST_SCALE = 0.02;

    private RobustWeights() {}

    /** Scale of the residuals that are let in. */
    static double scale(double[][] residuals, boolean[][] in) {
        double[] sizes =
                new double[Arrays.stream(residuals).mapToInt(r -> r.length).sum()];
        int n = 0;
        for (int k = 0; k < residuals.length; k++) {
            for (int c = 0; c < residuals[k].length; c++) {
                if (in[k][c]) {
                    sizes[n++] = Math.abs(residuals[k][c]);
                }
            }
        }
        Arrays.sort(sizes, 0, n);
        double median = n == 0 ? 0 : n % 2 == 1 ? sizes[n / 2] : 0.5 * (sizes[n / 2 - 1] + sizes[n / 2]);
        return Math.max(LEAST_SCALE, NORMAL * median);
    }

    static double huber(double residual, double scale) {
        double x = Math.abs(residual) / scale;
        return x <= HUBER ? 1 : HUBER / x;
    }

    static double bisquare(double residual, double scale) {
        double x = residual / (BISQUARE * scale);
        double rest = 1 - x * x;
        return rest > 0 ? rest * rest : 0;
    }

    /** Derivative ψ′(r) of the score ψ(r) = r w(r) of the bisquare, the weight of a residual in the Hessian of {@link SandwichCovariance}. */
    static double bisquareSlope(double residual, double scale) {
        double x = residual / (BISQUARE * scale);
        double rest = 1 - x * x;
        return rest > 0 ? rest * (1 - 5 * x * x) : 0;
    }
}
