package dev.lapwright.powertrain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class OverrunDragTest {
    @Test
    void atTheRevLimitItIsTheShareOfTheGreatestTorque() {
        // The law as stated: 20 % of 400 Nm. Rounding of doubles.
        assertThat(OverrunDrag.torque(400, 0.2, 1)).isCloseTo(80, within(1e-12));
    }

    @Test
    void atRestItIsHalfOfThat() {
        // Rounding of doubles.
        assertThat(OverrunDrag.torque(400, 0.2, 0)).isCloseTo(40, within(1e-12));
    }

    @Test
    void aDriveThatFreewheelsHasNone() {
        assertThat(OverrunDrag.torque(400, 0, 0.7)).isZero();
    }
}
