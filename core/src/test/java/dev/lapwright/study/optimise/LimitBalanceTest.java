package dev.lapwright.study.optimise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.study.StudyCars;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Figures of corners against closed forms of a point mass on two axles that carry the same load. */
class LimitBalanceTest {
    private static final Track OVAL = StudyCars.oval(300, 60);
    /** Percent: a driven tyre overcomes the drag of cornering, (mu / 200)² / 2 of the grip, or 0.001 %; ten times that. */
    private static final double DRAG = 0.01;

    private static double balance(double front, double rear) {
        PlainCar car =
                PlainCar.ofMass(1000).with(Quantity.FRICTION_Y_FRONT, front).with(Quantity.FRICTION_Y_REAR, rear);
        return LimitBalance.percent(LapSolver.lap(car.car(), OVAL, Conditions.STANDARD));
    }

    @Test
    void equalAxlesAreNeutral() {
        assertThat(balance(1, 1)).isCloseTo(0, within(DRAG));
    }

    @Test
    void aWeakerFrontAxleUndersteersByWhatTheRearHasInReserve() {
        // Equal loads and lateral accelerations: the rear takes 0.9 / 1 of its grip where the front takes all.
        assertThat(balance(0.9, 1)).isCloseTo(10, within(DRAG));
    }

    @Test
    void aWeakerRearAxleOversteersByWhatTheFrontHasInReserve() {
        assertThat(balance(1, 0.8)).isCloseTo(-20, within(DRAG));
    }

    @Test
    void withoutACornerAtTheLimitThereIsNoBalance() {
        Lap lap = LapSolver.lap(PlainCar.ofMass(1000).car(), StudyCars.straight(500), Conditions.STANDARD);
        assertThat(LimitBalance.percent(lap)).isNaN();
    }

    /** An open run of a bend of even radius and a straight; the shift of two gears comes at 30 m/s. */
    private static int upshifts(double bend, double straight) {
        Track run = new SegmentPath(List.of(Segment.arc(bend, 400), Segment.straight(straight)), false, 1)
                .openTrack("run", 25);
        // 2 m/s² in first gear; the rev limit of a ratio of 1 at 60 m/s, so of a ratio of 2 at 30 m/s.
        PlainCar car = PlainCar.ofMass(1000).topSpeed(60).force(1000).gears(2, 1);
        return LimitBalance.upshiftsInCorners(LapSolver.lap(car.car(), run, Conditions.STANDARD));
    }

    @Test
    void anUpshiftInABendOfEvenRadiusCounts() {
        // 30 m/s are reached after (900 - 625) / (2 · 2) = 69 m.
        assertThat(upshifts(150, 300)).isEqualTo(1);
    }

    @Test
    void anUpshiftOnTheStraightBehindItDoesNot() {
        assertThat(upshifts(50, 300)).isZero();
    }
}
