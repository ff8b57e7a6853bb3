package dev.lapwright.aero;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.fault.InvalidValueException;
import java.util.List;
import org.junit.jupiter.api.Test;

class WingTest {
    private static final Wing WING = new Wing(
            "rear",
            List.of(
                    new Wing.Setting(0, new Areas(0.05, -0.05, 0.40)),
                    new Wing.Setting(4, new Areas(0.08, -0.08, 0.72)),
                    new Wing.Setting(8, new Areas(0.15, -0.11, 0.95)),
                    new Wing.Setting(12, new Areas(0.26, -0.13, 1.02))));

    @Test
    void atTheAnglesOfItsTableAWingGivesTheTable() {
        for (Wing.Setting setting : WING.settings()) {
            assertThat(WING.at(setting.angleDeg())).isEqualTo(setting.areas());
        }
    }

    @Test
    void betweenRisingValuesAWingOnlyRises() {
        Areas before = WING.at(0);
        for (int i = 1; i <= 1200; i++) {
            Areas here = WING.at(i / 100.0);
            assertThat(here.drag()).isGreaterThanOrEqualTo(before.drag());
            assertThat(here.liftRear()).isGreaterThanOrEqualTo(before.liftRear());
            assertThat(here.liftFront()).isLessThanOrEqualTo(before.liftFront());
            before = here;
        }
    }

    @Test
    void anAngleOutsideTheTableIsRefusedWithTheRange() {
        assertThatThrownBy(() -> WING.at(12.5))
                .isInstanceOf(InvalidValueException.class)
                .hasMessage("wing rear angleDeg: 12.5 is outside its range; allowed: 0 to 12");
    }

    @Test
    void aWingOfOneAngleIsFixed() {
        Wing fixed = new Wing("flap", List.of(new Wing.Setting(3, new Areas(0.1, 0, 0.2))));
        assertThat(fixed.at(3)).isEqualTo(new Areas(0.1, 0, 0.2));
        assertThatThrownBy(() -> fixed.at(4)).isInstanceOf(InvalidValueException.class);
    }
}
