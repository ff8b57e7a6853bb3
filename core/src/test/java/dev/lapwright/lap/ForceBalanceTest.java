package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Each term of the force balance against a handbook's formula, and whether the check would see an error of 5 % in it. */
class ForceBalanceTest {
    @ParameterizedTest
    @EnumSource(BalanceTerm.class)
    void aTermIsThatOfTheHandbook(BalanceTerm term) {
        assertThat(term.measured(1)).isCloseTo(term.expected, within(term.tolerance * Math.abs(term.expected)));
    }

    /** The error is put in by the quantity that scales the term and nothing else. */
    @ParameterizedTest
    @EnumSource(BalanceTerm.class)
    void fivePercentLessOfATermIsSeen(BalanceTerm term) {
        assertThat(term.holds(0.95)).isFalse();
        assertThat(term.holds(1 / 0.95)).isFalse();
    }

    /** The errors that once went unseen: a tenth off a differential's moment, half of toe in bends. */
    @ParameterizedTest
    @EnumSource(
            value = BalanceTerm.class,
            names = {"DIFFERENTIAL_.*", "SPOOL", "TOE_DRAG_IN_A_BEND", "TOE_PEAK"},
            mode = EnumSource.Mode.MATCH_ANY)
    void largerErrorsOfTheDifferentialAndOfToeAreSeen(BalanceTerm term) {
        assertThat(term.holds(0.9)).isFalse();
        assertThat(term.holds(0.5)).isFalse();
    }
}
