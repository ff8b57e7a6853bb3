package dev.lapwright.powertrain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DifferentialTest {
    @ParameterizedTest(name = "{0}")
    @CheckFile("differential.csv")
    void theLockingValueSetsTheTorqueBias(CheckRow row) {
        row.verify(Differential.torqueBias(row.number("locking")));
    }

    private static final double PLENTY = 1e6;
    private static final Differential OPEN = new Differential(0, 0, 0);
    private static final Differential SPOOL = new Differential(1, 1, 0);

    @Test
    void aSpoolHasNoBoundOnItsBias() {
        assertThat(Differential.torqueBias(1)).isInfinite();
        assertThat(SPOOL.friction(0, true)).isInfinite();
        assertThat(SPOOL.capacity(100, 900, false)).isEqualTo(1000);
    }

    @Test
    void anOpenDifferentialHoldsTheStrongerWheelToTheWeaker() {
        // Check value: an open axle in steady turn, Fo = Fi, whatever its wheels would do as one.
        assertThat(OPEN.capacity(100, 900, false)).isEqualTo(200);
        assertThat(Differential.outerLessInner(150, 70, OPEN.friction(150, false), 100, 900))
                .isZero();
    }

    /** Where the outer wheel turns faster, Fo / Fi = (1 - S) / (1 + S) under drive, and the inverse on the overrun. */
    @ParameterizedTest(name = "{0}")
    @CheckFile("differential.csv")
    void slidingAgainstEachOtherTheWheelsAreInTheTorqueBias(CheckRow row) {
        Differential plates = new Differential(row.number("locking"), row.number("locking"), 0);
        double driven = Differential.outerLessInner(1000, -1e9, plates.friction(1000, false), PLENTY, PLENTY);
        row.verify((1000 - driven) / (1000 + driven));
        double dragged = Differential.outerLessInner(-1000, -1e9, plates.friction(1000, true), PLENTY, PLENTY);
        row.verify((-1000 + dragged) / (-1000 - dragged));
    }

    @ParameterizedTest
    @CsvSource({"0.2, 0", "0.2, 300", "0.5, 300", "0, 300"})
    void theInnerWheelAtItsPeakSetsTheCapacity(double locking, double preload) {
        // Check value, closed form: Fo <= (1 + S)/(1 - S) Fi + D0/(1 - S) with the inner wheel at its peak.
        double inner = 800;
        double outer = (1 + locking) / (1 - locking) * inner + preload / (1 - locking);
        Differential plates = new Differential(locking, 0, preload);
        // Rounding of doubles.
        assertThat(plates.capacity(inner, PLENTY, false)).isCloseTo(inner + outer, within(1e-9));
        assertThat(Differential.outerLessInner(
                        inner + outer, 1e9, plates.friction(inner + outer, false), inner, PLENTY))
                .isCloseTo(outer - inner, within(1e-9));
    }

    @Test
    void preloadHoldsTheWheelsTogetherWithNothingGoingThrough() {
        Differential plates = new Differential(0.4, 0.2, 250);
        assertThat(Differential.outerLessInner(0, -900, plates.friction(0, false), PLENTY, PLENTY))
                .isEqualTo(-250);
        assertThat(plates.friction(1000, false)).isEqualTo(650);
        assertThat(plates.friction(1000, true)).isEqualTo(450);
    }

    @Test
    void belowItsLockingADifferentialTurnsBothWheelsAsOne() {
        assertThat(Differential.outerLessInner(1000, -200, 500, PLENTY, PLENTY)).isEqualTo(-200);
    }

    @Test
    void aSpoolWithoutDriveTurnsAgainstTheTurn() {
        // Check value, closed form: equal stiffness C on both wheels and no drive, Fo - Fi = -C κ t.
        double stiffness = 60_000;
        double slip = 1.6 / 50;
        double asOne = Differential.turningAsOne(0, stiffness, stiffness, slip);
        assertThat(Differential.outerLessInner(0, asOne, SPOOL.friction(0, false), PLENTY, PLENTY))
                .isCloseTo(-stiffness * slip, within(1e-9));
    }

    @Test
    void aWheelAtItsPeakLeavesTheRestToTheOther() {
        // A spool driving 1000 N of which the inner wheel can give 300, and turning as one would give half.
        assertThat(Differential.outerLessInner(1000, 0, SPOOL.friction(1000, false), 300, 900))
                .isEqualTo(400);
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
