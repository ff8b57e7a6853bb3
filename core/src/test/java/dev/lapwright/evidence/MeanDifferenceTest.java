package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Tests of means against printed results. */
class MeanDifferenceTest {
    /** NIST/SEMATECH e-Handbook 1.3.5.3, AUTO83B: miles per gallon of cars from the USA and Japan. */
    private static final Sample USA = new Sample(249, 20.14458, 6.41470);

    private static final Sample JAPAN = new Sample(79, 30.48101, 6.10771);

    /** Student, Biometrika 6 (1908), and R's data set sleep: more hours of sleep by two drugs. */
    private static final double[] FIRST_DRUG = {0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0};

    private static final double[] SECOND_DRUG = {1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};

    @Test
    void twoSamplesOfTheHandbookPoolAsItSays() {
        // Handbook 1.3.5.3: pooled standard deviation 6.34260, T = -12.62059; half a unit of the last digit printed.
        double pooled = Sample.pooled(USA, JAPAN);
        assertThat(pooled).isCloseTo(6.34260, within(5e-6));
        double t = (USA.mean() - JAPAN.mean()) / (pooled * Math.sqrt(1.0 / 249 + 1.0 / 79));
        assertThat(t).isCloseTo(-12.62059, within(1e-5));
    }

    @Test
    void twoSamplesOfTheHandbookDifferAsItSaysWithoutPooling() {
        // Handbook 1.3.5.3, variances not assumed equal: T = -12.94627, 136.875 degrees of freedom (from memory; they
        // follow
        // from Welch's formulas and the summaries); half a unit of the last digit and the rounding of the summaries.
        MeanDifference welch = MeanDifference.of(JAPAN, USA);
        assertThat(welch.t()).isCloseTo(-12.94627, within(1e-5));
        assertThat(welch.freedom()).isCloseTo(136.875, within(5e-4));
    }

    @Test
    void studentsSleepDifferAsInR() {
        // R documentation, t.test(extra ~ group, data = sleep), Welch: t = -1.8608, df = 17.776, p-value = 0.07939, 95
        // percent
        // interval -3.3654832 to 0.2054832 of the first less the second; half a unit of the last digit.
        MeanDifference welch = MeanDifference.of(Sample.of(SECOND_DRUG), Sample.of(FIRST_DRUG));
        assertThat(welch.t()).isCloseTo(-1.8608, within(5e-5));
        assertThat(welch.freedom()).isCloseTo(17.776, within(5e-4));
        assertThat(welch.p()).isCloseTo(0.07939, within(5e-6));
        assertThat(welch.low()).isCloseTo(-3.3654832, within(5e-8));
        assertThat(welch.high()).isCloseTo(0.2054832, within(5e-8));
        assertThat(welch.isSignificant()).isFalse();
    }

    @Test
    void secondFasterThanFirstIsBelowNought() {
        assertThat(MeanDifference.of(new Sample(5, 90, 0.2), new Sample(5, 89, 0.2))
                        .difference())
                .isEqualTo(-1);
    }

    @Test
    void theMiddleOfTwoSamplesIsSurerThanEither() {
        // Variance of -a/2 - b/2 + c with equal samples: (1/4 + 1/4 + 1) s²/n; rounding only.
        Sample sample = new Sample(8, 90, 0.2);
        MeanDifference bracketed =
                MeanDifference.of(List.of(sample, sample, sample), new double[] {-0.5, -0.5, 1}, 0, 1);
        assertThat(bracketed.error()).isCloseTo(0.2 * Math.sqrt(1.5 / 8), within(1e-12));
    }

    @Test
    void varianceFromElsewhereWidensTheInterval() {
        Sample sample = new Sample(8, 90, 0.2);
        MeanDifference wide = MeanDifference.of(List.of(sample, sample), new double[] {-1, 1}, 0.03, 10);
        // 2 * 0.04 / 8 + 0.03; rounding only.
        assertThat(wide.error()).isCloseTo(0.2, within(1e-12));
    }
}
