package dev.lapwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScoreCovarianceTest {
    private static final int LENGTH = 1000;
    private static final int TRIALS = 100;

    /** The variance of Σ g(c) x(c), x being an autoregression of unit shocks: Σ Σ g(c) g(d) r^|c−d| / (1−r²). */
    private static double exact(double[] g, double keep) {
        double sum = 0;
        for (int c = 0; c < LENGTH; c++) {
            for (int d = 0; d < LENGTH; d++) {
                sum += g[c] * g[d] * Math.pow(keep, Math.abs(c - d));
            }
        }
        return sum / (1 - keep * keep);
    }

    /**
     * Sensitivities that last for so many cells in turn with none, as a corner's do, and errors that hang together for less
     * or longer than that.
     */
    @ParameterizedTest(name = "corners of {0} cells, {1} kept")
    @CsvSource({"1000, 0", "1000, 0.5", "1000, 0.8", "20, 0.5", "20, 0.8", "20, 0.95", "5, 0.8", "5, 0.95"})
    void theVarianceIsThatOfTheDoubleSum(int corner, double keep) {
        double[] g = new double[LENGTH];
        double[][] sensitivities = new double[LENGTH][1];
        for (int c = 0; c < LENGTH; c++) {
            g[c] = c / corner % 2 == 0 ? 1 : 0;
            sensitivities[c][0] = g[c];
        }
        boolean[] counts = new boolean[LENGTH];
        Arrays.fill(counts, true);
        Random random = new Random(8);
        double mean = 0;
        for (int trial = 0; trial < TRIALS; trial++) {
            double[] x = ErrorAutocorrelationTest.autoregression(keep, LENGTH, random);
            RealMatrix told = ScoreCovariance.of(sensitivities, x, counts, ErrorAutocorrelation.of(x, counts));
            mean += told.getEntry(0, 0) / TRIALS;
        }
        // One estimate scatters by some 2 sqrt((1+r)/(1−r)/n), 40 % at r = 0.95, so their mean by 4 %; r falls short by
        // (1+3r)/n, which costs up to 8 % there; the wider of two counts, which adds some 5 %.
        assertThat(mean).isCloseTo(exact(g, keep), within(0.15 * exact(g, keep)));
    }
}
