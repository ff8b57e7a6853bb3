package dev.lapwright.checks;

import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Track;
import org.junit.jupiter.params.ParameterizedTest;

/** Standing starts and steep hills at the limit of the driven wheels' grip, for the three layouts. */
class TractionTest {
    /** A car whose engine always gives more than the driven wheels can take. */
    private static PlainCar car(CheckRow row, double friction) {
        double toFront = row.number("to_front_m");
        double toRear = row.number("to_rear_m");
        double height = row.number("cg_height_m");
        // All four wheels are at their limit together only if the drive is shared as the loads are.
        double front = switch (row.text("layout")) {
            case "front" -> 1;
            case "rear" -> 0;
            case "all" -> (toRear - friction * height) / (toFront + toRear);
            default -> throw new IllegalArgumentException(row.text("layout"));
        };
        return PlainCar.ofMass(1500)
                .axles(toFront, toRear, height)
                .friction(friction)
                .frontDrive(front);
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("standing-starts.csv")
    void theDrivenWheelsSetTheStart(CheckRow row) {
        double gravityShare = row.number("gravity") / PlainCar.GRAVITY;
        row.verify(
                switch (row.quantity()) {
                    case "time to speed" -> timeToSpeed(row, row.number("friction")) / gravityShare;
                    case "acceleration" -> gravityShare * start(car(row, row.number("friction")));
                    case "friction for a time" ->
                        Runs.root(mu -> timeToSpeed(row, mu) / gravityShare - row.number("time_s"), 1, 2);
                    case "steepest grade" -> Math.toDegrees(steepest(car(row, row.number("friction"))));
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    private static double timeToSpeed(CheckRow row, double friction) {
        Lap lap = Runs.drive(car(row, friction), Roads.straight(0, 200, 0));
        return Runs.timeToSpeed(lap, row.number("speed_mps"));
    }

    private static double start(PlainCar car) {
        return Runs.drive(car, Roads.straight(0, 100, 0)).value(Channel.ACCELERATION, 0);
    }

    /** The slope (rad) above which the solver says that there is no run, and below which there is one. */
    private static double steepest(PlainCar car) {
        double climbed = 0;
        double tooSteep = 0.6;
        while (tooSteep - climbed > 1e-8) {
            double middle = 0.5 * (climbed + tooSteep);
            if (climbs(car, Roads.straight(0, 100, middle))) {
                climbed = middle;
            } else {
                tooSteep = middle;
            }
        }
        return climbed;
    }

    private static boolean climbs(PlainCar car, Track hill) {
        try {
            return Runs.drive(car, hill).time() > 0;
        } catch (NoLapException tooSteep) {
            return false;
        }
    }
}
