package dev.lapwright.powertrain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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

    /** Where the wheels slip against each other the two forces are in the torque bias ratio of SAE papers. */
    @ParameterizedTest(name = "{0}")
    @CheckFile("differential.csv")
    void onTheOverrunTheOuterWheelCarriesTheTorqueBias(CheckRow row) {
        double through = -1000;
        double difference = Differential.outerLessInner(-1e9, through, row.number("locking"));
        row.verify((through + difference) / (through - difference));
    }

    @Test
    void belowItsLockingADifferentialTurnsBothWheelsAsOne() {
        assertThat(Differential.outerLessInner(-200, 1000, 0.5)).isEqualTo(-200);
    }

    @Test
    void anAxleWithoutDifferentialIsBoundByNothing() {
        assertThat(Differential.outerLessInner(-5000, 0, 1)).isEqualTo(-5000);
    }

    @Test
    void wheelsTurningAsOneSlipByTheDifferenceOfTheirWays() {
        double inner = 40_000;
        double outer = 90_000;
        double slip = 0.03;
        double force = 3000;
        double difference = Differential.turningAsOne(force, inner, outer, slip);
        // Statics: the two forces over their stiffnesses are the two slips, whose difference is that of the ways.
        double slipDifference = (force - difference) / 2 / inner - (force + difference) / 2 / outer;
        // Rounding of doubles.
        assertThat(slipDifference).isCloseTo(slip, within(1e-12));
    }

    @Test
    void onAStraightEqualWheelsShareEvenly() {
        assertThat(Differential.turningAsOne(3000, 50_000, 50_000, 0)).isZero();
    }
}
