package dev.lapwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
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
            RealMatrix told = ScoreCovariance.of(
                    new double[][][] {sensitivities},
                    new double[][] {x},
                    new boolean[][] {counts},
                    ErrorAutocorrelation.of(x, counts));
            mean += told.getEntry(0, 0) / TRIALS;
        }
        // One estimate scatters by some 2 sqrt((1+r)/(1−r)/n), 40 % at r = 0.95, so their mean by 4 %; r falls short by
        // (1+3r)/n, which costs up to 8 % there; the wider of two counts, which adds some 5 %.
        assertThat(mean).isCloseTo(exact(g, keep), within(0.15 * exact(g, keep)));
    }

    private static double ofTwo(double[] second, double[] x, double[] y) {
        double[][][] sensitivities = new double[2][LENGTH][1];
        boolean[][] counts = new boolean[2][LENGTH];
        for (int c = 0; c < LENGTH; c++) {
            sensitivities[0][c][0] = 1;
            sensitivities[1][c][0] = second[c];
        }
        Arrays.fill(counts[0], true);
        Arrays.fill(counts[1], true);
        double[][] errors = {x, y};
        return ScoreCovariance.of(sensitivities, errors, counts, ErrorAutocorrelation.of(errors, counts))
                .getEntry(0, 0);
    }

    /** What tells two setups apart has opposite signs in their runs: their mean is nought, their noise is not. */
    @Test
    void noiseOfTwoRunsAddsUpInTheirDifference() {
        double[] less = new double[LENGTH];
        Arrays.fill(less, -1);
        Random random = new Random(9);
        double mean = 0;
        for (int trial = 0; trial < TRIALS; trial++) {
            double[] x = ErrorAutocorrelationTest.autoregression(0, LENGTH, random);
            double[] y = ErrorAutocorrelationTest.autoregression(0, LENGTH, random);
            mean += ofTwo(less, x, y) / TRIALS;
        }
        // Var Σ(x − y) = 2 n; as above.
        assertThat(mean).isCloseTo(2 * LENGTH, within(0.15 * 2 * LENGTH));
    }

    @Test
    void whatTwoRunsShareFallsOutOfTheirDifferenceAndCountsTwiceInTheirSum() {
        double[] x = ErrorAutocorrelationTest.autoregression(0.5, LENGTH, new Random(10));
        double[] less = new double[LENGTH];
        double[] more = new double[LENGTH];
        Arrays.fill(less, -1);
        Arrays.fill(more, 1);
        double sum = ofTwo(more, x, x);
        // Exactly so but for rounding.
        assertThat(ofTwo(less, x, x)).isCloseTo(0, within(1e-9 * sum));
        double[] none = new double[LENGTH];
        assertThat(sum).isCloseTo(4 * ofTwo(none, x, x), within(1e-9 * sum));
    }
}
