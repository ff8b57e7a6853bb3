package dev.lapwright.report;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Unit;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

class NumbersTest {
    @Test
    void aLapTimeIsMinutesSecondsAndThousandths() {
        assertThat(Numbers.lapTime(83.4567)).isEqualTo("1:23.457");
        assertThat(Numbers.lapTime(5.01)).isEqualTo("0:05.010");
    }

    @Test
    void roundingCarriesIntoTheMinutes() {
        assertThat(Numbers.lapTime(59.9996)).isEqualTo("1:00.000");
    }

    @Test
    void numbersAndLapTimesAreWrittenAsJavasFormatterWritesThem() {
        Random random = new Random(20);
        for (int i = 0; i < 2000; i++) {
            double value = (random.nextDouble() - 0.3) * Math.pow(10, random.nextInt(8) - 2);
            int decimals = random.nextInt(5);
            String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
            assertThat(Numbers.fixed(value, decimals)).isEqualTo(text.matches("-[0.]+") ? text.substring(1) : text);
            long ms = random.nextInt(400_000);
            assertThat(Numbers.lapTime(ms / 1000.0))
                    .isEqualTo(String.format(Locale.ROOT, "%d:%02d.%03d", ms / 60_000, ms / 1000 % 60, ms % 1000));
        }
        assertThat(Numbers.fixed(0.125, 2)).isEqualTo("0.13");
    }

    @Test
    void aLapThatDoesNotExistIsADash() {
        assertThat(Numbers.lapTime(Double.NaN)).isEqualTo("-");
        assertThat(Numbers.fixed(Double.POSITIVE_INFINITY, 1)).isEqualTo("-");
    }

    @Test
    void zeroHasNoSign() {
        assertThat(Numbers.signed(-0.0001, 3)).isEqualTo("0.000");
        assertThat(Numbers.signed(0.0001, 3)).isEqualTo("0.000");
        assertThat(Numbers.fixed(-0.01, 1)).isEqualTo("0.0");
    }

    @Test
    void differencesCarryTheirSign() {
        assertThat(Numbers.signed(0.25, 3)).isEqualTo("+0.250");
        assertThat(Numbers.signed(-0.25, 3)).isEqualTo("-0.250");
    }

    @Test
    void aSpeedIsShownInKilometresPerHour() {
        assertThat(Numbers.kmh(100 / 3.6)).isEqualTo("100.0");
    }

    @Test
    void aPureNumberHasNoUnitBehindIt() {
        assertThat(Numbers.with(3.615, Unit.NONE)).isEqualTo("3.615");
        assertThat(Numbers.with(6, Unit.DEGREE)).isEqualTo("6 deg");
    }

    @Test
    void machinesGetNoExponentsAndNoNoise() {
        assertThat(Numbers.machine(1234567.891234)).isEqualTo("1234567.89");
        assertThat(Numbers.machine(1e-17)).isEqualTo("0");
        assertThat(Numbers.machine(0.1 + 0.2)).isEqualTo("0.3");
        assertThat(Numbers.machine(Double.NaN)).isEmpty();
    }
}
