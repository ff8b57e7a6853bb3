package dev.lapwright.car;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CarDoubtTest {
    private static final CarDoubt.Size FIVE = new CarDoubt.Size(5, false, false, CarDoubt.Source.WEIGHED);

    @Test
    void aDoubtInPercentIsOfTheValue() {
        CarDoubt.Size size = new CarDoubt.Size(10, true, false, CarDoubt.Source.MAKER);
        // Rounding of one product.
        assertThat(size.standardDeviation(-0.8)).isEqualTo(0.08, within(1e-15));
    }

    /** Rectangular distribution of half width a: a/√3 (JCGM 100:2008, 4.3.7). */
    @Test
    void aLimitIsARectangle() {
        CarDoubt.Size size = new CarDoubt.Size(3, false, true, CarDoubt.Source.MAKER);
        // Rounding of one quotient.
        assertThat(size.standardDeviation(100)).isEqualTo(Math.sqrt(3), within(1e-15));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void aSizeIsAboveNoughtAndFinite(double amount) {
        assertThatThrownBy(() -> new CarDoubt.Size(amount, false, false, CarDoubt.Source.MAKER))
                .isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> new CarDoubt.Size(amount, true, false, CarDoubt.Source.MAKER))
                .isInstanceOf(InvalidValueException.class);
    }

    @Test
    void noMoreThanAHundredPercent() {
        assertThatThrownBy(() -> new CarDoubt.Size(101, true, false, CarDoubt.Source.MAKER))
                .isInstanceOf(InvalidValueException.class);
    }

    private static CarDoubt correlated(double a, double b, double c) {
        return new CarDoubt(Map.of("a", FIVE, "b", FIVE, "c", FIVE), List.of("a", "b", "c"), new double[][] {
            {1, a, b}, {a, 1, c}, {b, c, 1}
        });
    }

    @Test
    void correlationsAreFoundByName() {
        CarDoubt doubt = correlated(0.5, 0.2, -0.1);
        assertThat(doubt.correlation("c", "b")).isEqualTo(-0.1);
        assertThat(doubt.correlation("a", "a")).isEqualTo(1);
        assertThat(doubt.correlation("a", "d")).isZero();
    }

    /** Correlations of 0.9, 0.9 and −0.9 have the determinant 1 + 2·0.9·0.9·(−0.9) − 3·0.81 < 0. */
    @Test
    void correlationsThatCannotBeAreRefused() {
        assertThatThrownBy(() -> correlated(0.9, 0.9, -0.9))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("no errors hang together so");
        assertThatThrownBy(() -> correlated(1.5, 0, 0)).isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> correlated(Double.NaN, 0, 0)).isInstanceOf(InvalidValueException.class);
    }

    @Test
    void whatHangsTogetherNeedsADoubt() {
        assertThatThrownBy(() -> new CarDoubt(Map.of(), List.of("a"), new double[][] {{1}}))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("a has no doubt");
    }

    @Test
    void matricesAreCopied() {
        double[][] one = {{1}};
        CarDoubt doubt = new CarDoubt(Map.of("a", FIVE), List.of("a"), one);
        one[0][0] = 7;
        doubt.correlation()[0][0] = 8;
        assertThat(doubt.correlation()[0][0]).isEqualTo(1);
    }
}
