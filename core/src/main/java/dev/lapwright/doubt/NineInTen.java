package dev.lapwright.doubt;

import org.apache.commons.math3.stat.descriptive.rank.Percentile;

/**
 * Interval in which nine of ten values lie, told by some that were drawn: so that a further one, drawn likewise, lies within with a chance of
 * 90 %, however few they are, from 19 on; of fewer it is from the least to the greatest.
 *
 * <p>Of n values that were drawn alike, a further one lies below the k-th smallest with the chance k/(n + 1), whatever their distribution
 * (S. S. Wilks, Annals of Mathematical Statistics 12 (1941) 91, from memory). So the p-th part lies below the place p (n + 1): type 6 of R. J. Hyndman and
 * Y. Fan, The American Statistician 50 (1996) 361.
 */
public final class NineInTen {
    private static final double LOW = 5;
    private static final double MIDDLE = 50;
    private static final double HIGH = 95;

    private NineInTen() {}

    /**
     * Lower end.
     *
     * @param values at least one; not modified
     */
    public static double low(double[] values) {
        return at(LOW, values);
    }

    /**
     * Median.
     *
     * @param values at least one; not modified
     */
    public static double middle(double[] values) {
        return at(MIDDLE, values);
    }

    /**
     * Upper end.
     *
     * @param values at least one; not modified
     */
    public static double high(double[] values) {
        return at(HIGH, values);
    }

    private static double at(double percent, double[] values) {
        return new Percentile()
                .withEstimationType(Percentile.EstimationType.R_6)
                .evaluate(values, percent);
    }
}
