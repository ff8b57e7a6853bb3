package dev.lapwright.cli.option;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fit.LimitWord;
import dev.lapwright.study.robust.DriverWord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DriverWordTextTest {
    @ParameterizedTest
    @CsvSource({
        "front, '', FRONT",
        "T6=rear, T6, REAR",
        "T6=both, T6, BOTH",
        "neutral at T5, T5, BOTH",
        "Rear in T10 Anfiteatro, T10 Anfiteatro, REAR"
    })
    void whichEndGivesUpFirst(String text, String corner, LimitWord.End end) {
        assertThat(DriverWordText.read(text)).isEqualTo(new DriverWord.OfLimit(LimitWord.of(corner, end)));
    }

    @ParameterizedTest
    @CsvSource({
        "T3=90km/h, MINIMUM_SPEED, T3, 25, 0.8333",
        "T3=90, MINIMUM_SPEED, T3, 25, 0.8333",
        "T3=25 m/s +- 0.5, MINIMUM_SPEED, T3, 25, 0.5",
        "top=252km/h+-3.6, TOP_SPEED, '', 70, 1",
        // A mile is 1609.344 m: 100 mph are 44.704 m/s.
        "top=100mph, TOP_SPEED, '', 44.704, 0.5556",
        "lap=1:36.4, LAP_TIME, '', 96.4, 0.964",
        "lap=96.4+-0.3, LAP_TIME, '', 96.4, 0.3"
    })
    void whatWasRead(String text, DriverWord.Reading reading, String corner, double value, double error) {
        DriverWord.OfFigure word = (DriverWord.OfFigure) DriverWordText.read(text);
        assertThat(word.reading()).isEqualTo(reading);
        assertThat(word.corner()).isEqualTo(corner);
        // Expected values have four digits.
        assertThat(word.value()).isEqualTo(value, within(5e-4));
        assertThat(word.error()).isEqualTo(error, within(5e-5));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "left",
                "T6=",
                "T6=fast",
                "92",
                "lap=",
                "lap=fast",
                "top=-3",
                "T3=90furlongs",
                "T3=0",
                "T3=1.2.3",
                "="
            })
    void whatIsNoWordIsRefusedWithExamples(String text) {
        assertThatThrownBy(() -> DriverWordText.read(text))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("T6=rear");
    }

    @Test
    void anErrorOfNothingIsRefused() {
        assertThatThrownBy(() -> DriverWordText.read("top=250+-0")).isInstanceOf(InvalidValueException.class);
    }
}
