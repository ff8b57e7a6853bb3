package dev.lapwright.checks;

import dev.lapwright.track.StationSpacing;
import org.junit.jupiter.params.ParameterizedTest;

/** Curve radii and braking distances of the manuals by which roads are laid out. */
class RoadManualTest {
    private static final double FOOT = 0.3048;
    private static final double MILE_PER_HOUR = 0.44704;

    private static boolean isMetric(CheckRow row) {
        return row.text("speed_unit").equals("km/h");
    }

    private static double speed(CheckRow row) {
        return isMetric(row) ? row.number("speed") / 3.6 : row.number("speed") * MILE_PER_HOUR;
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("curve-radii.csv")
    void aBankedCurveIsTakenAtTheDesignSpeed(CheckRow row) {
        double bank = Math.atan(row.number("superelevation"));
        double friction = row.number("friction");
        double speed = speed(row);
        PlainCar car = PlainCar.ofMass(1000).friction(friction);
        double near = speed * speed / (PlainCar.GRAVITY * (friction + Math.tan(bank)));
        double radius = Runs.root(r -> Runs.circleSpeed(car, r, bank) - speed, 0.8 * near, 1.2 * near);
        double simplified = radius / (1 - friction * row.number("superelevation"));
        double exactConstant = isMetric(row)
                ? 3.6 * 3.6 * PlainCar.GRAVITY
                : PlainCar.GRAVITY / FOOT * Math.pow(FOOT / MILE_PER_HOUR, 2);
        double asTheManual = simplified * exactConstant / row.number("manual_constant");
        row.verify(isMetric(row) ? asTheManual : asTheManual / FOOT);
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("stopping-distances.csv")
    void theCarStopsInTheDistanceOfTheTable(CheckRow row) {
        double deceleration = row.number("deceleration") * (isMetric(row) ? 1 : FOOT);
        PlainCar car = PlainCar.ofMass(1000).friction(deceleration / PlainCar.GRAVITY);
        Runs.Braking braking = Runs.brake(car.vehicle(), speed(row), Runs.STANDSTILL, 0, StationSpacing.DEFAULT);
        double exactConstant = isMetric(row) ? 1 / (2 * 3.6 * 3.6) : Math.pow(MILE_PER_HOUR / FOOT, 2) / 2;
        double asTheManual = braking.distance() * row.number("manual_constant") / exactConstant;
        row.verify(isMetric(row) ? asTheManual : asTheManual / FOOT);
    }
}
