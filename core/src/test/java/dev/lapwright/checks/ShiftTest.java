package dev.lapwright.checks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Quantity;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import org.junit.jupiter.api.Test;

/** What a shift costs, and what a car does whose gears leave a hole. Closed forms of plain mechanics, derived here. */
class ShiftTest {
    /** 1000 kg, 1000 N in first gear up to 30 m/s and half of it in second up to 60 m/s: 1 and 0.5 m/s². */
    private static PlainCar twoGears() {
        return PlainCar.ofMass(1000).force(1000).topSpeed(30).gears(1, 0.5);
    }

    @Test
    void shiftWithoutLossesCostsExactlyItsTime() {
        // Nothing slows the car while it has no drive, so it reaches any later speed just the shift time later.
        Lap quick = Runs.drive(twoGears(), Roads.straight(20, 2500, 0), Runs.FINE);
        Lap slow = Runs.drive(twoGears().with(Quantity.SHIFT_TIME, 0.2), Roads.straight(20, 2500, 0), Runs.FINE);
        // Third-order steps at a tenth of the default spacing; 0.1 ms is the smoothness promised.
        assertThat(timeTo(45, slow) - timeTo(45, quick)).isCloseTo(0.2, within(1e-4));
    }

    @Test
    void shiftAgainstResistanceCostsWhatTheCarLosesToo() {
        // While there is no drive a climb takes r t off the speed, regained at a: t (1 + r/a) in all, here with r = 0.3
        // m/s²
        // and a = 0.5 - 0.3 in second gear. Second order in the band's width leaves less than 1 %.
        double slope = Math.asin(0.3 / PlainCar.GRAVITY);
        Lap quick = Runs.drive(twoGears(), Roads.straight(20, 5000, slope), Runs.FINE);
        Lap slow = Runs.drive(twoGears().with(Quantity.SHIFT_TIME, 0.2), Roads.straight(20, 5000, slope), Runs.FINE);
        assertThat(timeTo(40, slow) - timeTo(40, quick)).isCloseTo(0.2 * (1 + 0.3 / 0.2), within(0.005));
    }

    @Test
    void carStaysOnTheLimiterWhereTheNextGearCannotPull() {
        // A climb that takes 0.7 m/s²: first gear pulls up it, second would lose speed.
        Lap lap = Runs.drive(twoGears(), Roads.straight(25, 2000, Math.asin(0.7 / PlainCar.GRAVITY)));
        int last = lap.count() - 1;
        // The rev limit in first gear is 30 m/s by construction; rounding only.
        assertThat(lap.value(Channel.SPEED, last)).isCloseTo(30, within(1e-9));
        assertThat(lap.limit(last - 1)).isEqualTo(Limit.REV_LIMIT);
        assertThat(lap.value(Channel.GEAR, last - 1)).isEqualTo(1);
        assertThat(lap.value(Channel.ACCELERATION, last - 1)).isZero();
    }

    @Test
    void frontWheelsJustLeaveTheRoadUnderDrive() {
        // Rear drive, centre of gravity 1 m up, 1 m before the rear axle: the front lifts at g b/h = g · 1/1.
        PlainCar tall = PlainCar.ofMass(500).friction(4).axles(1.5, 1, 1).frontDrive(0);
        Lap lap = Runs.drive(tall, Roads.straight(10, 200, 0));
        assertThat(lap.limit(3)).isEqualTo(Limit.PITCH_OVER);
        // The solver settles accelerations to 1e-6 m/s² and better.
        assertThat(lap.value(Channel.ACCELERATION, 3)).isCloseTo(PlainCar.GRAVITY, within(1e-6));
    }

    private static double timeTo(double speed, Lap lap) {
        int i = 0;
        while (lap.value(Channel.SPEED, i) < speed) {
            i++;
        }
        double v0 = lap.value(Channel.SPEED, i - 1);
        double v1 = lap.value(Channel.SPEED, i);
        double t0 = lap.value(Channel.TIME, i - 1);
        // Acceleration is even here, so speed is linear in time.
        return t0 + (lap.value(Channel.TIME, i) - t0) * (speed - v0) / (v1 - v0);
    }
}
