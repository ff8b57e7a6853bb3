package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The bootstrap against the book on it. */
class BootstrapIntervalTest {
    /** B. Efron and R. Tibshirani, An Introduction to the Bootstrap (1993), table 2.1: survival of mice, days. */
    private static final double[] TREATED = {94, 197, 16, 38, 99, 141, 23};

    private static final double[] CONTROL = {52, 104, 146, 10, 51, 30, 40, 27, 46};
    private static final int RESAMPLES = 100_000;

    private static BootstrapInterval bootstrap(double[] first, double[] second, long seed) {
        return BootstrapInterval.of(points(first, second), 0, 1, false, RESAMPLES, seed);
    }

    private static BootstrapInterval.Points points(double[] first, double[] second) {
        int count = first.length + second.length;
        int[] stratum = new int[count];
        double[] y = new double[count];
        for (int i = 0; i < count; i++) {
            stratum[i] = i < first.length ? 0 : 1;
            y[i] = i < first.length ? first[i] : second[i - first.length];
        }
        return new BootstrapInterval.Points(stratum, stratum, new double[count], y);
    }

    @Test
    void theErrorOfADifferenceOfMeansIsThatOfAllResamples() {
        // Of infinitely many resamples sqrt(S1/n1² + S2/n2²), S the sums of squares about the means (Efron and
        // Tibshirani,
        // equation 5.12): 26.9081. The standard deviation of 100 000 errs by 1/sqrt(200 000) = 0.2 %; five times that.
        assertThat(bootstrap(CONTROL, TREATED, 1).error()).isCloseTo(26.9081, within(0.01 * 26.9081));
    }

    @Test
    void theErrorOfOneMeanIsTheBooksWithinItsChance() {
        // Table 2.2: 23.02 with 1000 resamples, whose standard deviation errs by 1/sqrt(2000) = 2.2 %; the sum over all
        // resamples is 23.36, so 3 %.
        assertThat(bootstrap(new double[] {0}, TREATED, 1).error()).isCloseTo(23.02, within(0.03 * 23.02));
    }

    @Test
    void theIntervalOfOneMeanIsTheBooksWithinItsChance() {
        // Table 13.1: 2.5 and 97.5 percent points 45.9 and 135.4 with 1000 resamples; points so far out err by several
        // percent then.
        BootstrapInterval interval = bootstrap(new double[] {0}, TREATED, 1);
        assertThat(interval.low()).isCloseTo(45.9, within(0.06 * 45.9));
        assertThat(interval.high()).isCloseTo(135.4, within(0.06 * 135.4));
    }

    @Test
    void theShareOfFasterOnesIsOnTheSideOfTheDifference() {
        // The treated lived longer by 30.63, 1.14 standard errors: about 13 % of a normal distribution lie below
        // nought; with
        // seven and nine mice the shape is not quite normal.
        assertThat(bootstrap(CONTROL, TREATED, 1).fasterShare()).isCloseTo(0.13, within(0.02));
    }

    @Test
    void theSameSeedDrawsTheSame() {
        assertThat(bootstrap(CONTROL, TREATED, 7)).isEqualTo(bootstrap(CONTROL, TREATED, 7));
    }

    @Test
    void anotherSeedDrawsOthers() {
        assertThat(bootstrap(CONTROL, TREATED, 7).low())
                .isNotEqualTo(bootstrap(CONTROL, TREATED, 8).low());
    }

    @Test
    void theTrendIsFittedAnewToEachDraw() {
        // Laps on one straight line, and the second setup later on it: with the slope fitted every draw says no
        // difference.
        double[] x = {-3, -2, -1, 1, 2, 3};
        double[] y = {-0.3, -0.2, -0.1, 0.1, 0.2, 0.3};
        int[] setup = {0, 0, 0, 1, 1, 1};
        BootstrapInterval interval =
                BootstrapInterval.of(new BootstrapInterval.Points(setup, new int[6], x, y), 0, 1, true, RESAMPLES, 1);
        // Rounding.
        assertThat(interval.low()).isCloseTo(0, within(1e-9));
        assertThat(interval.high()).isCloseTo(0, within(1e-9));
    }
}
