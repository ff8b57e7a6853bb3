package dev.lapwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordUpdateTest {
    private static final int STEPS = 200_000;

    private static LimitWord word(LimitWord.End first, double error) {
        return new LimitWord("", first, error);
    }

    /** Mean and variance of a normal margin given the word, by the trapezium rule over twelve deviations to each side. */
    @ParameterizedTest
    @CsvSource({"FRONT, 0.00", "FRONT, 0.02", "FRONT, -0.04", "REAR, 0.02", "REAR, -0.01", "BOTH, 0.015"})
    void meanAndVarianceAreThoseOfTheIntegral(LimitWord.End first, double margin) {
        double deviation = 0.02;
        double error = 0.03;
        NormalDistribution prior = new NormalDistribution(margin, deviation);
        NormalDistribution felt = new NormalDistribution(0, error);
        double whole = 0;
        double mean = 0;
        double square = 0;
        for (int i = 0; i <= STEPS; i++) {
            double m = margin + deviation * 12 * (2.0 * i / STEPS - 1);
            double likelihood = switch (first) {
                case FRONT -> felt.cumulativeProbability(m);
                case REAR -> felt.cumulativeProbability(-m);
                case BOTH -> felt.density(m);
            };
            double weight = prior.density(m) * likelihood;
            whole += weight;
            mean += weight * m;
            square += weight * m * m;
        }
        mean /= whole;
        double variance = square / whole - mean * mean;
        RealMatrix before = MatrixUtils.createRealDiagonalMatrix(new double[] {deviation * deviation});
        WordUpdate update = WordUpdate.of(word(first, error), margin, new double[] {1}, before);
        // The rule's own error is far below; the distribution's in Commons Math is 1e-15 and the integral's sum 1e-12.
        assertThat(margin + update.shift.getEntry(0)).isCloseTo(mean, within(1e-9));
        assertThat(update.covariance.getEntry(0, 0)).isCloseTo(variance, within(1e-9 * variance + 1e-12));
    }

    /** What does not move the margin moves only as it hangs together with what does: by their covariance over the margin's variance. */
    @Test
    void unknownsFollowByTheirCovarianceWithTheMargin() {
        RealMatrix before = MatrixUtils.createRealMatrix(new double[][] {{4, 1, 0}, {1, 2, 0}, {0, 0, 3}});
        WordUpdate update = WordUpdate.of(word(LimitWord.End.FRONT, 0.5), 0, new double[] {1, 0, 0}, before);
        assertThat(update.shift.getEntry(1) / update.shift.getEntry(0)).isCloseTo(0.25, within(1e-12));
        assertThat(update.shift.getEntry(2)).isZero();
        assertThat(update.covariance.getEntry(2, 2)).isEqualTo(3);
        assertThat(update.covariance.getEntry(1, 1)).isLessThan(2);
    }

    @Test
    void aWordAgainstAllThatWasKnownStaysFinite() {
        RealMatrix before = MatrixUtils.createRealDiagonalMatrix(new double[] {1e-6});
        WordUpdate update = WordUpdate.of(word(LimitWord.End.REAR, 0.001), 0.9, new double[] {1}, before);
        assertThat(update.shift.getEntry(0)).isNegative().isFinite();
        assertThat(update.covariance.getEntry(0, 0)).isPositive().isLessThanOrEqualTo(1e-6);
    }

    /** With one deviation of margin 84 words of 100 are right: Φ(1) = 0.8413, from a table of the normal distribution. */
    @Test
    void aWordIsAsLikelyAsItIsRight() {
        LimitWord front = new LimitWord("", LimitWord.End.FRONT, 0.03);
        LimitWord rear = new LimitWord("", LimitWord.End.REAR, 0.03);
        // Half of the table's last digit.
        assertThat(front.likelihood(0.03)).isEqualTo(0.8413, within(5e-5));
        assertThat(rear.likelihood(0.03)).isEqualTo(1 - 0.8413, within(5e-5));
        LimitWord both = new LimitWord("", LimitWord.End.BOTH, 0.03);
        assertThat(both.likelihood(0)).isEqualTo(1);
        // e^(−1/2); rounding.
        assertThat(both.likelihood(-0.03)).isEqualTo(Math.exp(-0.5), within(1e-12));
    }
}
