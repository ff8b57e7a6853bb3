package dev.lapwright.car;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;

/**
 * Doubt of a car's quantities: how well each is known and from where, and how far they are known together. A quantity that is not named
 * has no stated doubt. Immutable.
 *
 * @param quantities doubt of each by its name, in the order of its document; unmodifiable
 * @param correlated names of quantities whose errors hang together, each with a doubt; empty if none do
 * @param correlation of their errors, in that order, −1 to 1; square and symmetric, 1 on its diagonal. Copied in and out
 */
public record CarDoubt(Map<String, Size> quantities, List<String> correlated, double[][] correlation) {
    /** Nothing stated. */
    public static final CarDoubt NONE = new CarDoubt(Map.of(), List.of(), new double[0][]);

    /** A correlation a little beyond its ends is rounding. */
    private static final double SLACK = 1e-9;

    /** Correlations written to three digits are off by so much, each. */
    private static final double ROUNDED = 1e-3;

    /** Where a quantity's value comes from. */
    public enum Source {
        WEIGHED,
        MEASURED,
        MAKER,
        ESTIMATED,
        FITTED
    }

    /**
     * Size of a doubt.
     *
     * @param amount above 0, in the quantity's unit, or percent of its value
     * @param percent whether it is percent of the value
     * @param limit whether it is a limit, beyond which the quantity is never off and within which it is anywhere alike; else one
     *     standard deviation
     * @param source where the value comes from
     */
    public record Size(double amount, boolean percent, boolean limit, Source source) {
        private static final double MOST_PERCENT = 100;

        public Size {
            if (percent) {
                Check.inRange("doubt (%)", amount, Double.MIN_NORMAL, MOST_PERCENT);
            } else {
                Check.positive("doubt", amount);
            }
        }

        /**
         * Standard deviation in the quantity's unit, for a value of it. That of a limit a is a/√3 (rectangular distribution; JCGM 100:2008,
         * Guide to the expression of uncertainty in measurement, 4.3.7).
         */
        public double standardDeviation(double value) {
            double size = percent ? amount / MOST_PERCENT * Math.abs(value) : amount;
            return limit ? size / Math.sqrt(3) : size;
        }
    }

    public CarDoubt {
        quantities = Collections.unmodifiableMap(new LinkedHashMap<>(quantities));
        correlated = List.copyOf(correlated);
        correlation = copy(correlation);
        check(quantities, correlated, correlation);
    }

    private static void check(Map<String, Size> quantities, List<String> correlated, double[][] correlation) {
        if (new HashSet<>(correlated).size() != correlated.size()) {
            throw new InvalidValueException("correlated", "a quantity is named twice", "name each once");
        }
        for (String name : correlated) {
            if (!quantities.containsKey(name)) {
                throw new InvalidValueException(
                        "correlated", name + " has no doubt", "give its doubt, or leave it out");
            }
        }
        int n = correlated.size();
        if (correlation.length != n) {
            throw new InvalidValueException(
                    "correlation",
                    "it has " + correlation.length + " rows for " + n + " quantities",
                    "give one row for each");
        }
        for (int i = 0; i < n; i++) {
            if (correlation[i].length != n || Math.abs(correlation[i][i] - 1) > SLACK) {
                throw new InvalidValueException(
                        "correlation", "row " + (i + 1) + " is not of " + n + " with 1 on the diagonal", "see to it");
            }
            for (int j = 0; j < n; j++) {
                Check.inRange("correlation", correlation[i][j], -1 - SLACK, 1 + SLACK);
                if (Math.abs(correlation[i][j] - correlation[j][i]) > SLACK) {
                    throw new InvalidValueException("correlation", "it is not symmetric", "give both halves alike");
                }
            }
        }
        if (n > 0 && least(correlation) < -ROUNDED * n) {
            throw new InvalidValueException(
                    "correlation",
                    "no errors hang together so: two that both go with a third cannot go against each other",
                    "see to the signs and sizes");
        }
    }

    private static double least(double[][] correlation) {
        double least = Double.POSITIVE_INFINITY;
        for (double value : new EigenDecomposition(new Array2DRowRealMatrix(correlation, false)).getRealEigenvalues()) {
            least = Math.min(least, value);
        }
        return least;
    }

    private static double[][] copy(double[][] rows) {
        double[][] copies = new double[rows.length][];
        for (int i = 0; i < rows.length; i++) {
            copies[i] = rows[i].clone();
        }
        return copies;
    }

    @Override
    public double[][] correlation() {
        return copy(correlation);
    }

    /** Whether nothing is stated. */
    public boolean isNone() {
        return quantities.isEmpty();
    }

    /** Correlation of the errors of two quantities; 0 where nothing is stated. */
    public double correlation(String one, String other) {
        if (one.equals(other)) {
            return 1;
        }
        int i = correlated.indexOf(one);
        int j = correlated.indexOf(other);
        return i < 0 || j < 0 ? 0 : correlation[i][j];
    }
}
