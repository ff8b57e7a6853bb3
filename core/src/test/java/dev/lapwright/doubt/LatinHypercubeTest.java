package dev.lapwright.doubt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LatinHypercubeTest {
    private static final int DRAWS = 500;

    /** What a Latin hypercube is (McKay, Beckman and Conover 1979): one draw in each slice of equal chance, for each unknown. */
    @Test
    void eachSliceOfEachUnknownHoldsOneDraw() {
        double[][] sample = LatinHypercube.normal(DRAWS, 3, 7);
        NormalDistribution normal = new NormalDistribution();
        for (int k = 0; k < 3; k++) {
            int unknown = k;
            assertThat(IntStream.range(0, DRAWS)
                            .map(i -> (int) (DRAWS * normal.cumulativeProbability(sample[i][unknown])))
                            .sorted()
                            .toArray())
                    .isEqualTo(IntStream.range(0, DRAWS).toArray());
        }
    }

    /** Standard normal by the slices; independent draws of two unknowns correlate by chance with deviation 1/√(n − 1). */
    @Test
    void theDrawsAreStandardNormalAndUnknownsIndependent() {
        double[][] sample = LatinHypercube.normal(DRAWS, 2, 7);
        double mean = 0;
        double square = 0;
        double product = 0;
        for (double[] draw : sample) {
            mean += draw[0] / DRAWS;
            square += draw[0] * draw[0] / DRAWS;
            product += draw[0] * draw[1] / DRAWS;
        }
        // A mean of slices, each off by less than its width: far below the 1/√n of loose draws.
        assertThat(mean).isEqualTo(0, within(0.01));
        assertThat(square).isEqualTo(1, within(0.03));
        // Four deviations of chance.
        assertThat(product).isEqualTo(0, within(4 / Math.sqrt(DRAWS - 1)));
    }

    @Test
    void theSameSeedDrawsTheSame() {
        assertThat(LatinHypercube.normal(20, 4, 3)).isDeepEqualTo(LatinHypercube.normal(20, 4, 3));
        assertThat(LatinHypercube.normal(20, 4, 3)[0]).isNotEqualTo(LatinHypercube.normal(20, 4, 4)[0]);
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, 0, 1_000_001})
    void aNumberOfDrawsThatIsNoneIsRefused(int draws) {
        assertThatThrownBy(() -> LatinHypercube.normal(draws, 1, 1))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining(String.valueOf(draws));
    }
}
