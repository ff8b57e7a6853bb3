package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;

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

    @ParameterizedTest(name = "{0}")
    @CheckFile("bootstrap.csv")
    void theBootstrapIsTheBooksWithinItsChance(CheckRow row) {
        double[] first = row.text("data").equals("both") ? CONTROL : new double[] {0};
        BootstrapInterval interval = bootstrap(first, TREATED, 1);
        row.verify(
                switch (row.quantity()) {
                    case "standard error of the difference of means", "standard error of the mean" -> interval.error();
                    case "2.5 % point of the mean" -> interval.low();
                    case "97.5 % point of the mean" -> interval.high();
                    default -> throw new IllegalArgumentException(row.quantity());
                });
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
