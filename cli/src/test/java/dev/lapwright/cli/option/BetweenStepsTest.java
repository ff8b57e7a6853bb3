package dev.lapwright.cli.option;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Run;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The model takes settings between those that a car has; whoever asks for one is told. */
class BetweenStepsTest {
    /** The bars of this demo car have positions 1 to 6, its front springs steps of 20 N/mm; 0.1751 N/mm is one lb/in. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "lap gt-talvex harrowmere -s front-bar=2.5 | front-bar 2.5 lies between two settings of this car, 2 and 3",
                "lap gt-talvex harrowmere --against front-bar=2.5 | front-bar 2.5 lies between",
                "compare gt-talvex harrowmere --against rear-bar=2.5 | rear-bar 2.5 lies between",
                "lap gt-talvex harrowmere -s front-spring=800lb/in | N/mm lies between two settings of this car, 140 and 160",
                "sweep gt-talvex harrowmere --vary front-bar=2,2.5,3.5 | 2 and 3: the model takes it, the car may not. So do 1 more",
            })
    void aSettingBetweenTwoIsTakenWithANote(String command, String note) {
        Run run = Run.of(command.split(" "));
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.errorLines())
                .singleElement()
                .asString()
                .startsWith("Note: ")
                .contains(note);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "lap gt-talvex harrowmere -s front-bar=2",
                "lap gt-talvex harrowmere -s front-pressure=24psi",
                "lap gt-talvex harrowmere -s chassis.massKg=1234.5",
                "sweep gt-talvex harrowmere --vary front-bar"
            })
    void aSettingOfTheCarNeedsNone(String command) {
        assertThat(Run.of(command.split(" ")).err()).isEmpty();
    }
}
