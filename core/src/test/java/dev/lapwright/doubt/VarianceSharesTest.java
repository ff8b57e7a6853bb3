package dev.lapwright.doubt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import java.util.Arrays;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class VarianceSharesTest {
    /**
     * Ishigami and Homma (1990), f = sin x₁ + 7 sin² x₂ + 0.1 x₃⁴ sin x₁, x uniform on ±π; first order by integration: 0.313905,
     * 0.442411, 0. x₃ acts only together with x₁.
     */
    @Test
    void theSharesOfTheIshigamiFunctionAreThoseOfItsIntegrals() {
        int n = 20_000;
        double[][] sample = LatinHypercube.normal(n, 3, 1);
        NormalDistribution normal = new NormalDistribution();
        double[] answers = new double[n];
        for (int i = 0; i < n; i++) {
            double[] x = Arrays.stream(sample[i])
                    .map(z -> Math.PI * (2 * normal.cumulativeProbability(z) - 1))
                    .toArray();
            answers[i] = Math.sin(x[0]) + 7 * Math.pow(Math.sin(x[1]), 2) + 0.1 * Math.pow(x[2], 4) * Math.sin(x[0]);
        }
        double[] shares = VarianceShares.firstOrder(sample, answers);
        // The correlation ratio's deviation is some 2 √(S/n) (1 − S), 0.006 here; the bins lose 0.4 % of a share. Three
        // of them.
        assertThat(shares[0]).isEqualTo(0.313905, within(0.018));
        assertThat(shares[1]).isEqualTo(0.442411, within(0.018));
        assertThat(shares[2]).isEqualTo(0, within(VarianceShares.chance(n, 3)));
    }

    /** y = 3 z₁ + 4 z₂: shares 9/25 and 16/25, and a third unknown that does nothing has none, with few draws too. */
    @Test
    void theSharesOfASumAreThoseOfItsVariances() {
        int n = 300;
        double[][] sample = LatinHypercube.normal(n, 3, 5);
        double[] answers =
                Arrays.stream(sample).mapToDouble(z -> 3 * z[0] + 4 * z[1]).toArray();
        double[] shares = VarianceShares.firstOrder(sample, answers);
        // Deviation 2 √(S/n) (1 − S) is 0.044 and 0.033; and six bins lose 0.04 of a normal number's variance. Two of
        // them.
        assertThat(shares[0]).isEqualTo(0.36, within(0.1));
        assertThat(shares[1]).isEqualTo(0.64, within(0.1));
        assertThat(shares[2]).isEqualTo(0, within(VarianceShares.chance(n, 3)));
    }

    /** Of 200 answers that hang on none of 30 unknowns one in 20 or so shows a share that is told: a binomial number. */
    @Test
    void byChanceAloneFewAnswersShowAShare() {
        int told = 0;
        int n = 100;
        double least = VarianceShares.chance(n, 30);
        for (int answer = 0; answer < 200; answer++) {
            double[][] sample = LatinHypercube.normal(n, 31, answer);
            double[] answers = Arrays.stream(sample).mapToDouble(z -> z[30]).toArray();
            double[] shares = VarianceShares.firstOrder(sample, answers);
            told += Arrays.stream(shares).limit(30).max().orElseThrow() > least ? 1 : 0;
        }
        // Mean 10, deviation 3.1; four of them. Bonferroni's bound is not quite reached.
        assertThat(told).isBetween(1, 22);
    }

    /** y = 3 z₁ + 4 z₂ + 5 z₃: z₁ and z₂ together have half of the variance, whatever else is asked beside them. */
    @Test
    void theShareOfUnknownsTogetherIsTheSumOfTheirs() {
        int n = 200;
        double[][] sample = LatinHypercube.normal(n, 12, 7);
        double[] answers = Arrays.stream(sample)
                .mapToDouble(z -> 3 * z[0] + 4 * z[1] + 5 * z[11])
                .toArray();
        double[][] eleven = Arrays.stream(sample).map(z -> Arrays.copyOf(z, 11)).toArray(double[][]::new);
        // R² of 0.5 in 200 has deviation 2 √0.5 · 0.5/√200, 0.05; two of them.
        assertThat(VarianceShares.together(eleven, answers)).isEqualTo(0.5, within(0.1));
        double[][] nine =
                Arrays.stream(sample).map(z -> Arrays.copyOfRange(z, 2, 11)).toArray(double[][]::new);
        assertThat(VarianceShares.together(nine, answers)).isLessThan(VarianceShares.chanceTogether(n, 9, 5));
        assertThat(VarianceShares.together(eleven, new double[n])).isZero();
        assertThat(VarianceShares.together(Arrays.copyOf(eleven, 20), Arrays.copyOf(answers, 20)))
                .isNaN();
    }

    /** Adjusted R² of nine unknowns that do nothing passes its bound as often as is asked: one of twenty, shared out among five. */
    @Test
    void byChanceAloneAGroupHardlyEverShowsAShare() {
        int told = 0;
        for (int answer = 0; answer < 300; answer++) {
            double[][] sample = LatinHypercube.normal(60, 10, answer);
            double[] answers = Arrays.stream(sample).mapToDouble(z -> z[9]).toArray();
            double[][] nine =
                    Arrays.stream(sample).map(z -> Arrays.copyOf(z, 9)).toArray(double[][]::new);
            told += VarianceShares.together(nine, answers) > VarianceShares.chanceTogether(60, 9, 5) ? 1 : 0;
        }
        // Mean 3, deviation 1.7; four of them.
        assertThat(told).isBetween(0, 10);
    }

    @Test
    void anAnswerThatIsAlwaysTheSameHangsOnNothing() {
        assertThat(VarianceShares.firstOrder(LatinHypercube.normal(16, 2, 1), new double[16]))
                .containsExactly(0, 0);
    }

    @Test
    void tooFewDrawsAreRefused() {
        assertThatThrownBy(() -> VarianceShares.firstOrder(new double[15][2], new double[15]))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("15");
        assertThatThrownBy(() -> VarianceShares.firstOrder(new double[20][2], new double[19]))
                .isInstanceOf(InvalidValueException.class);
    }
}
