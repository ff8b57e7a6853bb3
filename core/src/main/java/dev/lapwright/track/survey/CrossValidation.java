package dev.lapwright.track.survey;

import dev.lapwright.numerics.CubicSpline;
import dev.lapwright.numerics.SplineKnots;
import java.util.Arrays;
import java.util.List;

/**
 * The choice of how strongly to smooth from the data alone, by generalised cross-validation: the strength that least foretells each
 * point wrongly from the others, Σ(y − g)² / (1 − tr A / n)². P. Craven and G. Wahba, Numerische Mathematik 31, 1979 (cited
 * from memory). It takes the errors of neighbouring points to be independent.
 */
final class CrossValidation {
    private static final int GRID = 33;
    /** A step of the grid is then known to a hundredth: far closer than the data tell the strength. */
    private static final int REFINEMENTS = 8;

    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    /**
     * A fit and how it was made.
     *
     * @param splines one for each list of values
     * @param wavelength the length of waves that lose half their height, m; 0 where nothing was smoothed
     * @param noise standard deviation of the points' errors in one coordinate as the fit sees it, m; NaN if it cannot tell
     * @param left how many numbers of each list are left over to tell the noise from
     */
    record Result(List<CubicSpline> splines, double wavelength, double noise, double left) {}

    private CrossValidation() {}

    /** Smooths by the best strength, with one strength for all lists of values. */
    static Result best(SplineKnots knots, double[]... values) {
        Grid grid = new Grid(knots, values);
        return byHand(knots, grid.refined(grid.least(0, GRID - 1)), values);
    }

    /** Wavelengths from half a step to half the span, in equal ratios. */
    private static final class Grid {
        private final SplineKnots knots;
        private final double[][] values;
        private final double low;
        private final double gap;

        Grid(SplineKnots knots, double[][] values) {
            this.knots = knots;
            this.values = values;
            low = Math.log(0.5 * knots.meanStep());
            double high = Math.log(Math.max(2 * knots.meanStep(), knots.span() / 2));
            gap = (high - low) / (GRID - 1);
        }

        double wavelength(int index) {
            return Math.exp(low + index * gap);
        }

        int least(int from, int to) {
            int least = from;
            double leastScore = Double.POSITIVE_INFINITY;
            for (int i = from; i <= to; i++) {
                double score = score(knots, wavelength(i), values);
                if (score < leastScore) {
                    leastScore = score;
                    least = i;
                }
            }
            return least;
        }

        /** The best wavelength between the neighbours of this one, by the golden section. */
        double refined(int least) {
            double a = low + Math.max(0, least - 1) * gap;
            double b = low + Math.min(GRID - 1, least + 1) * gap;
            double c = b - GOLDEN * (b - a);
            double d = a + GOLDEN * (b - a);
            double scoreC = score(knots, Math.exp(c), values);
            double scoreD = score(knots, Math.exp(d), values);
            for (int i = 0; i < REFINEMENTS; i++) {
                if (scoreC < scoreD) {
                    b = d;
                    d = c;
                    scoreD = scoreC;
                    c = b - GOLDEN * (b - a);
                    scoreC = score(knots, Math.exp(c), values);
                } else {
                    a = c;
                    c = d;
                    scoreC = scoreD;
                    d = a + GOLDEN * (b - a);
                    scoreD = score(knots, Math.exp(d), values);
                }
            }
            return Math.exp((a + b) / 2);
        }
    }

    /** Smooths so that evenly spaced points lose half the height of waves of this length (m); 0 goes through all points. */
    static Result byHand(SplineKnots knots, double wavelength, double[]... values) {
        SplineKnots.Fit fit = knots.fit(knots.strengthOf(wavelength));
        List<CubicSpline> splines = Arrays.stream(values).map(fit::spline).toList();
        double left = knots.count() - fit.freedom();
        return new Result(
                splines, wavelength, deviation(squares(splines, values) / values.length, left, knots.count()), left);
    }

    /** Deviation of errors whose squares have this sum; NaN where hardly a number is left over, so that it is 0/0. */
    static double deviation(double squares, double left, int count) {
        return left > 1e-3 * count ? Math.sqrt(squares / left) : Double.NaN;
    }

    /** The score of one wavelength. */
    static double score(SplineKnots knots, double wavelength, double[]... values) {
        SplineKnots.Fit fit = knots.fit(knots.strengthOf(wavelength));
        double left = 1 - fit.freedom() / knots.count();
        return squares(Arrays.stream(values).map(fit::spline).toList(), values) / (left * left);
    }

    private static double squares(List<CubicSpline> splines, double[][] values) {
        double sum = 0;
        for (int k = 0; k < values.length; k++) {
            for (int i = 0; i < values[k].length; i++) {
                double miss = values[k][i] - splines.get(k).valueAtKnot(i);
                sum += miss * miss;
            }
        }
        return sum;
    }
}
