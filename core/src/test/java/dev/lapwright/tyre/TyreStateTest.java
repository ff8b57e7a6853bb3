package dev.lapwright.tyre;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The window of pressure and temperature: a parabola with a floor; common practice, no source. */
class TyreStateTest {
    private static final double ROUNDING = 1e-15;

    @Test
    void gripIsWholeAtTheIdeal() {
        assertThat(TyreState.gripFactor(165, 165, 1e-4)).isEqualTo(1);
    }

    @Test
    void gripFallsWithTheSquareOfTheDistance() {
        // 1 - 1e-4 · 20² = 0.96 by hand, on both sides.
        assertThat(TyreState.gripFactor(185, 165, 1e-4)).isCloseTo(0.96, within(ROUNDING));
        assertThat(TyreState.gripFactor(145, 165, 1e-4)).isCloseTo(0.96, within(ROUNDING));
    }

    @Test
    void gripNeverFallsBelowItsFloor() {
        assertThat(TyreState.gripFactor(20, 165, 1e-3)).isEqualTo(0.6);
    }
}
