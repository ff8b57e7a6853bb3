package dev.lapwright.checks;

import dev.lapwright.car.Quantity;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.powertrain.TorqueCurve;
import org.junit.jupiter.params.ParameterizedTest;

/** Worked examples of highway engineering, in feet and pounds, and the drive through one gear. */
class RoadLoadTest {
    private static final double FOOT = 0.3048;
    private static final double INCH = 0.0254;
    private static final double MILE_PER_HOUR = 0.44704;
    private static final double POUND = 0.45359237;
    private static final double POUND_FORCE = POUND * PlainCar.GRAVITY;
    private static final double SLUG_PER_CUBIC_FOOT = POUND_FORCE / FOOT / (FOOT * FOOT * FOOT);
    private static final double HORSEPOWER = 550 * FOOT * POUND_FORCE;
    /** The book's gravity. */
    private static final double BOOK_GRAVITY = 32.2 * FOOT;

    /** Half of density times drag coefficient times area, from slug/ft³ and ft², in N s²/m². */
    private static double dragFactor(double density, double coefficient, double area) {
        return 0.5 * density * SLUG_PER_CUBIC_FOOT * coefficient * area * FOOT * FOOT;
    }

    /** Rolling resistance 0.01 (1 + V / 147), V in ft/s. */
    private static PlainCar rolling(PlainCar car) {
        return car.with(Quantity.ROLLING_RESISTANCE, 0.01)
                .with(Quantity.ROLLING_RESISTANCE_PER_SPEED, 0.01 / (147 * FOOT));
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("road-loads.csv")
    void aWorkedExampleIsMet(CheckRow row) {
        row.verify(
                switch (row.quantity()) {
                    case "stopping distance with drag" -> stopping(dragFactor(0.0024, 0.25, 18));
                    case "stopping distance without drag" -> stopping(0);
                    case "speed for 50 hp" -> {
                        PlainCar car = rolling(PlainCar.ofMass(2500 * POUND))
                                .drag(dragFactor(0.002378, 0.38, 20))
                                .power(50 * HORSEPOWER, 15, 60);
                        double speed = Runs.settledSpeed(car.vehicle(), 35, 0);
                        yield row.text("unit").equals("mph") ? speed / MILE_PER_HOUR : speed / FOOT;
                    }
                    case "drag" -> fastDrive().value(Channel.DRAG, 2) / POUND_FORCE;
                    case "tractive effort" -> fastDrive().value(Channel.DRIVE_FORCE, 2) / POUND_FORCE;
                    case "engine torque" ->
                        Runs.root(
                                        torque -> Runs.settledSpeed(
                                                        fastCar(torque).vehicle(), 60, 0)
                                                - 130 * MILE_PER_HOUR,
                                        150,
                                        220)
                                / (POUND_FORCE * FOOT);
                    case "engine speed" ->
                        Runs.drive(
                                        // The book's slip is a share of the wheel's speed, ours of the car's.
                                        fastCar(500)
                                                .with(Quantity.WHEEL_RADIUS, 12.6 * INCH)
                                                .with(Quantity.TYRE_SLIP, 3 / 0.97),
                                        Roads.straightAt(130 * MILE_PER_HOUR, 100))
                                .value(Channel.ENGINE_SPEED, 2);
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    /**
     * The book has the hill in the weight's component (10 %) but not in the load on the road, and adds rolling resistance to
     * the grip's braking, as the model does. Its inertia goes with its own gravity. Its mass factor is one that the force mu W
     * feels; in the model that is the brakes' force, which stops the rotating parts, and not the tyres': so brakes of mu W, and tyres
     * that hold more.
     */
    private static double stopping(double dragFactor) {
        double mass = 2500 * POUND;
        double slope = Math.asin(0.1);
        double wheelRadius = 0.3;
        PlainCar car = PlainCar.ofMass(mass)
                .friction(1)
                .brakes(0.7 * mass * PlainCar.GRAVITY)
                .with(Quantity.ROLLING_RESISTANCE, 0.015 / Math.cos(slope))
                .with(Quantity.WHEEL_RADIUS, wheelRadius)
                .with(Quantity.WHEEL_INERTIA, 0.04 * mass * wheelRadius * wheelRadius)
                .drag(dragFactor);
        Runs.Braking braking = Runs.brake(car.vehicle(), 90 * MILE_PER_HOUR, Runs.STANDSTILL, -slope, Runs.FINE);
        return braking.distance() * PlainCar.GRAVITY / BOOK_GRAVITY / FOOT;
    }

    /** Problem 2.7: a car of 3400 lb with one gear, and an engine torque in Nm that does not change with speed. */
    private static PlainCar fastCar(double torque) {
        return rolling(PlainCar.ofMass(3400 * POUND))
                .drag(dragFactor(0.00206, 0.28, 19.8))
                .with(Quantity.FINAL_DRIVE, 2.5)
                .with(Quantity.EFFICIENCY, 0.88)
                .with(Quantity.WHEEL_RADIUS, 12.6 * INCH)
                .with(Quantity.REV_LIMIT, 8000)
                .engine(new TorqueCurve(new double[] {0, 8000}, new double[] {torque, torque}));
    }

    private static Lap fastDrive() {
        return Runs.drive(fastCar(500), Roads.straightAt(130 * MILE_PER_HOUR, 100));
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("gearing.csv")
    void aGearTradesTorqueForSpeed(CheckRow row) {
        double torque = row.number("torque_nm");
        PlainCar car = PlainCar.ofMass(1000)
                .gears(row.number("gear"))
                .with(Quantity.FINAL_DRIVE, row.number("final_drive"))
                .with(Quantity.EFFICIENCY, row.number("efficiency"))
                .with(Quantity.WHEEL_RADIUS, row.number("radius_m"))
                .with(Quantity.REV_LIMIT, row.has("rev_limit_rpm") ? row.number("rev_limit_rpm") : 8000)
                .engine(new TorqueCurve(new double[] {0, 8000}, new double[] {torque, torque}));
        row.verify(
                switch (row.quantity()) {
                    case "tractive effort" ->
                        Runs.drive(car, Roads.straight(0, 100, 0)).value(Channel.DRIVE_FORCE, 1);
                    case "engine speed" ->
                        Runs.drive(car, Roads.straightAt(row.number("speed_mps"), 100))
                                .value(Channel.ENGINE_SPEED, 2);
                    case "speed at the rev limit" -> 3.6 * Runs.endSpeed(Runs.drive(car, Roads.straight(0, 2000, 0)));
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("skid-pad.csv")
    void theSkidPadTimeIsThatOfItsLateralAcceleration(CheckRow row) {
        double radius = row.number("radius_m");
        double speed = Runs.circleSpeed(PlainCar.ofMass(300).friction(row.number("lateral_g")), radius, 0);
        row.verify(row.text("unit").equals("s") ? 2 * Math.PI * radius / speed : speed);
    }
}
