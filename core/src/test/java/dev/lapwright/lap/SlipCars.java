package dev.lapwright.lap;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Wing;
import dev.lapwright.air.PowerCorrection;
import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.powertrain.TorqueCurve;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * Cars to lay beside {@link SlipEquilibrium}: an engine that always suffices and turns without inertia, brakes that lock no wheel,
 * no engine drag.
 */
public final class SlipCars {
    private static final List<Quantity> AXLE_FRONT = List.of(
            Quantity.ROLL_CENTRE_FRONT,
            Quantity.SPRING_FRONT,
            Quantity.MOTION_RATIO_FRONT,
            Quantity.BAR_FRONT,
            Quantity.RIDE_HEIGHT_FRONT,
            Quantity.TOE_FRONT,
            Quantity.CAMBER_FRONT,
            Quantity.CAMBER_GAIN_FRONT,
            Quantity.VERTICAL_RATE_FRONT);
    private static final List<Quantity> AXLE_REAR = List.of(
            Quantity.ROLL_CENTRE_REAR,
            Quantity.SPRING_REAR,
            Quantity.MOTION_RATIO_REAR,
            Quantity.BAR_REAR,
            Quantity.RIDE_HEIGHT_REAR,
            Quantity.TOE_REAR,
            Quantity.CAMBER_REAR,
            Quantity.CAMBER_GAIN_REAR,
            Quantity.VERTICAL_RATE_REAR);
    private static final List<Quantity> TYRES_FRONT = List.of(
            Quantity.FRICTION_X_FRONT,
            Quantity.FRICTION_Y_FRONT,
            Quantity.SENSITIVITY_X_FRONT,
            Quantity.SENSITIVITY_Y_FRONT,
            Quantity.REFERENCE_LOAD_FRONT,
            Quantity.CORNERING_STIFFNESS_FRONT,
            Quantity.STIFFNESS_SENSITIVITY_FRONT,
            Quantity.BEST_INCLINATION_FRONT,
            Quantity.INCLINATION_LOSS_Y_FRONT,
            Quantity.INCLINATION_LOSS_X_FRONT);
    private static final List<Quantity> TYRES_REAR = List.of(
            Quantity.FRICTION_X_REAR,
            Quantity.FRICTION_Y_REAR,
            Quantity.SENSITIVITY_X_REAR,
            Quantity.SENSITIVITY_Y_REAR,
            Quantity.REFERENCE_LOAD_REAR,
            Quantity.CORNERING_STIFFNESS_REAR,
            Quantity.STIFFNESS_SENSITIVITY_REAR,
            Quantity.BEST_INCLINATION_REAR,
            Quantity.INCLINATION_LOSS_Y_REAR,
            Quantity.INCLINATION_LOSS_X_REAR);

    private static final double G = 9.80665;

    private SlipCars() {}

    /** The quantities of the test car, changed. */
    public static Car test(Map<Quantity, Double> changes) {
        Map<Quantity, Double> q = new EnumMap<>(Quantity.class);
        Car winged = TestCars.winged();
        for (Quantity quantity : Quantity.values()) {
            q.put(quantity, winged.value(quantity));
        }
        q.put(Quantity.POWER_LOCK_FRONT, 0.0);
        q.put(Quantity.POWER_LOCK_REAR, 0.0);
        q.putAll(changes);
        return car("test", q, Map.of(wing(-0.10, 0.8, 0.12), 0.0));
    }

    private static Car car(String name, Map<Quantity, Double> q, Map<Wing, Double> wings) {
        q.put(Quantity.ENGINE_INERTIA, 0.0);
        q.put(Quantity.WHEEL_INERTIA, 0.0);
        q.put(Quantity.OVERRUN_DRAG, 0.0);
        q.put(Quantity.TYRE_SLIP, 0.0);
        q.put(Quantity.LIGHT_WHEEL, 0.0);
        q.put(Quantity.BRAKE_MAX_FORCE, 1e6);
        q.put(Quantity.SHIFT_TIME, 0.0);
        q.put(Quantity.REV_LIMIT, 20_000.0);
        // 160 m/s at the rev limit, six times the weight at the wheels.
        double ratio = 20_000 * Math.PI / 30 * q.get(Quantity.WHEEL_RADIUS) / 160;
        q.put(Quantity.FINAL_DRIVE, ratio);
        double torque = 6 * q.get(Quantity.MASS) * G * q.get(Quantity.WHEEL_RADIUS) / ratio;
        TorqueCurve engine = new TorqueCurve(new double[] {0, 20_000}, new double[] {torque, torque});
        return Car.of(name, "", q, wings, new double[] {1}, engine, PowerCorrection.NONE, List.of());
    }

    private static Wing wing(double front, double rear, double drag) {
        return new Wing("rear", List.of(new Wing.Setting(0, new Areas(drag, front, rear))));
    }

    /**
     * The numbers of the three demo cars as of their documents, which stand in another module; wings at the demo's angles, pressures
     * and temperatures at their best.
     */
    public static List<Car> demo() {
        return List.of(gt(), touring(), student());
    }

    private static Map<Quantity, Double> chassis(
            double mass, double fuel, double base, double front, double height, double trackFront, double trackRear) {
        Map<Quantity, Double> q = new EnumMap<>(Quantity.class);
        q.put(Quantity.MASS, mass);
        q.put(Quantity.FUEL_MASS, fuel);
        q.put(Quantity.WHEELBASE, base);
        q.put(Quantity.FRONT_WEIGHT, front);
        q.put(Quantity.CG_HEIGHT, height);
        q.put(Quantity.TRACK_FRONT, trackFront);
        q.put(Quantity.TRACK_REAR, trackRear);
        q.put(Quantity.WIDTH, trackFront + 0.3);
        return q;
    }

    /** Values of an axle in the order of {@link #AXLE_FRONT}. */
    private static void axle(Map<Quantity, Double> q, boolean front, double... values) {
        put(q, front ? AXLE_FRONT : AXLE_REAR, values);
    }

    /** Values of an axle's tyres in the order of {@link #TYRES_FRONT}. */
    private static void tyres(Map<Quantity, Double> q, boolean front, double... values) {
        put(q, front ? TYRES_FRONT : TYRES_REAR, values);
    }

    private static void put(Map<Quantity, Double> q, List<Quantity> quantities, double... values) {
        for (int i = 0; i < values.length; i++) {
            q.put(quantities.get(i), values[i]);
        }
    }

    private static void drive(Map<Quantity, Double> q, double radius, double frontShare, double power, double brakes) {
        q.put(Quantity.WHEEL_RADIUS, radius);
        q.put(Quantity.FRONT_DRIVE_SHARE, frontShare);
        q.put(frontShare == 100 ? Quantity.POWER_LOCK_FRONT : Quantity.POWER_LOCK_REAR, power);
        q.put(Quantity.BRAKE_FRONT_SHARE, brakes);
    }

    private static void aero(Map<Quantity, Double> q, double drag, double front, double rear) {
        q.put(Quantity.DRAG_AREA, drag);
        q.put(Quantity.LIFT_AREA_FRONT, front);
        q.put(Quantity.LIFT_AREA_REAR, rear);
    }

    private static Car gt() {
        Map<Quantity, Double> q = chassis(1285, 29.8, 2.7, 47.5, 0.43, 1.68, 1.66);
        axle(q, true, 0.03, 200, 0.87, 2600, 68, -0.1, -2.5, 0.55, 320);
        axle(q, false, 0.06, 180, 0.9, 400, 90, 0.15, -1.75, 0.6, 330);
        // Dive planes at 10 degrees are in the car's areas here.
        aero(q, 0.81 + 0.037, 1.23 + 0.18, 0.49 - 0.06);
        q.put(Quantity.REFERENCE_HEIGHT_FRONT, 56.0);
        q.put(Quantity.REFERENCE_HEIGHT_REAR, 76.0);
        q.put(Quantity.DRAG_PER_FRONT_HEIGHT, -0.0005);
        q.put(Quantity.DRAG_PER_REAR_HEIGHT, 0.0015);
        q.put(Quantity.LIFT_FRONT_PER_FRONT_HEIGHT, -0.011);
        q.put(Quantity.LIFT_FRONT_PER_REAR_HEIGHT, 0.005);
        q.put(Quantity.LIFT_FRONT_PER_FRONT_HEIGHT_SQUARED, -0.00022);
        q.put(Quantity.LIFT_FRONT_PER_REAR_HEIGHT_SQUARED, -8e-5);
        q.put(Quantity.LIFT_REAR_PER_FRONT_HEIGHT, -0.003);
        q.put(Quantity.LIFT_REAR_PER_REAR_HEIGHT, 0.004);
        q.put(Quantity.LIFT_REAR_PER_REAR_HEIGHT_SQUARED, -0.00012);
        tyres(q, true, 1.5, 1.62, 0.08, 0.1, 3500, 24, 0.12, 1.5, 0.002, 0.001);
        tyres(q, false, 1.55, 1.7, 0.08, 0.1, 4000, 26, 0.12, 1.5, 0.002, 0.001);
        q.put(Quantity.ROLLING_RESISTANCE_PER_SPEED, 5e-5);
        drive(q, 0.345, 0, 50, 70);
        return car("GT", q, Map.of(wing(-0.135, 1.17, 0.16), 0.0));
    }

    private static Car touring() {
        Map<Quantity, Double> q = chassis(1190, 22.35, 2.64, 63.5, 0.44, 1.62, 1.6);
        axle(q, true, 0.04, 120, 0.95, 300, 85, -0.1, -2.75, 0.4, 270);
        axle(q, false, 0.09, 180, 0.8, 1150, 100, 0.05, -1.75, 0.4, 265);
        aero(q, 0.705, 0.17, 0.04);
        q.put(Quantity.REFERENCE_HEIGHT_FRONT, 83.0);
        q.put(Quantity.REFERENCE_HEIGHT_REAR, 97.0);
        q.put(Quantity.DRAG_PER_FRONT_HEIGHT, 0.0006);
        q.put(Quantity.DRAG_PER_REAR_HEIGHT, 0.0004);
        q.put(Quantity.LIFT_FRONT_PER_FRONT_HEIGHT, -0.002);
        q.put(Quantity.LIFT_FRONT_PER_REAR_HEIGHT, 0.0012);
        q.put(Quantity.LIFT_REAR_PER_FRONT_HEIGHT, 0.0004);
        q.put(Quantity.LIFT_REAR_PER_REAR_HEIGHT, -0.0012);
        tyres(q, true, 1.36, 1.41, 0.07, 0.09, 3500, 22, 0.12, 1.5, 0.002, 0.0008);
        tyres(q, false, 1.36, 1.43, 0.07, 0.09, 3500, 22, 0.12, 1.5, 0.002, 0.0008);
        q.put(Quantity.ROLLING_RESISTANCE_PER_SPEED, 5e-5);
        drive(q, 0.316, 100, 40, 86);
        return car("touring car", q, Map.of(wing(-0.03, 0.215, 0.043), 0.0));
    }

    private static Car student() {
        // 1 lbf/in is 0.1751268 N/mm.
        Map<Quantity, Double> q = chassis(275, 2.98, 1.55, 50, 0.275, 1.22, 1.18);
        axle(q, true, 0.03, 350 * 0.1751268, 0.95, 560, 44, -0.3, -1.5, 0.6, 105);
        axle(q, false, 0.05, 275 * 0.1751268, 0.98, 60, 52, 0.2, -1.0, 0.6, 105);
        // The front wing at 20 degrees is in the car's areas here.
        aero(q, 0.6 + 0.217, 0.48 + 1.25, 0.56 - 0.172);
        q.put(Quantity.REFERENCE_HEIGHT_FRONT, 38.0);
        q.put(Quantity.REFERENCE_HEIGHT_REAR, 45.0);
        q.put(Quantity.DRAG_PER_FRONT_HEIGHT, -0.001);
        q.put(Quantity.DRAG_PER_REAR_HEIGHT, 0.0015);
        q.put(Quantity.LIFT_FRONT_PER_FRONT_HEIGHT, -0.012);
        q.put(Quantity.LIFT_FRONT_PER_REAR_HEIGHT, 0.003);
        q.put(Quantity.LIFT_FRONT_PER_FRONT_HEIGHT_SQUARED, -0.0004);
        q.put(Quantity.LIFT_REAR_PER_FRONT_HEIGHT, -0.004);
        q.put(Quantity.LIFT_REAR_PER_REAR_HEIGHT, 0.003);
        q.put(Quantity.LIFT_REAR_PER_REAR_HEIGHT_SQUARED, -0.0003);
        tyres(q, true, 1.52, 1.77, 0.1, 0.12, 700, 32, 0.18, 1.0, 0.0015, 0.0008);
        tyres(q, false, 1.58, 1.86, 0.1, 0.12, 760, 32, 0.18, 1.0, 0.0015, 0.0008);
        q.put(Quantity.ROLLING_RESISTANCE, 0.02);
        q.put(Quantity.ROLLING_RESISTANCE_PER_SPEED, 1e-4);
        drive(q, 0.2, 0, 50, 74);
        return car("student car", q, Map.of(wing(-0.225, 1.37, 0.38), 0.0));
    }

    /** A plausible car for the road course, none of them like another: any driven wheels, any differential, camber and toe. */
    public static Car random(long seed) {
        Random random = new Random(seed);
        double mass = between(random, 500, 1600);
        double weight = between(random, 42, 62);
        Map<Quantity, Double> q = chassis(
                mass,
                between(random, 2, 80),
                between(random, 2.2, 2.9),
                weight,
                between(random, 0.28, 0.46),
                between(random, 1.5, 1.75),
                between(random, 1.5, 1.75));
        boolean[] axles = {true, false};
        for (boolean front : axles) {
            axle(
                    q,
                    front,
                    between(random, 0, 0.1),
                    mass * between(random, 0.1, 0.25),
                    1,
                    mass * between(random, 0.1, 1),
                    80,
                    between(random, -0.2, 0.3),
                    between(random, -3, 0),
                    between(random, 0.3, 0.7),
                    270);
            double load = mass * G / 4;
            tyres(
                    q,
                    front,
                    between(random, 1.1, 1.7),
                    between(random, 1.2, 1.7),
                    between(random, 0, 0.12),
                    between(random, 0, 0.15),
                    load,
                    between(random, 16, 34),
                    between(random, 0, 0.2),
                    between(random, 0, 2),
                    between(random, 0, 0.003),
                    between(random, 0, 0.002));
        }
        double downforce = between(random, 0, 3) * mass / 1300;
        aero(q, between(random, 0.5, 1.1), downforce * weight / 100, downforce * (1 - weight / 100));
        double share = random.nextInt(3) == 0 ? between(random, 30, 60) : random.nextInt(2) * 100.0;
        q.put(Quantity.WHEEL_RADIUS, 0.33);
        q.put(Quantity.FRONT_DRIVE_SHARE, share);
        q.put(Quantity.BRAKE_FRONT_SHARE, weight + between(random, 8, 18));
        q.put(Quantity.SLIP_STIFFNESS, between(random, 80, 140));
        if (share > 0) {
            differential(q, random, true);
        }
        if (share < 100) {
            differential(q, random, false);
        }
        if (share > 0 && share < 100) {
            q.put(Quantity.CENTRE_LOCK, random.nextInt(3) == 0 ? 0 : between(random, 10, 70));
        }
        return car("seed " + seed, q, Map.of());
    }

    /** The same car with an engine of even power, between 100 and 400 W for each kilogram, in its one gear. */
    public static Car randomDriven(long seed) {
        Car car = random(seed);
        double power = between(new Random(seed), 100, 400) * car.value(Quantity.MASS);
        double[] rpm = new double[80];
        double[] torque = new double[80];
        for (int i = 0; i < rpm.length; i++) {
            // As much as grips at any load up to where the power is used up.
            rpm[i] = i == 0 ? 0 : 20_000 * Math.pow(30, (i - 79) / 78.0);
            double pull = power / Math.max(rpm[i] * Math.PI / 30, 1);
            double most = 3 * car.value(Quantity.MASS) * G * car.value(Quantity.WHEEL_RADIUS);
            torque[i] = Math.min(pull, most / car.value(Quantity.FINAL_DRIVE));
        }
        Map<Quantity, Double> q = new EnumMap<>(Quantity.class);
        for (Quantity quantity : Quantity.values()) {
            q.put(quantity, car.value(quantity));
        }
        TorqueCurve engine = new TorqueCurve(rpm, torque);
        return Car.of(car.name(), "", q, Map.of(), new double[] {1}, engine, PowerCorrection.NONE, List.of());
    }

    /** Open, plates with a preload, torque-biasing, or none at all. */
    private static void differential(Map<Quantity, Double> q, Random random, boolean front) {
        int kind = random.nextInt(7);
        double power = kind == 0 ? 0 : kind == 6 ? 100 : between(random, 10, 60);
        q.put(front ? Quantity.POWER_LOCK_FRONT : Quantity.POWER_LOCK_REAR, power);
        q.put(front ? Quantity.COAST_LOCK_FRONT : Quantity.COAST_LOCK_REAR, kind == 6 ? 100 : 0.6 * power);
        boolean plates = kind > 0 && kind < 4;
        q.put(front ? Quantity.PRELOAD_FRONT : Quantity.PRELOAD_REAR, plates ? between(random, 0, 80) : 0);
    }

    private static double between(Random random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** Whether wheels of a driven axle turn as one, without any differential. */
    static boolean turnsAsOne(Car car) {
        return car.value(Quantity.POWER_LOCK_FRONT) == 100 || car.value(Quantity.POWER_LOCK_REAR) == 100;
    }

    /** The same car with open differentials. */
    static Car opened(Car car) {
        Car open = car;
        for (Quantity quantity : List.of(
                Quantity.POWER_LOCK_FRONT,
                Quantity.POWER_LOCK_REAR,
                Quantity.COAST_LOCK_FRONT,
                Quantity.COAST_LOCK_REAR,
                Quantity.PRELOAD_FRONT,
                Quantity.PRELOAD_REAR,
                Quantity.CENTRE_LOCK)) {
            open = open.with(quantity, 0);
        }
        return open;
    }

    /** Which wheels are driven. */
    static String driven(Car car) {
        double share = car.value(Quantity.FRONT_DRIVE_SHARE);
        return share == 0 ? "rear" : share == 100 ? "front" : "four";
    }
}
