package dev.lapwright.cli.output;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Run;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class UnitsOptionTest {
    /** A figure with a unit of SI behind it. What is by its nature a rate for each kilogram, or typed in the unit of a document, is none. */
    private static final Pattern SI =
            Pattern.compile("(?m)[0-9] (?:km/h|m|mm|km|kg|kN|N|kPa|bar|degC|kW|Nm|N/mm|m²|m/s)(?=[ ,.;)]|$)");

    private static Run run(String line) {
        return Run.of(line.split(" "));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "lap student-pipit harrowmere --line middle",
                "gearing student-pipit harrowmere --line middle",
                "balance student-pipit harrowmere --line middle",
                "sweep student-pipit harrowmere --line middle --vary rear-flap=20:30:5",
                "compare student-pipit harrowmere --line middle --against rear-flap=20 --no-doubt",
                "pressures student-pipit harrowmere --line middle --pair all:10psi:12psi --no-doubt",
                "circuit show harrowmere",
                "show student-pipit"
            })
    void nothingIsToldInSi(String command) {
        Run imperial = run(command + " --units imperial");
        assertThat(imperial.code()).as(imperial.err()).isZero();
        assertThat(SI.matcher(imperial.out()).results().map(one -> line(imperial.out(), one.start())))
                .isEmpty();
        assertThat(imperial.out()).containsPattern("(?m)(?: |^)(?:mph|ft|in|lb|psi)(?:[ ,;.]|$)");
        assertThat(run(command + " --units si").out()).isEqualTo(run(command).out());
    }

    private static String line(String text, int at) {
        return text.substring(text.lastIndexOf('\n', at) + 1, text.indexOf('\n', at));
    }

    @Test
    void machinesReadSi() {
        String command = "lap student-pipit harrowmere --line middle --json";
        assertThat(run(command + " --units imperial").out())
                .isEqualTo(run(command).out());
    }

    /** The same lap: 60 mph are 96.56 km/h, and each figure agrees with its SI one to the digits that it has (NIST SP 811: 1 mile is 1609.344 m). */
    @Test
    void theFiguresAreThoseOfTheLap() {
        String command = "lap student-pipit harrowmere --line middle";
        double kmh = first(run(command).line("Top speed"));
        double mph = first(run(command + " --units imperial").line("Top speed"));
        // A tenth of a mile an hour is told, and a tenth of a kilometre an hour.
        assertThat(Math.abs(mph * 1.609344 - kmh)).isLessThan(0.05 * 1.609344 + 0.05 + 1e-9);
    }

    private static double first(String line) {
        return Double.parseDouble(line.replaceFirst("\\D+", "").split(" ")[0]);
    }

    @Test
    void otherSystemsAreRefused() {
        Run none = run("lap student-pipit harrowmere --units furlong");
        assertThat(none.code()).isEqualTo(2);
        assertThat(none.err())
                .contains("there is no such system of units here; take si or imperial")
                .hasLineCount(1);
    }
}
