package dev.lapwright.doubt;

import dev.lapwright.fault.InvalidValueException;
import java.util.Arrays;
import java.util.Comparator;
import org.apache.commons.math3.distribution.FDistribution;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;

/**
 * Shares of each unknown in the variance of an answer, of first order (Sobol): what would go if that unknown alone were known exactly,
 * Var(E[y | x]) / Var(y). From any sample whose unknowns are independent: the draws are cut along one unknown into bins of like size,
 * and the variance between the bins' means is taken (the correlation ratio: McKay, Evaluating Prediction Uncertainty, NUREG/CR-6311
 * (1995)), less what it would be by chance (epsilon squared: Kelley, Proc. Natl. Acad. Sci. 21 (1935) 554); both from memory.
 * What unknowns do only together is in no share.
 */
public final class VarianceShares {
    private static final int FEWEST_BINS = 4;
    private static final double BINS_PER_ROOT = 0.4;
    private static final int FEWEST_DRAWS = 16;
    private static final double LEVEL = 0.05;

    private VarianceShares() {}

    /**
     * Shares of each unknown; all 0 where the answer is always the same. By chance a share may lie a little below 0.
     *
     * @param unknowns draws (at least 16) by unknowns; not modified
     * @param answers one for each draw; not modified
     */
    public static double[] firstOrder(double[][] unknowns, double[] answers) {
        int n = answers.length;
        if (n < FEWEST_DRAWS || unknowns.length != n) {
            throw new InvalidValueException(
                    "draws", unknowns.length + " with " + n + " answers", "give at least 16, with an answer each");
        }
        double mean = Arrays.stream(answers).average().orElseThrow();
        double all = 0;
        for (double answer : answers) {
            all += (answer - mean) * (answer - mean);
        }
        double[] shares = new double[unknowns[0].length];
        if (all > 0) {
            for (int k = 0; k < shares.length; k++) {
                double explained = betweenBins(unknowns, k, answers, mean) / all;
                shares[k] = 1 - (1 - explained) * (n - 1) / (n - bins(n));
            }
        }
        return shares;
    }

    /**
     * Share that none of so many unknowns which do nothing reaches by chance, in 19 answers of 20: by the F distribution of normal
     * answers, its level shared out among the unknowns (Bonferroni).
     *
     * @param unknowns at least 1
     */
    public static double chance(int draws, int unknowns) {
        int within = draws - bins(draws);
        int between = bins(draws) - 1;
        double ratio = new FDistribution(null, between, within).inverseCumulativeProbability(1 - LEVEL / unknowns);
        double explained = between * ratio / (between * ratio + within);
        return 1 - (1 - explained) * (draws - 1) / within;
    }

    /**
     * Share of unknowns together, as far as the answer goes straight with them: the squared correlation of a least-squares fit, less what it
     * would be by chance (adjusted R²: Ezekiel, Methods of Correlation Analysis (1930), from memory). NaN where there are too few draws
     * for as many unknowns.
     *
     * @param unknowns draws by those unknowns; not modified
     * @param answers one for each draw; not modified
     */
    public static double together(double[][] unknowns, double[] answers) {
        int n = answers.length;
        int p = unknowns[0].length;
        if (n < FEWEST_DRAWS || n - 1 - p < p) {
            return Double.NaN;
        }
        double first = answers[0];
        if (Arrays.stream(answers).allMatch(answer -> answer == first)) {
            return 0;
        }
        OLSMultipleLinearRegression fit = new OLSMultipleLinearRegression();
        fit.newSampleData(answers, unknowns);
        return fit.calculateAdjustedRSquared();
    }

    /**
     * Share that so many unknowns together which do nothing do not reach by chance, as {@link #chance}.
     *
     * @param together how many are asked of together
     * @param unknowns how many answers are looked through for the greatest
     */
    public static double chanceTogether(int draws, int together, int unknowns) {
        int within = draws - 1 - together;
        double ratio = new FDistribution(null, together, within).inverseCumulativeProbability(1 - LEVEL / unknowns);
        double explained = together * ratio / (together * ratio + within);
        return 1 - (1 - explained) * (draws - 1) / within;
    }

    private static int bins(int draws) {
        return Math.max(FEWEST_BINS, (int) (BINS_PER_ROOT * Math.sqrt(draws)));
    }

    private static double betweenBins(double[][] unknowns, int k, double[] answers, double mean) {
        int n = answers.length;
        Integer[] order = new Integer[n];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, Comparator.comparingDouble(i -> unknowns[i][k]));
        int bins = bins(n);
        double between = 0;
        for (int b = 0; b < bins; b++) {
            int from = (int) ((long) b * n / bins);
            int to = (int) ((long) (b + 1) * n / bins);
            double sum = 0;
            for (int i = from; i < to; i++) {
                sum += answers[order[i]] - mean;
            }
            between += sum * sum / (to - from);
        }
        return between;
    }
}
