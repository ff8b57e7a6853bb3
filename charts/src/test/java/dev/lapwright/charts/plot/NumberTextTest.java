package dev.lapwright.charts.plot;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The build runs under a Turkish locale, where a careless format writes a decimal comma. */
class NumberTextTest {
    @Test
    void lapTimesAreMinutesAndSecondsFromAMinuteUp() {
        assertThat(NumberText.lapTime(92.4567)).isEqualTo("1:32.457");
        assertThat(NumberText.lapTime(60)).isEqualTo("1:00.000");
    }

    @Test
    void lapTimesBelowAMinuteAreSeconds() {
        assertThat(NumberText.lapTime(58.2041)).isEqualTo("58.204 s");
    }

    @Test
    void roundingCarriesIntoTheMinutes() {
        assertThat(NumberText.lapTime(119.9996)).isEqualTo("2:00.000");
        assertThat(NumberText.lapTimes(0).format(59.6)).isEqualTo("1:00");
    }

    @Test
    void differencesCarryTheirSign() {
        assertThat(NumberText.difference(0.1534)).isEqualTo("+0.153 s");
        assertThat(NumberText.difference(-0.1534)).isEqualTo("\u22120.153 s");
    }

    @Test
    void whatRoundsToZeroHasNoSign() {
        assertThat(NumberText.difference(-0.0004)).isEqualTo("0.000 s");
        assertThat(NumberText.difference(0.0004)).isEqualTo("0.000 s");
    }

    @Test
    void speedsAreKilometresPerHour() {
        assertThat(NumberText.wholeKmh(10)).isEqualTo("36");
    }

    @Test
    void unknownLapTimeIsAQuestionMark() {
        assertThat(NumberText.lapTimes(3).format(Double.NaN)).isEqualTo("?");
    }
}
