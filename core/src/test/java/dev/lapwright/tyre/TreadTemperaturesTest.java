package dev.lapwright.tyre;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.tyre.TreadTemperatures.Way;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Directions are common practice, no source. */
class TreadTemperaturesTest {
    @ParameterizedTest
    @CsvSource({"95, 88, 80, LESS", "80, 82, 84, MORE", "88, 84, 80, KEEP"})
    void aHotInnerEdgeAsksForLessNegativeCamber(double inner, double middle, double outer, Way way) {
        assertThat(new TreadTemperatures(inner, middle, outer).negativeCamber()).isEqualTo(way);
    }

    @ParameterizedTest
    @CsvSource({"88, 92, 80, LESS", "88, 76, 80, MORE", "88, 84, 80, KEEP"})
    void aHotMiddleAsksForLessPressure(double inner, double middle, double outer, Way way) {
        assertThat(new TreadTemperatures(inner, middle, outer).pressure()).isEqualTo(way);
    }

    @ParameterizedTest
    @CsvSource({"FL, 1", "front, 2", "rear, 2", "left, 2", "all, 4", "rear-right, 1", "rl, 1"})
    void aWordNamesItsWheels(String word, int count) {
        assertThat(Wheel.named(word)).hasSize(count);
    }
}
