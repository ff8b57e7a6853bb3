package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;

/** Tests of means against printed results. */
class MeanDifferenceTest {
    /** NIST/SEMATECH e-Handbook 1.3.5.3, AUTO83B: miles per gallon of cars from the USA and Japan. */
    private static final MeanDifference.Sample USA = new MeanDifference.Sample(249, 20.14458, 6.41470);

    private static final MeanDifference.Sample JAPAN = new MeanDifference.Sample(79, 30.48101, 6.10771);

    /** Student, Biometrika 6 (1908), and R's data set sleep: more hours of sleep by two drugs. */
    private static final double[] FIRST_DRUG = {0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0};

    private static final double[] SECOND_DRUG = {1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};

    @ParameterizedTest(name = "{0}")
    @CheckFile("mean-difference.csv")
    void meansDifferAsPrinted(CheckRow row) {
        boolean cars = row.text("data").equals("cars");
        MeanDifference welch = cars
                ? MeanDifference.of(USA, JAPAN)
                : MeanDifference.of(MeanDifference.Sample.of(FIRST_DRUG), MeanDifference.Sample.of(SECOND_DRUG));
        double pooled = MeanDifference.Sample.pooled(USA, JAPAN);
        row.verify(
                switch (row.quantity()) {
                    case "pooled standard deviation" -> pooled;
                    case "t, pooled" ->
                        (USA.mean() - JAPAN.mean()) / (pooled * Math.sqrt(1.0 / USA.count() + 1.0 / JAPAN.count()));
                    case "t, Welch's" -> welch.t();
                    case "degrees of freedom, Welch's" -> welch.freedom();
                    case "p" -> welch.p();
                    case "low end of the 95 % interval" -> welch.low();
                    case "high end of the 95 % interval" -> welch.high();
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    @Test
    void studentsSleepIsNoSignificantDifference() {
        // Its p of 0.07939 is above 5 %.
        assertThat(MeanDifference.of(MeanDifference.Sample.of(SECOND_DRUG), MeanDifference.Sample.of(FIRST_DRUG))
                        .isSignificant())
                .isFalse();
    }

    @Test
    void secondFasterThanFirstIsBelowNought() {
        assertThat(MeanDifference.of(new MeanDifference.Sample(5, 90, 0.2), new MeanDifference.Sample(5, 89, 0.2))
                        .difference())
                .isEqualTo(-1);
    }

    @Test
    void theMiddleOfTwoSamplesIsSurerThanEither() {
        // Variance of -a/2 - b/2 + c with equal samples: (1/4 + 1/4 + 1) s²/n; rounding only.
        MeanDifference.Sample sample = new MeanDifference.Sample(8, 90, 0.2);
        MeanDifference bracketed =
                MeanDifference.of(List.of(sample, sample, sample), new double[] {-0.5, -0.5, 1}, 0, 1);
        assertThat(bracketed.error()).isCloseTo(0.2 * Math.sqrt(1.5 / 8), within(1e-12));
    }

    @Test
    void varianceFromElsewhereWidensTheInterval() {
        MeanDifference.Sample sample = new MeanDifference.Sample(8, 90, 0.2);
        MeanDifference wide = MeanDifference.of(List.of(sample, sample), new double[] {-1, 1}, 0.03, 10);
        // 2 * 0.04 / 8 + 0.03; rounding only.
        assertThat(wide.error()).isCloseTo(0.2, within(1e-12));
    }
}
