package dev.lapwright.evidence;

import java.util.Arrays;

/**
 * Least-squares slope common to several groups, each with a level of its own, as in an analysis of covariance (N. Draper and
 * H. Smith, <i>Applied Regression Analysis</i>; cited from memory).
 */
final class CommonSlope {
    /** Less than this is rounding: laps are whole. */
    private static final double NOTHING = 1e-9;

    private final double[] count;
    private final double[] sumX;
    private final double[] sumY;
    private final double[] sumXX;
    private final double[] sumXY;
    private final double[] sumYY;

    CommonSlope(int groups) {
        count = new double[groups];
        sumX = new double[groups];
        sumY = new double[groups];
        sumXX = new double[groups];
        sumXY = new double[groups];
        sumYY = new double[groups];
    }

    void clear() {
        for (double[] sums : new double[][] {count, sumX, sumY, sumXX, sumXY, sumYY}) {
            Arrays.fill(sums, 0);
        }
    }

    /** Counts a point in; values should lie about nought, for the sake of rounding. */
    void add(int group, double x, double y) {
        count[group]++;
        sumX[group] += x;
        sumY[group] += y;
        sumXX[group] += x * x;
        sumXY[group] += x * y;
        sumYY[group] += y * y;
    }

    /** Sum of squares of x about the means of the groups. */
    double spreadOfX() {
        return within(sumX, sumX, sumXX);
    }

    boolean hasSlope() {
        return spreadOfX() > NOTHING;
    }

    /** The slope; 0 where x does not vary within any group. */
    double slope() {
        double spread = spreadOfX();
        return spread > NOTHING ? within(sumX, sumY, sumXY) / spread : 0;
    }

    /** Sum of squares of what the slope and the groups' levels leave. */
    double residual() {
        return Math.max(0, within(sumY, sumY, sumYY) - slope() * within(sumX, sumY, sumXY));
    }

    /** How many groups have points. */
    int groups() {
        return (int) Arrays.stream(count).filter(n -> n > 0).count();
    }

    int points() {
        return (int) Arrays.stream(count).sum();
    }

    private double within(double[] a, double[] b, double[] products) {
        double sum = 0;
        for (int g = 0; g < count.length; g++) {
            if (count[g] > 0) {
                sum += products[g] - a[g] * b[g] / count[g];
            }
        }
        return sum;
    }
}
