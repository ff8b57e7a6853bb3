package dev.lapwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ErrorAutocorrelationTest {
    private static final int LENGTH = 20_000;

    private static boolean[] all(int length) {
        boolean[] all = new boolean[length];
        Arrays.fill(all, true);
        return all;
    }

    /** x(t) = r x(t−1) + e. */
    static double[] autoregression(double keep, int length, Random random) {
        double[] x = new double[length];
        x[0] = random.nextGaussian() / Math.sqrt(1 - keep * keep);
        for (int t = 1; t < length; t++) {
            x[t] = keep * x[t - 1] + random.nextGaussian();
        }
        return x;
    }

    /** A first-order autoregression's correlation at lag h is r to the h (any text on time series). */
    @ParameterizedTest
    @ValueSource(doubles = {0.3, 0.6, 0.9})
    void anAutoregressionsCorrelationsArePowers(double keep) {
        ErrorAutocorrelation found = ErrorAutocorrelation.of(autoregression(keep, LENGTH, new Random(5)), all(LENGTH));
        for (int lag = 0; lag < 30; lag++) {
            // A sample correlation scatters by less than sqrt((1+r²)/(1−r²)/n) = 0.022 at r = 0.9: three of them.
            assertThat(found.at(lag)).isCloseTo(Math.pow(keep, lag), within(0.066));
        }
    }

    /** e(t) + 0.6 e(t−1): 0.6/1.36 at lag 1, nought beyond. */
    @Test
    void aMovingAverageEndsAfterItsReach() {
        Random random = new Random(6);
        double[] x = new double[LENGTH];
        double last = random.nextGaussian();
        for (int t = 0; t < LENGTH; t++) {
            double shock = random.nextGaussian();
            x[t] = shock + 0.6 * last;
            last = shock;
        }
        ErrorAutocorrelation found = ErrorAutocorrelation.of(x, all(LENGTH));
        // Sample correlations scatter by 1/sqrt(n) = 0.007 and somewhat more: three times 0.01.
        assertThat(found.at(1)).isCloseTo(0.6 / 1.36, within(0.03));
        for (int lag = 2; lag < 12; lag++) {
            assertThat(found.at(lag)).isCloseTo(0, within(0.03));
        }
    }

    @Test
    void cellsThatAreNotKnownSayNothing() {
        Random random = new Random(7);
        double[] x = autoregression(0.8, LENGTH, random);
        boolean[] counts = all(LENGTH);
        for (int t = 0; t < LENGTH; t++) {
            if (t / 7 % 3 == 0) {
                counts[t] = false;
                x[t] = 0;
            }
        }
        // As above with two thirds of the cells: sqrt(1.64/0.36/13000) = 0.019, three of them.
        assertThat(ErrorAutocorrelation.of(x, counts).at(1)).isCloseTo(0.8, within(0.057));
    }

    @Test
    void errorsThatAreAllNoughtHangTogetherWithNothing() {
        ErrorAutocorrelation none = ErrorAutocorrelation.of(new double[50], all(50));
        assertThat(none.at(0)).isEqualTo(1);
        assertThat(none.at(1)).isZero();
    }
}
