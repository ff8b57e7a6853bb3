package dev.lapwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LongRunCovarianceTest {
    private static final int LENGTH = 1000;
    private static final int TRIALS = 100;

    /** Mean estimate of n times the long-run variance over many series. */
    private static double meanEstimate(double keep, double echo) {
        Random random = new Random(3);
        double sum = 0;
        for (int trial = 0; trial < TRIALS; trial++) {
            double[][] z = new double[LENGTH][1];
            double x = random.nextGaussian() / Math.sqrt(1 - keep * keep);
            double last = random.nextGaussian();
            for (int t = 0; t < LENGTH; t++) {
                double shock = random.nextGaussian();
                x = keep * x + shock;
                z[t][0] = echo == 0 ? x : shock + echo * last;
                last = shock;
            }
            sum += LongRunCovariance.of(z).sum().getEntry(0, 0) / LENGTH;
        }
        return sum / TRIALS;
    }

    /** x(t) = r x(t−1) + e with e of variance 1: the long-run variance is 1/(1−r)² (any text on time series). */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.5, 0.8, 0.9})
    void anAutoregressionsLongRunVarianceIsThatOfTheFormula(double keep) {
        double formula = 1 / ((1 - keep) * (1 - keep));
        // One estimate scatters by 2·sqrt((1+r)/(1−r)/n) of itself (through r's own error), so the mean of 100 by a
        // tenth of
        // that, 3 % at most; r falls short by (1+3r)/n, which costs 2·0.0037/0.1 = 7 % at r = 0.9.
        assertThat(meanEstimate(keep, 0)).isCloseTo(formula, within(0.12 * formula));
    }

    /** z = e(t) + 0.6 e(t−1) has (1 + 0.6)² = 2.56, and is no autoregression. */
    @Test
    void aMovingAverageIsNotFallenShortOfAndTheKernelMendsSomeOfThePrewhitening() {
        // Its first correlation, r = 0.6/1.36, would give an autoregression of 1.36 (1+r)/(1−r) = 3.5 by itself.
        assertThat(meanEstimate(0, 0.6)).isBetween(2.56, 3.5);
    }

    @Test
    void theSumsCovarianceIsSymmetricAndPositive() {
        Random random = new Random(4);
        double[][] z = new double[300][3];
        for (int t = 0; t < z.length; t++) {
            for (int j = 0; j < 3; j++) {
                z[t][j] = (t > 0 ? 0.7 * z[t - 1][j] : 0) + random.nextGaussian() + (j > 0 ? 0.5 * z[t][j - 1] : 0);
            }
        }
        RealMatrix sum = LongRunCovariance.of(z).sum();
        for (int i = 0; i < 3; i++) {
            assertThat(sum.getEntry(i, i)).isPositive();
            for (int j = 0; j < i; j++) {
                // Rounding of sums of 300 products.
                assertThat(sum.getEntry(i, j)).isCloseTo(sum.getEntry(j, i), within(1e-9 * sum.getEntry(i, i)));
            }
        }
    }
}
