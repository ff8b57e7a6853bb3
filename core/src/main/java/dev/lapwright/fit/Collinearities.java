package dev.lapwright.fit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Collinearity analysis of the fitted parameters by the eigenvectors of their information matrix, in the units u of what is
 * usually in doubt: along an eigenvector with too little information the laps tell nothing that was not known before. Of the
 * parameters in it, the one is held whose absence leaves the rest best known (subset selection; Golub and Van Loan, Matrix
 * Computations, section 5.5, does the same by pivoting): holding one at the car's own value keeps the others interpretable,
 * where a ridge would shift all of them by a mixture.
 */
final class Collinearities {
    /** Of the largest entry of a direction: below, a parameter is no part of it. A tenth is 1 % of grip. */
    private static final double PART = 0.1;

    /** Correlation of two fitted parameters from which they are said to be collinear. */
    private static final double STRONG = 0.95;

    private Collinearities() {}

    /**
     * Direction of the parameters without enough information.
     *
     * @param direction in u, its greatest entry ±1
     * @param hold index of the parameter to hold
     */
    record WeakDirection(double[] direction, int hold) {}

    /** The weakest direction, if its information is below a limit. */
    static Optional<WeakDirection> weakest(RealMatrix information, double least) {
        EigenDecomposition parts = new EigenDecomposition(information);
        double[] values = parts.getRealEigenvalues();
        int weakest = 0;
        for (int j = 1; j < values.length; j++) {
            if (values[j] < values[weakest]) {
                weakest = j;
            }
        }
        if (values[weakest] >= least) {
            return Optional.empty();
        }
        double[] direction = parts.getEigenvector(weakest).toArray();
        double most = 0;
        for (double entry : direction) {
            most = Math.max(most, Math.abs(entry));
        }
        int hold = -1;
        double best = Double.NEGATIVE_INFINITY;
        for (int j = 0; j < direction.length; j++) {
            direction[j] = Math.abs(direction[j]) >= PART * most ? direction[j] / most : 0;
            // Later parameters are held rather than earlier ones where it is all the same.
            double left = direction[j] == 0 ? Double.NEGATIVE_INFINITY : leastWithout(information, j);
            if (direction[j] != 0 && left >= best * (1 - 1e-9)) {
                best = left;
                hold = j;
            }
        }
        return Optional.of(new WeakDirection(direction, hold));
    }

    private static double leastWithout(RealMatrix information, int out) {
        int p = information.getRowDimension();
        if (p == 1) {
            return 0;
        }
        int[] kept = new int[p - 1];
        for (int j = 0, k = 0; j < p; j++) {
            if (j != out) {
                kept[k++] = j;
            }
        }
        double least = Double.POSITIVE_INFINITY;
        for (double value : new EigenDecomposition(information.getSubMatrix(kept, kept)).getRealEigenvalues()) {
            least = Math.min(least, value);
        }
        return least;
    }

    /** Collinearity of a direction of which one parameter is held, in the parameters' units, the first of them rising. */
    static FitResult.Collinearity held(WeakDirection weak, List<ParameterScale> scales, double[] u) {
        Map<FitParameter, Double> together = new LinkedHashMap<>();
        double sign = 0;
        for (int j = 0; j < u.length; j++) {
            if (weak.direction()[j] != 0) {
                sign = sign == 0 ? Math.signum(weak.direction()[j]) : sign;
                together.put(
                        scales.get(j).parameter(),
                        sign * weak.direction()[j] * scales.get(j).slope(u[j]));
            }
        }
        return new FitResult.Collinearity(
                together, List.of(scales.get(weak.hold()).parameter()), Double.NaN);
    }

    /** Pairs of fitted parameters with a strong correlation: each by itself is known far less well than the two together. */
    static List<FitResult.Collinearity> correlated(RealMatrix covariance, List<ParameterScale> scales, double[] u) {
        List<FitResult.Collinearity> found = new ArrayList<>();
        for (int i = 0; i < u.length; i++) {
            for (int j = i + 1; j < u.length; j++) {
                double a = Math.sqrt(covariance.getEntry(i, i));
                double b = Math.sqrt(covariance.getEntry(j, j));
                double correlation = covariance.getEntry(i, j) / (a * b);
                if (Math.abs(correlation) > STRONG) {
                    Map<FitParameter, Double> together = new LinkedHashMap<>();
                    together.put(scales.get(i).parameter(), a * scales.get(i).slope(u[i]));
                    together.put(
                            scales.get(j).parameter(),
                            Math.signum(correlation) * b * scales.get(j).slope(u[j]));
                    found.add(new FitResult.Collinearity(together, List.of(), correlation));
                }
            }
        }
        return found;
    }
}
