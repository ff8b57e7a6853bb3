package dev.lapwright.fit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Finds what laps cannot tell apart, from an information matrix in the units u of what is usually in doubt: along an
 * eigenvector with too little information nothing is known that was not known before. Of the parameters that make it up
 * the one is held whose absence leaves the rest best known (subset selection; Golub and Van Loan, Matrix Computations,
 * section 5.5, does the same by pivoting): holding one at the car's own value keeps the others in plain terms, where a
 * ridge would shift all of them by a mixture that nobody asked for.
 */
final class FitTies {
    /** Of the largest entry of a direction: below, a parameter is no part of the tie. A tenth is 1 % of grip. */
    private static final double PART = 0.1;

    private static final double LOOSE = 0.95;

    private FitTies() {}

    /** A direction in u that is not known, and which parameter to hold. */
    record Weak(double[] direction, int hold) {}

    /** The weakest direction, if its information is below a limit. */
    static Optional<Weak> weakest(RealMatrix information, double least) {
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
        return Optional.of(new Weak(direction, hold));
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

    /** In the parameters' units, the first of them rising. */
    static FitTie tie(Weak weak, List<FitScale> scales, double[] u) {
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
        return new FitTie(together, List.of(scales.get(weak.hold()).parameter()), Double.NaN);
    }

    /** Pairs that were fitted, each by itself known far less well than the two together. */
    static List<FitTie> loose(RealMatrix covariance, List<FitScale> scales, double[] u) {
        List<FitTie> ties = new ArrayList<>();
        for (int i = 0; i < u.length; i++) {
            for (int j = i + 1; j < u.length; j++) {
                double a = Math.sqrt(covariance.getEntry(i, i));
                double b = Math.sqrt(covariance.getEntry(j, j));
                double correlation = covariance.getEntry(i, j) / (a * b);
                if (Math.abs(correlation) > LOOSE) {
                    Map<FitParameter, Double> together = new LinkedHashMap<>();
                    together.put(scales.get(i).parameter(), a * scales.get(i).slope(u[i]));
                    together.put(
                            scales.get(j).parameter(),
                            Math.signum(correlation) * b * scales.get(j).slope(u[j]));
                    ties.add(new FitTie(together, List.of(), correlation));
                }
            }
        }
        return ties;
    }
}
