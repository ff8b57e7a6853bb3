package dev.lapwright.study.opinion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.study.robust.RobustnessResult.Standing;
import org.junit.jupiter.api.Test;

/** Two models counted alike, against quantiles of the normal distribution from its printed tables. */
class EitherModelTest {
    /** Interval of 90 %: 1.64485 deviations to either side, and to four digits no more. */
    private static Standing normal(double mean, double deviation) {
        return new Standing(100, mean - 1.64485 * deviation, mean, mean + 1.64485 * deviation, 80, 50, 0);
    }

    @Test
    void modelsThatAgreeLeaveTheIntervalAsItIs() {
        EitherModel all = EitherModel.of(normal(-0.1, 0.1), 0);
        assertThat(all.low()).isCloseTo(-0.264485, within(1e-4));
        assertThat(all.high()).isCloseTo(0.064485, within(1e-4));
        // One deviation below nought: 0.8413 of the tables.
        assertThat(all.gain()).isCloseTo(0.8413, within(1e-4));
    }

    /** So far apart that they do not overlap, a twentieth of all is a tenth of each: 1.28155 deviations; and the one half gains. */
    @Test
    void modelsFarApartLeaveOneTailEach() {
        EitherModel all = EitherModel.of(normal(-1, 0.1), 2);
        assertThat(all.low()).isCloseTo(-1 - 0.128155, within(1e-4));
        assertThat(all.high()).isCloseTo(1 + 0.128155, within(1e-4));
        assertThat(all.gain()).isCloseTo(0.5, within(1e-6));
        EitherModel turned = EitherModel.of(normal(1, 0.1), -2);
        assertThat(turned.low()).isCloseTo(all.low(), within(1e-4));
        assertThat(turned.high()).isCloseTo(all.high(), within(1e-4));
    }

    @Test
    void aSkewedIntervalStaysSkewed() {
        EitherModel all = EitherModel.of(new Standing(100, -0.5, -0.1, 0, 90, 50, 0), 0);
        assertThat(all.low()).isCloseTo(-0.5, within(1e-4));
        assertThat(all.high()).isCloseTo(0, within(1e-4));
    }

    @Test
    void aModelWithoutALapIsRefused() {
        assertThatThrownBy(() -> EitherModel.of(normal(0, 1), Double.NaN)).hasMessageContaining("no lap");
    }
}
