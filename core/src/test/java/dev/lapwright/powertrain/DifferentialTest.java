package dev.lapwright.powertrain;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;

class DifferentialTest {
    @ParameterizedTest(name = "{0}")
    @CheckFile("differential.csv")
    void theLockingValueSetsTheTorqueBias(CheckRow row) {
        row.verify(Differential.torqueBias(row.number("locking")));
    }

    @Test
    void aLockedDifferentialHasNoBoundOnItsBias() {
        assertThat(Differential.torqueBias(1)).isInfinite();
        assertThat(Differential.strongerWheel(100, 900, Differential.torqueBias(1)))
                .isEqualTo(900);
    }

    @Test
    void anOpenDifferentialHoldsTheStrongerWheelToTheWeaker() {
        assertThat(Differential.strongerWheel(100, 900, Differential.torqueBias(0)))
                .isEqualTo(100);
    }
}
