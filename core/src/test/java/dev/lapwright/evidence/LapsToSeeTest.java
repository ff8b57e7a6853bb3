package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The power analysis against the printed examples of R's power.t.test and J. Cohen's tables. */
class LapsToSeeTest {
    @Test
    void twentyOfEachSeeADifferenceOfOneDeviationAsOftenAsRSays() {
        // R documentation of power.t.test, n = 20, delta = 1, sd = 1, strict = TRUE: 0.8689530; half a unit of its last
        // digit.
        assertThat(LapsToSee.power(20, 1)).isCloseTo(0.8689530, within(5e-8));
    }

    @Test
    void ninetyPercentOfDifferencesOfOneDeviationTakeRsNumber() {
        // R documentation: power.t.test(power = .90, delta = 1) gives n = 22.02110. It counts one side only, which at
        // this effect
        // differs by 2e-7; n is printed to 5e-6, and the power there grows by 0.016 for each.
        assertThat(LapsToSee.power(22.02110, 1)).isCloseTo(0.9, within(5e-7));
    }

    @ParameterizedTest
    @CsvSource({"0.2, 394", "0.5, 64", "0.8, 26"})
    void smallMediumAndLargeEffectsTakeCohensNumbers(double effect, int laps) {
        // J. Cohen, A Power Primer, Psychological Bulletin 112 (1992), table 2: 393, 64, 26 at a power of .80 and alpha
        // .05;
        // recomputed in R the first is 393.41, which takes 394 whole ones. Cited from memory.
        assertThat(LapsToSee.perSetup(effect, 1)).isEqualTo(laps);
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
    void theLeastVisibleGainIsTheOtherWayRound(int laps) {
        double gain = LapsToSee.visibleGain(laps, 0.3);
        // Gains go with 1/√n: one lap in 20 000 changes them by 2.5e-5. Either side by more than the search's 1e-9.
        assertThat(LapsToSee.perSetup(gain * (1 + 1e-6), 0.3)).isEqualTo(laps);
        assertThat(LapsToSee.perSetup(gain * (1 - 1e-6), 0.3)).isEqualTo(laps + 1);
    }

    @ParameterizedTest
    @CsvSource({"0.5, 64", "0.8, 26"})
    void cohensNumbersOfLapsShowHisEffectsAndOneLapLessDoesNot(double effect, int laps) {
        // J. Cohen, A Power Primer, table 2, as above.
        assertThat(LapsToSee.visibleGain(laps, 1)).isLessThanOrEqualTo(effect);
        assertThat(LapsToSee.visibleGain(laps - 1, 1)).isGreaterThan(effect);
    }

    @Test
    void oneLapOfEachShowsNothingAndIsRefused() {
        assertThatThrownBy(() -> LapsToSee.visibleGain(1, 0.3))
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
