package dev.lapwright.checks;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Quantity;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import org.junit.jupiter.params.ParameterizedTest;

/** What a shift costs, and what a car does whose gears leave a hole. Closed forms of plain mechanics, derived here. */
class ShiftTest {
    /** 1000 kg, 1000 N in first gear up to 30 m/s and half of it in second up to 60 m/s: 1 and 0.5 m/s². */
    private static PlainCar twoGears() {
        return PlainCar.ofMass(1000).force(1000).topSpeed(30).gears(1, 0.5);
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("shifts.csv")
    void shiftsAndLimitersFollowPlainMechanics(CheckRow row) {
        row.verify(
                switch (row.quantity()) {
                    // Nothing slows the car while it has no drive: it reaches any later speed just the shift time
                    // later.
                    case "cost of a shift of 0.2 s without resistance" -> cost(45, 2500, 0);
                    // While there is no drive a climb takes r t off the speed, regained at a.
                    case "cost of a shift of 0.2 s against 0.3 m/s2" ->
                        cost(40, 5000, Math.asin(0.3 / PlainCar.GRAVITY));
                    case "speed held where the next gear cannot pull" -> onTheLimiter();
                    case "acceleration at which the front wheels leave the road" -> wheelie();
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    private static double cost(double speed, double length, double slope) {
        Lap quick = Runs.drive(twoGears(), Roads.straight(20, length, slope), Runs.FINE);
        Lap slow = Runs.drive(twoGears().with(Quantity.SHIFT_TIME, 0.2), Roads.straight(20, length, slope), Runs.FINE);
        return timeTo(speed, slow) - timeTo(speed, quick);
    }

    /** A climb that takes 0.7 m/s²: first gear pulls up it, second would lose speed. */
    private static double onTheLimiter() {
        Lap lap = Runs.drive(twoGears(), Roads.straight(25, 2000, Math.asin(0.7 / PlainCar.GRAVITY)));
        int last = lap.count() - 1;
        assertThat(lap.limit(last - 1)).isEqualTo(Limit.REV_LIMIT);
        assertThat(lap.value(Channel.GEAR, last - 1)).isEqualTo(1);
        assertThat(lap.value(Channel.ACCELERATION, last - 1)).isZero();
        return lap.value(Channel.SPEED, last);
    }

    /** Rear drive, centre of gravity 1 m up, 1 m before the rear axle. */
    private static double wheelie() {
        PlainCar tall = PlainCar.ofMass(500).friction(4).axles(1.5, 1, 1).frontDrive(0);
        Lap lap = Runs.drive(tall, Roads.straight(10, 200, 0));
        assertThat(lap.limit(3)).isEqualTo(Limit.PITCH_OVER);
        return lap.value(Channel.ACCELERATION, 3);
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
