package dev.lapwright.checks;

import dev.lapwright.track.Track;
import org.junit.jupiter.params.ParameterizedTest;

/** Circles taken with downforce: closed forms, with and without the drag that the driven wheels must overcome. */
class DownforceTest {
    /**
     * A point mass whose friction is a circle pays its drag from the same circle as its side force. The car does so too
     * when each axle carries, drives and turns half of it: half the weight, half the downforce, half the drive, no height.
     */
    private static PlainCar car(CheckRow row) {
        return PlainCar.ofMass(row.number("mass_kg"))
                .topSpeed(370)
                .friction(row.number("friction"))
                .drag(row.number("drag"))
                .downforce(row.number("downforce"));
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("downforce-circles.csv")
    void aCircleIsTakenAtTheSpeedOfTheClosedForm(CheckRow row) {
        double friction = row.number("friction");
        double bank = Math.toRadians(row.number("bank_deg"));
        row.verify(
                switch (row.quantity()) {
                    case "limit speed", "limit speed, drag paid from the same circle" ->
                        Runs.freeCircleSpeed(car(row), row.number("radius_m"), bank);
                    case "critical radius" -> criticalRadius(car(row), friction);
                    case "lap time at top speed" -> {
                        PlainCar powered = car(row).power(550e3, 30, 100);
                        Track circle = Roads.circle(row.number("radius_m"));
                        yield Runs.withoutCorneringDrag(
                                powered, 5, c -> Runs.drive(c, circle).time());
                    }
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    /** The limit holds 1 / R = mu kz / m + mu g / v²; at the critical radius the last term has gone. */
    private static double criticalRadius(PlainCar car, double friction) {
        double speed = 100;
        double radius = Runs.root(r -> Runs.freeCircleSpeed(car, r, 0) - speed, 50, 170);
        return 1 / (1 / radius - friction * PlainCar.GRAVITY / (speed * speed));
    }
}
