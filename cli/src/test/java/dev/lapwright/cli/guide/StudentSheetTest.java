package dev.lapwright.cli.guide;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.ShownCommands;
import java.io.IOException;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What docs/student.md says comes out by hand does. Formulas and inputs as the page gives them; its own rounding. */
class StudentSheetTest {
    private static final double GRAVITY = 9.80665;
    private static final double SEA_LEVEL = 1.225;

    /** (2 P / ρ CdA)^(1/3), in km/h. */
    private static double topSpeed(double density, double dragArea) {
        return 3.6 * Math.cbrt(2 * 300_000 / (density * dragArea));
    }

    /** √(µ g / (1/R - µ ρ ClA / 2m)), in km/h. */
    private static double cornerSpeed(double density, double liftArea, double mass) {
        double friction = 1.5;
        return 3.6 * Math.sqrt(friction * GRAVITY / (1 / 100.0 - friction * density * liftArea / (2 * mass)));
    }

    private static void assertOnThePage(String number) throws IOException {
        assertThat(String.join(" ", ShownCommands.lines("student.md"))).contains("**" + number + "**");
    }

    private static String kmh(double speed) {
        return String.format(Locale.ROOT, "%.1f km/h", speed);
    }

    @ParameterizedTest
    @CsvSource({"1.225, 1.0", "1.225, 0.9", "1.225, 1.1", "1.090, 1.0"})
    void topSpeedsByHandAreRight(double density, double dragArea) throws IOException {
        assertOnThePage(kmh(topSpeed(density, dragArea)));
    }

    @ParameterizedTest
    @CsvSource({"1.225, 0, 1000", "1.225, 2, 1000", "1.225, 2, 1100", "1.090, 2, 1000"})
    void cornerSpeedsByHandAreRight(double density, double liftArea, double mass) throws IOException {
        assertOnThePage(kmh(cornerSpeed(density, liftArea, mass)));
    }

    @ParameterizedTest
    @CsvSource("1000, 2")
    void theRadiusBeyondWhichGripNoLongerLimitsIsRight(double mass, double liftArea) throws IOException {
        assertOnThePage(String.format(Locale.ROOT, "%.0f m", 2 * mass / (1.5 * SEA_LEVEL * liftArea)));
    }

    @ParameterizedTest
    @CsvSource("1.1")
    void theFactorOfTheWeightIsRight(double weight) throws IOException {
        assertOnThePage(String.format(Locale.ROOT, "%.3f", Math.cbrt(weight)));
    }
}
