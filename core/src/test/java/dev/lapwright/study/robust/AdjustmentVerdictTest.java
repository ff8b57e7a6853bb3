package dev.lapwright.study.robust;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.study.robust.RobustnessResult.Standing;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The one rule, on intervals by hand; 0.05 s is the least that counts. */
class AdjustmentVerdictTest {
    private static Standing from(double low, double high) {
        return new Standing(60, low, 0.5 * (low + high), high, 0, 0, 0);
    }

    @Test
    void whatIsHeldAgainstIsAGainThatCountsAndTheEnds() {
        assertThat(AdjustmentVerdict.settings(6, 8, -0.06, 0, 12)).containsExactly(8.0, 0.0, 12.0);
        assertThat(AdjustmentVerdict.settings(6, 8, -0.04, 0, 12)).containsExactly(0.0, 12.0);
        assertThat(AdjustmentVerdict.settings(6, 12, -0.06, 0, 12)).containsExactly(12.0, 0.0);
        assertThat(AdjustmentVerdict.settings(0, 0, 0, 0, 12)).containsExactly(12.0);
    }

    @Test
    void whatALapTimeCannotJudgeNeedsNoDrawnCars() {
        assertThat(AdjustmentVerdict.undrawn(0.3, true)).contains(AdjustmentVerdict.UNSEEN);
        assertThat(AdjustmentVerdict.undrawn(0.0004, false)).contains(AdjustmentVerdict.ALIKE);
        // Worth little on the car as it is described, it may be worth more on others.
        assertThat(AdjustmentVerdict.undrawn(0.01, false)).isEmpty();
    }

    @Test
    void aGainIsOneOnNineOfTenCars() {
        assertThat(AdjustmentVerdict.of(-0.2, List.of(from(-0.3, -0.1), from(0.1, 0.3))))
                .isEqualTo(AdjustmentVerdict.GAIN);
        assertThat(AdjustmentVerdict.of(-0.2, List.of(from(-0.3, 0.1), from(0.1, 0.3))))
                .isEqualTo(AdjustmentVerdict.UNTOLD);
    }

    @Test
    void alreadyRightIsWhereAMissCosts() {
        assertThat(AdjustmentVerdict.of(0, List.of(from(0.1, 0.3), from(-0.02, 0.04))))
                .isEqualTo(AdjustmentVerdict.RIGHT);
        assertThat(AdjustmentVerdict.of(0, List.of(from(-0.04, 0.03), from(-0.02, 0.04))))
                .isEqualTo(AdjustmentVerdict.ALIKE);
    }

    @Test
    void anEndThatMayBeEitherCannotBeTold() {
        assertThat(AdjustmentVerdict.of(0, List.of(from(0.1, 0.3), from(-0.2, 0.2))))
                .isEqualTo(AdjustmentVerdict.UNTOLD);
        // An end that is faster on nearly all, though the setting tried as the fastest was not: the document's car is
        // odd.
        assertThat(AdjustmentVerdict.of(0, List.of(from(-0.3, -0.1)))).isEqualTo(AdjustmentVerdict.UNTOLD);
        assertThat(AdjustmentVerdict.of(0, List.of())).isEqualTo(AdjustmentVerdict.UNTOLD);
    }
}
