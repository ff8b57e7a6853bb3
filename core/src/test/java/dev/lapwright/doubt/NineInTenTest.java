package dev.lapwright.doubt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Intervals of few values, against how often they hold one more. */
class NineInTenTest {
    /** A further value of an even distribution lies within with the chance that is the interval's length: 0.9 in the mean, however few tell it. */
    @ParameterizedTest
    @ValueSource(ints = {19, 20, 40, 60, 100, 200})
    void nineOfTenFurtherValuesLieWithin(int count) {
        Random random = new Random(count);
        int intervals = 4000;
        double held = 0;
        for (int i = 0; i < intervals; i++) {
            double[] values = random.doubles(count).toArray();
            held += (NineInTen.high(values) - NineInTen.low(values)) / intervals;
        }
        // A length of 0.9 of so many spreads by √(0.9 · 0.1/(count + 2)) (beta distribution): four of the mean's.
        double spread = Math.sqrt(0.09 / (count + 2)) / Math.sqrt(intervals);
        assertThat(held).isCloseTo(0.9, within(4 * spread));
    }

    /** The first twenty numbers: the place 0.05 · 21 lies a twentieth of the way from the first to the second. */
    @ParameterizedTest
    @ValueSource(ints = 20)
    void endsLieBetweenTheValues(int count) {
        double[] values = IntStream.rangeClosed(1, count).asDoubleStream().toArray();
        assertThat(NineInTen.low(values)).isCloseTo(1.05, within(1e-12));
        assertThat(NineInTen.middle(values)).isCloseTo(10.5, within(1e-12));
        assertThat(NineInTen.high(values)).isCloseTo(19.95, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 5, 18})
    void ofFewerItIsFromTheLeastToTheGreatest(int count) {
        double[] values = IntStream.rangeClosed(1, count).asDoubleStream().toArray();
        assertThat(NineInTen.low(values)).isEqualTo(1);
        assertThat(NineInTen.high(values)).isEqualTo(count);
    }
}
