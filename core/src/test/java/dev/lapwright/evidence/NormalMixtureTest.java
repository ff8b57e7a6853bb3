package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import org.junit.jupiter.api.Test;

class NormalMixtureTest {
    /** Normal quantile of 97.5 %, from tables. */
    private static final double Z = 1.959964;

    private static NormalMixture one(double mean, double deviation) {
        return NormalMixture.of(new double[1], new double[] {mean}, deviation);
    }

    @Test
    void onePartIsANormalDistribution() {
        NormalMixture.Interval interval = one(-0.3, 0.1).interval(0.05);
        // To the digits of the table.
        assertThat(interval.low()).isCloseTo(-0.3 - Z * 0.1, within(1e-6));
        assertThat(interval.high()).isCloseTo(-0.3 + Z * 0.1, within(1e-6));
    }

    @Test
    void momentsOfTwoPartsAreTheirClosedForms() {
        // Weights 1/4 and 3/4: mean, and variance by the law of total variance; rounding.
        NormalMixture mixture = NormalMixture.of(new double[] {0, Math.log(3)}, new double[] {0, 1}, 0.5, 0.2);
        assertThat(mixture.mean()).isCloseTo(0.75, within(1e-12));
        assertThat(mixture.deviation()).isCloseTo(Math.sqrt(0.25 * 0.25 + 0.75 * 0.04 + 0.25 * 0.75), within(1e-12));
    }

    @Test
    void predictionAndLapsAreWeightedByInverseVariances() {
        // Closed form; -0.28 give or take 0.10 and -0.31 give or take 0.13 make -0.29 give or take 0.08.
        NormalMixture together = one(-0.31, 0.13 / Z).together(-0.28, 0.10 / Z);
        double seen = 1 / (0.13 * 0.13);
        double model = 1 / (0.1 * 0.1);
        assertThat(together.mean()).isCloseTo((-0.31 * seen - 0.28 * model) / (seen + model), within(1e-9));
        assertThat(together.interval(0.05).half()).isCloseTo(1 / Math.sqrt(seen + model), within(1e-6));
    }

    @Test
    void aPredictionFarOffLeavesTheVagueParts() {
        // A part that is vague may be off by 1 s, the other not: Bayes' rule weighs the first up.
        NormalMixture mixture = NormalMixture.of(new double[] {0, 0}, new double[] {0, 0}, 0.05, 0.5);
        assertThat(mixture.together(1, 0.1).mean()).isGreaterThan(0.9);
    }

    @Test
    void aDoubtThatIsNoneIsRefused() {
        assertThatThrownBy(() -> one(0, 1).together(-0.2, 0)).isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> one(0, 1).together(Double.NaN, 1)).isInstanceOf(InvalidValueException.class);
    }
}
