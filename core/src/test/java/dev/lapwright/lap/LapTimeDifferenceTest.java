package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The rule of docs/limits.md: half a thousandth of a second is the first difference that is one, 0.05 s the first that counts. */
class LapTimeDifferenceTest {
    @ParameterizedTest
    @CsvSource({
        "0, true, false, false, false",
        "0.00049, true, false, false, false",
        "-0.00049, true, false, false, false",
        "0.0005, false, false, true, false",
        "-0.0005, false, true, false, false",
        "0.0499, false, false, true, false",
        "0.05, false, false, true, true",
        "-0.05, false, true, false, true",
        "-2, false, true, false, true",
        "NaN, false, false, false, false"
    })
    void whatADifferenceIs(double difference, boolean none, boolean faster, boolean slower, boolean counts) {
        assertThat(LapTimeDifference.isNone(difference)).isEqualTo(none);
        assertThat(LapTimeDifference.isFaster(difference)).isEqualTo(faster);
        assertThat(LapTimeDifference.isSlower(difference)).isEqualTo(slower);
        assertThat(LapTimeDifference.counts(difference)).isEqualTo(counts);
    }
}
