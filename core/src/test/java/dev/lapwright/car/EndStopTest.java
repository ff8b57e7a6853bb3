package dev.lapwright.car;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.study.StudyCars;
import org.junit.jupiter.api.Test;

class EndStopTest {
    @Test
    void anEndOfARangeHasItsReasonOnTheCar() {
        Adjustment gears = StudyCars.finalDrive(3, 4, 0.1);
        assertThat(EndStop.of(gears)).contains(EndStop.GEARING);
        assertThat(EndStop.isEnd(gears, 3)).isTrue();
        assertThat(EndStop.isEnd(gears, 4)).isTrue();
        assertThat(EndStop.isEnd(gears, 3.5)).isFalse();
    }
}
