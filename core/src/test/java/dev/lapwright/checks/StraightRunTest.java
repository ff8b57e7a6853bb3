package dev.lapwright.checks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Quantity;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.StationSpacing;
import org.junit.jupiter.params.ParameterizedTest;

/** Straights in closed form: drive against drag, coasting, braking with downforce, and the speed that settles. */
class StraightRunTest {
    /** Speed at which runs under constant power start, m/s. */
    private static final double START = 10;

    @ParameterizedTest(name = "{0}")
    @CheckFile("straight-runs.csv")
    void aStraightIsDrivenAsTheClosedFormHasIt(CheckRow row) {
        row.verify(computed(row, Runs.FINE));
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile(
            value = "straight-runs.csv",
            quantities = {"time under constant force", "time under constant power"})
    void atTheDefaultSpacingTheTimeIsWithinAMillisecond(CheckRow row) {
        // The promise of StationSpacing.DEFAULT.
        assertThat(computed(row, StationSpacing.DEFAULT)).isCloseTo(row.expected(), within(1e-3));
    }

    private static double computed(CheckRow row, StationSpacing spacing) {
        return switch (row.quantity()) {
            case "time under constant force" -> underForce(row, spacing).time();
            case "speed under constant force" -> Runs.endSpeed(underForce(row, spacing));
            case "time under constant power" ->
                headStartTime(row) + underPower(row, spacing).time();
            case "speed under constant power" -> Runs.endSpeed(underPower(row, spacing));
            case "coast-down distance" -> coastDown(row, spacing);
            case "coast-down time" ->
                coastRun(row, coastDown(row, spacing), spacing).time();
            default -> throw new IllegalArgumentException(row.quantity());
        };
    }

    private static PlainCar car(CheckRow row) {
        return PlainCar.ofMass(row.number("mass_kg")).friction(4).drag(row.number("drag"));
    }

    private static Lap underForce(CheckRow row, StationSpacing spacing) {
        return Runs.drive(
                car(row).force(row.number("force_n")), Roads.straight(0, row.number("distance_m"), 0), spacing);
    }

    /**
     * Constant power is a torque that falls as the inverse of speed. The solver keeps torque in a table of 400 cells up to
     * the rev limit, here 100 m/s: cells of h = 0.25 m/s, whose cubics with Catmull-Rom slopes miss 1/v by some
     * (h / v)^4 at most, 4e-7 of the force at 10 m/s and 1e-9 at 40 m/s.
     */
    private static Lap underPower(CheckRow row, StationSpacing spacing) {
        PlainCar car = car(row).power(row.number("power_w"), 5, 100);
        return Runs.drive(car, Roads.straight(START, row.number("distance_m") - headStartDistance(row), 0), spacing);
    }

    /** Distance from rest to the speed at which the run starts, from the closed form v³ = (P / k) (1 - exp(-3 k x / m)). */
    private static double headStartDistance(CheckRow row) {
        double mass = row.number("mass_kg");
        double power = row.number("power_w");
        double k = row.number("drag");
        double cube = START * START * START / power;
        return k == 0 ? mass * cube / 3 : -mass / (3 * k) * Math.log1p(-k * cube);
    }

    /** Time for it: ∫ m v dv / (P - k v³), to second order in k v³ / P, which is 3e-3: the rest is below 1e-9 s. */
    private static double headStartTime(CheckRow row) {
        double mass = row.number("mass_kg");
        double power = row.number("power_w");
        double drag = row.number("drag") * START * START * START / power;
        return mass * START * START / power * (1 / 2.0 + drag / 5 + drag * drag / 8 + drag * drag * drag / 11);
    }

    private static Lap coastRun(CheckRow row, double length, StationSpacing spacing) {
        double mass = row.number("mass_kg");
        PlainCar car = car(row).with(Quantity.ROLLING_RESISTANCE, row.number("rolling_n") / (mass * PlainCar.GRAVITY))
                .withoutDrive();
        return Runs.drive(car, Roads.straight(row.number("from_mps"), length, 0), spacing);
    }

    /** Length of the straight at whose end the car has slowed to the lower speed. */
    private static double coastDown(CheckRow row, StationSpacing spacing) {
        return Runs.root(length -> Runs.endSpeed(coastRun(row, length, spacing)) - row.number("to_mps"), 1000, 2150);
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("braking-with-drag.csv")
    void brakingIsHelpedByDragAndDownforce(CheckRow row) {
        Runs.Braking braking = brake(row, Runs.FINE);
        row.verify(row.quantity().equals("braking distance") ? braking.distance() : braking.time());
    }

    private static Runs.Braking brake(CheckRow row, StationSpacing spacing) {
        double friction = row.number("friction");
        PlainCar car = car(row).friction(friction).downforce(row.number("downforce"));
        double to = Math.max(row.number("to_mps"), Runs.STANDSTILL);
        Runs.Braking braking = Runs.brake(car.vehicle(), row.number("from_mps"), to, 0, spacing);
        double below = (to - row.number("to_mps")) / (friction * PlainCar.GRAVITY);
        return new Runs.Braking(braking.distance(), braking.time() + below);
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("terminal-speeds.csv")
    void theSpeedSettlesWherePowerAndResistanceMeet(CheckRow row) {
        row.verify(
                switch (row.quantity()) {
                    case "speed reached" -> reached(row) * (row.text("unit").equals("km/h") ? 3.6 : 1);
                    case "speed rolling down" -> rollingDown(row);
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    private static double reached(CheckRow row) {
        PlainCar car = car(row).power(row.number("power_w"), 25, 130);
        double wind = row.has("head_wind_mps") ? row.number("head_wind_mps") : 0;
        return Runs.settledSpeed(car.inHeadWind(wind), 40, Math.atan(row.number("grade_percent") / 100));
    }

    private static double rollingDown(CheckRow row) {
        double slope = 0.3;
        PlainCar car = PlainCar.ofMass(row.number("mass_kg"))
                .drag(row.number("fall_drag") * Math.sin(slope))
                .withoutDrive();
        double gravityShare = row.number("gravity") / PlainCar.GRAVITY;
        return Runs.settledSpeed(car.vehicle(), 30, -slope) * Math.sqrt(gravityShare);
    }
}
