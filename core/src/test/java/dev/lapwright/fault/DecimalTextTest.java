package dev.lapwright.fault;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DecimalTextTest {
    /** By the meaning of decimal notation. */
    @ParameterizedTest
    @CsvSource({"1,1", "-0.5,-0.5", "\u22120.5,-0.5", "+.5,0.5", "7.,7", " 1e3 ,1000", "1E-3,0.001", "007,7"})
    void aDecimalNumberIsRead(String text, double value) {
        assertThat(DecimalText.number(text)).hasValue(value);
    }

    /** All but the last four are numbers to {@link Double#parseDouble}. */
    @ParameterizedTest
    @ValueSource(strings = {"1d", "1f", "0x1p3", "NaN", "Infinity", "-Infinity", "1e400", "", ".", "1,5", "١"})
    void whatElseJavaTakesForANumberIsNone(String text) {
        assertThat(DecimalText.number(text)).isEmpty();
    }
}
