package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import dev.lapwright.fault.InvalidValueException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The power analysis against the printed examples of R's power.t.test and J. Cohen's tables. */
class LapsToSeeTest {
    @ParameterizedTest(name = "{0}")
    @CheckFile("laps-to-see.csv")
    void powerAndNumbersAreThePrintedOnes(CheckRow row) {
        row.verify(
                switch (row.quantity()) {
                    case "power" -> LapsToSee.power(row.number("n"), row.number("effect"));
                    case "laps of each" -> LapsToSee.perSetup(row.number("effect"), 1);
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    @Test
    void gainAndScatterCountByTheirRatioAlone() {
        assertThat(LapsToSee.perSetup(-0.15, 0.3)).isEqualTo(LapsToSee.perSetup(0.5, 1));
    }

    @Test
    void nothingIsNeverSeen() {
        assertThat(LapsToSee.perSetup(0, 0.3)).isEqualTo(Integer.MAX_VALUE);
    }

    @Test
    void aHugeGainTakesTwoLapsOfEach() {
        assertThat(LapsToSee.perSetup(100, 0.3)).isEqualTo(2);
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 15, 394, 20_000})
    void theLeastVisibleDifferenceIsTheOtherWayRound(int laps) {
        double least = LapsToSee.visible(laps, 0.3);
        // Differences go with 1/√n: one lap in 20 000 changes them by 2.5e-5. Either side by more than the search's
        // 1e-9.
        assertThat(LapsToSee.perSetup(least * (1 + 1e-6), 0.3)).isEqualTo(laps);
        assertThat(LapsToSee.perSetup(least * (1 - 1e-6), 0.3)).isEqualTo(laps + 1);
    }

    @ParameterizedTest
    @CsvSource({"0.5, 64", "0.8, 26"})
    void cohensNumbersOfLapsShowHisEffectsAndOneLapLessDoesNot(double effect, int laps) {
        // J. Cohen, A Power Primer, table 2, as above.
        assertThat(LapsToSee.visible(laps, 1)).isLessThanOrEqualTo(effect);
        assertThat(LapsToSee.visible(laps - 1, 1)).isGreaterThan(effect);
    }

    @Test
    void oneLapOfEachShowsNothingAndIsRefused() {
        assertThatThrownBy(() -> LapsToSee.visible(1, 0.3))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("laps with each setup");
    }

    @Test
    void lapsThatDoNotScatterAreRefused() {
        assertThatThrownBy(() -> LapsToSee.perSetup(1, 0))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("scatter (s)");
    }
}
