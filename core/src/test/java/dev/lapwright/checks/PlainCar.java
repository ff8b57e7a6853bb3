package dev.lapwright.checks;

import dev.lapwright.air.PowerCorrection;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.powertrain.TorqueCurve;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * The real car model, stripped to what a textbook's formula knows. As made it is a point mass: centre of gravity in the
 * road, half the weight on each axle, all-wheel drive and brakes in halves, friction without load sensitivity, no drag, no
 * downforce, no rolling resistance, one gear of ratio 1 without losses. Each check puts back what its source has.
 *
 * <p>One thing cannot be switched off: drag from cornering, least at the greatest cornering stiffness allowed, 500 per
 * radian of load. At a friction of mu it takes (1.8 mu / 500)² / 2 of the grip across a car at its limit; see
 * {@link Runs#freeCircleSpeed}.
 */
public final class PlainCar {
    /** Cornering stiffness over load, the greatest the model takes. */
    public static final double STIFFEST = 500;
    /** Gravity of the model, m/s². */
    public static final double GRAVITY = 9.80665;

    private static final double WHEEL_RADIUS = 0.3;
    /** Between engine and wheels: keeps torque and engine speed within what the model takes. */
    private static final double OVERALL_RATIO = 5;

    private static final double AIR_DENSITY = Conditions.STANDARD.air().density();
    /** Points of a torque curve that stands for constant power: dense enough to add nothing to the solver's own table. */
    private static final int POWER_POINTS = 1500;

    private final Map<Quantity, Double> values;
    private final TorqueCurve torque;
    private final double[] ratios;

    private PlainCar(Map<Quantity, Double> values, TorqueCurve torque, double[] ratios) {
        this.values = values;
        this.torque = torque;
        this.ratios = ratios;
    }

    /** A point mass in kg with friction 1, that can be driven as hard as its tyres allow up to 150 m/s. */
    public static PlainCar ofMass(double mass) {
        Map<Quantity, Double> q = new EnumMap<>(Quantity.class);
        q.put(Quantity.MASS, mass);
        q.put(Quantity.WHEELBASE, 2.5);
        q.put(Quantity.FRONT_WEIGHT, 50.0);
        q.put(Quantity.CG_HEIGHT, 0.0);
        q.put(Quantity.TRACK_FRONT, 1.5);
        q.put(Quantity.TRACK_REAR, 1.5);
        q.put(Quantity.WIDTH, 1.8);
        q.put(Quantity.SPRING_FRONT, 100.0);
        q.put(Quantity.SPRING_REAR, 100.0);
        q.put(Quantity.RIDE_HEIGHT_FRONT, 100.0);
        q.put(Quantity.RIDE_HEIGHT_REAR, 100.0);
        q.put(Quantity.DRAG_AREA, 0.0);
        q.put(Quantity.FRICTION_X_FRONT, 1.0);
        q.put(Quantity.FRICTION_Y_FRONT, 1.0);
        q.put(Quantity.REFERENCE_LOAD_FRONT, 4000.0);
        q.put(Quantity.FRICTION_X_REAR, 1.0);
        q.put(Quantity.FRICTION_Y_REAR, 1.0);
        q.put(Quantity.REFERENCE_LOAD_REAR, 4000.0);
        q.put(Quantity.CORNERING_STIFFNESS_FRONT, STIFFEST);
        q.put(Quantity.CORNERING_STIFFNESS_REAR, STIFFEST);
        q.put(Quantity.VERTICAL_RATE_FRONT, 200.0);
        q.put(Quantity.VERTICAL_RATE_REAR, 200.0);
        q.put(Quantity.ROLLING_RESISTANCE, 0.0);
        q.put(Quantity.FINAL_DRIVE, OVERALL_RATIO);
        q.put(Quantity.EFFICIENCY, 1.0);
        q.put(Quantity.WHEEL_RADIUS, WHEEL_RADIUS);
        q.put(Quantity.FRONT_DRIVE_SHARE, 50.0);
        q.put(Quantity.BRAKE_FRONT_SHARE, 50.0);
        PlainCar car = new PlainCar(q, new TorqueCurve(new double[] {0, 1}, new double[] {0, 0}), new double[] {1});
        return car.topSpeed(150).force(8 * mass * GRAVITY);
    }

    /** The same car with one quantity changed, in the quantity's unit. */
    public PlainCar with(Quantity quantity, double value) {
        Map<Quantity, Double> changed = new EnumMap<>(values);
        changed.put(quantity, value);
        return new PlainCar(changed, torque, ratios);
    }

    /** Friction the same in all directions. */
    public PlainCar friction(double mu) {
        return lateralFriction(mu).longitudinalFriction(mu);
    }

    /** Friction across the car. */
    public PlainCar lateralFriction(double mu) {
        return with(Quantity.FRICTION_Y_FRONT, mu).with(Quantity.FRICTION_Y_REAR, mu);
    }

    /** Friction along the car. */
    public PlainCar longitudinalFriction(double mu) {
        return with(Quantity.FRICTION_X_FRONT, mu).with(Quantity.FRICTION_X_REAR, mu);
    }

    /** Cornering stiffness over load of all tyres, 1/rad. */
    public PlainCar stiffness(double perRadian) {
        return with(Quantity.CORNERING_STIFFNESS_FRONT, perRadian).with(Quantity.CORNERING_STIFFNESS_REAR, perRadian);
    }

    /**
     * Axles and centre of gravity.
     *
     * @param toFront distance of the centre of gravity from the front axle, m
     * @param toRear distance from the rear axle, m
     * @param height of the centre of gravity, m
     */
    public PlainCar axles(double toFront, double toRear, double height) {
        double wheelbase = toFront + toRear;
        return with(Quantity.WHEELBASE, wheelbase)
                .with(Quantity.FRONT_WEIGHT, 100 * toRear / wheelbase)
                .with(Quantity.CG_HEIGHT, height);
    }

    /** Tracks of both axles, m. */
    public PlainCar track(double track) {
        return with(Quantity.TRACK_FRONT, track).with(Quantity.TRACK_REAR, track);
    }

    /** Drag of {@code factor} · v² newtons on the standard day. */
    public PlainCar drag(double factor) {
        return with(Quantity.DRAG_AREA, 2 * factor / AIR_DENSITY);
    }

    /** Downforce of {@code factor} · v² newtons on the standard day, half on each axle. */
    public PlainCar downforce(double factor) {
        return with(Quantity.LIFT_AREA_FRONT, factor / AIR_DENSITY).with(Quantity.LIFT_AREA_REAR, factor / AIR_DENSITY);
    }

    /** Share of the drive at the front axle, 0 to 1. */
    public PlainCar frontDrive(double share) {
        return with(Quantity.FRONT_DRIVE_SHARE, 100 * share);
    }

    /** Greatest brake force, N. */
    public PlainCar brakes(double newtons) {
        return with(Quantity.BRAKE_MAX_FORCE, newtons);
    }

    /** Rev limit such that the single gear ends at this speed, m/s. */
    public PlainCar topSpeed(double speed) {
        return with(Quantity.REV_LIMIT, rpm(speed));
    }

    /** A wheel force of this many newtons at every speed. */
    public PlainCar force(double newtons) {
        double engineTorque = newtons * WHEEL_RADIUS / OVERALL_RATIO;
        return engine(new TorqueCurve(new double[] {0, 60_000}, new double[] {engineTorque, engineTorque}));
    }

    /** No drive at all. */
    public PlainCar withoutDrive() {
        return force(0);
    }

    /**
     * Constant power in watts between two speeds (m/s); below the first the force stays as there. The rev limit is set to
     * the second.
     */
    public PlainCar power(double watts, double from, double to) {
        double[] rpm = new double[POWER_POINTS];
        double[] newtonMetres = new double[POWER_POINTS];
        for (int i = 0; i < POWER_POINTS; i++) {
            double speed = from * Math.pow(to / from, i / (POWER_POINTS - 1.0));
            rpm[i] = rpm(speed);
            newtonMetres[i] = watts / speed * WHEEL_RADIUS / OVERALL_RATIO;
        }
        return topSpeed(to).engine(new TorqueCurve(rpm, newtonMetres));
    }

    /** Another torque curve. */
    public PlainCar engine(TorqueCurve curve) {
        return new PlainCar(values, curve, ratios);
    }

    /** Other gears. */
    public PlainCar gears(double... gearRatios) {
        return new PlainCar(values, torque, gearRatios.clone());
    }

    private static double rpm(double speed) {
        return speed / WHEEL_RADIUS * OVERALL_RATIO * 30 / Math.PI;
    }

    /** The car. */
    public Car car() {
        return Car.of("check", "", values, Map.of(), ratios, torque, PowerCorrection.NONE, List.of());
    }

    /** The car on the standard day. */
    public Vehicle vehicle() {
        return Vehicle.of(car(), Conditions.STANDARD);
    }

    /** The car on the standard day with a wind against a road that leads east, m/s; negative from behind. */
    public Vehicle inHeadWind(double speed) {
        return Vehicle.of(
                car(),
                Conditions.STANDARD
                        .with("conditions.windSpeedMps", Math.abs(speed))
                        .with("conditions.windFromDeg", speed >= 0 ? 90 : 270));
    }
}
