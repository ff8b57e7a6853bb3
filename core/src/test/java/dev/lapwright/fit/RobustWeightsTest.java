package dev.lapwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class RobustWeightsTest {
    private static final double STEP = 1e-4;

    /** Mean over a standard normal, by the midpoint rule: rounding apart exact to far more than is asked. */
    private static double mean(DoubleUnaryOperator f) {
        double sum = 0;
        for (double x = -9 + STEP / 2; x < 9; x += STEP) {
            sum += f.applyAsDouble(x) * Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI) * STEP;
        }
        return sum;
    }

    /** (E psi')² / E psi², an M-estimate's efficiency where residuals are normal (Huber, Robust Statistics). */
    private static double efficiency(DoubleUnaryOperator weight) {
        double slope = mean(x ->
                (weight.applyAsDouble(x + 1e-5) * (x + 1e-5) - weight.applyAsDouble(x - 1e-5) * (x - 1e-5)) / 2e-5);
        double square = mean(x -> Math.pow(weight.applyAsDouble(x) * x, 2));
        return slope * slope / square;
    }

    @Test
    void huberIsNinetyFivePercentEfficient() {
        // The constant 1.345 has four digits: 95 % to a tenth of a percent.
        assertThat(efficiency(x -> RobustWeights.huber(x, 1))).isCloseTo(0.95, within(1e-3));
    }

    @Test
    void theBisquareIsNinetyFivePercentEfficient() {
        assertThat(efficiency(x -> RobustWeights.bisquare(x, 1))).isCloseTo(0.95, within(1e-3));
    }

    @Test
    void theBisquaresSlopeIsTheDerivativeOfItsScore() {
        for (double r = -6; r <= 6; r += 0.37) {
            double h = 1e-6;
            double up = (r + h) * RobustWeights.bisquare(r + h, 1.1);
            double down = (r - h) * RobustWeights.bisquare(r - h, 1.1);
            // Rounding of 1e-16 over 2e-6.
            assertThat(RobustWeights.bisquareSlope(r, 1.1)).isCloseTo((up - down) / (2 * h), within(1e-8));
        }
    }

    @Test
    void theScaleIsThatOfANormalWhateverAFewOutliersDo() {
        Random random = new Random(2);
        double[] residuals = new double[20_000];
        boolean[] in = new boolean[residuals.length];
        for (int i = 0; i < residuals.length; i++) {
            residuals[i] = i < 200 ? 1000 : 0.4 * random.nextGaussian();
            in[i] = true;
        }
        double scale = RobustWeights.scale(new double[][] {residuals}, new boolean[][] {in});
        // One outlier in a hundred moves the median to that of 50.5 %: 1.3 %; scatter 1.17/sqrt(2·20000)... 0.6 %.
        assertThat(scale).isCloseTo(0.4, within(0.4 * 0.03));
    }
}
