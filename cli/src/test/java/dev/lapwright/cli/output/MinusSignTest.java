package dev.lapwright.cli.output;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.report.Report;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MinusSignTest {
    @ParameterizedTest
    @ValueSource(strings = {"-0.153 s", "from -3 to 3 deg", "(-.5)", "below -1..-2", "\u001B[1m-0.3 ms/kg\u001B[0m"})
    void aNegativeNumberGetsOne(String text) {
        assertThat(MinusSign.in(text)).isEqualTo(text.replace('-', '\u2212'));
    }

    /** A name from a document is printed as it is written, also one that looks like a number. */
    @ParameterizedTest
    @ValueSource(strings = {"-1+1", "-5 deg", "Wing -2", "-"})
    void aNameKeepsItsHyphen(String name) {
        assertThat(MinusSign.in("Setup " + Report.verbatim(name) + " is -0.1 s off"))
                .isEqualTo("Setup " + name + " is \u22120.1 s off");
    }

    /** What somebody may copy into a command, and what is no number. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "-s rear-toe=-0.1",
                "--vary front-toe=-0.3:0.1:0.05",
                "wing-2.json",
                "2026-01-31",
                "ISO 3166-1",
                "runs/-1/x",
                "--laps 30",
                "-"
            })
    void otherHyphensStay(String text) {
        assertThat(MinusSign.in(text)).isEqualTo(text);
    }
}
