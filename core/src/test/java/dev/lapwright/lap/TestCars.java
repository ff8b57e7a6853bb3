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

/** Cars for tests of the solver: plausible, none of them a demo car. */
final class TestCars {
    private TestCars() {}

    /** A rear-drive car with a wing, a ride-height map, load-sensitive tyres, six gears and a limited-slip differential. */
    static Car winged() {
        return winged(Map.of());
    }

    static Car winged(Map<Quantity, Double> changes) {
        Map<Quantity, Double> q = new EnumMap<>(Quantity.class);
        q.put(Quantity.MASS, 1300.0);
        q.put(Quantity.FUEL_MASS, 40.0);
        q.put(Quantity.WHEELBASE, 2.6);
        q.put(Quantity.FRONT_WEIGHT, 46.0);
        q.put(Quantity.CG_HEIGHT, 0.45);
        q.put(Quantity.TRACK_FRONT, 1.65);
        q.put(Quantity.TRACK_REAR, 1.62);
        q.put(Quantity.WIDTH, 2.0);
        q.put(Quantity.ROLL_CENTRE_FRONT, 0.03);
        q.put(Quantity.ROLL_CENTRE_REAR, 0.06);
        q.put(Quantity.SPRING_FRONT, 180.0);
        q.put(Quantity.SPRING_REAR, 180.0);
        q.put(Quantity.BAR_FRONT, 1200.0);
        q.put(Quantity.BAR_REAR, 500.0);
        q.put(Quantity.RIDE_HEIGHT_FRONT, 60.0);
        q.put(Quantity.RIDE_HEIGHT_REAR, 80.0);
        q.put(Quantity.TOE_FRONT, 0.1);
        q.put(Quantity.TOE_REAR, 0.2);
        q.put(Quantity.REFERENCE_HEIGHT_FRONT, 60.0);
        q.put(Quantity.REFERENCE_HEIGHT_REAR, 80.0);
        q.put(Quantity.LIFT_FRONT_PER_FRONT_HEIGHT, -0.008);
        q.put(Quantity.LIFT_REAR_PER_FRONT_HEIGHT, -0.002);
        q.put(Quantity.LIFT_FRONT_PER_REAR_HEIGHT, 0.004);
        q.put(Quantity.DRAG_PER_REAR_HEIGHT, 0.001);
        q.put(Quantity.DRAG_AREA, 1.0);
        q.put(Quantity.LIFT_AREA_FRONT, 1.1);
        q.put(Quantity.LIFT_AREA_REAR, 0.8);
        q.put(Quantity.FRICTION_X_FRONT, 1.6);
        q.put(Quantity.FRICTION_Y_FRONT, 1.6);
        q.put(Quantity.SENSITIVITY_X_FRONT, 0.08);
        q.put(Quantity.SENSITIVITY_Y_FRONT, 0.1);
        q.put(Quantity.REFERENCE_LOAD_FRONT, 3500.0);
        q.put(Quantity.FRICTION_X_REAR, 1.65);
        q.put(Quantity.FRICTION_Y_REAR, 1.65);
        q.put(Quantity.SENSITIVITY_X_REAR, 0.08);
        q.put(Quantity.SENSITIVITY_Y_REAR, 0.1);
        q.put(Quantity.REFERENCE_LOAD_REAR, 3500.0);
        q.put(Quantity.STIFFNESS_SENSITIVITY_FRONT, 0.1);
        q.put(Quantity.STIFFNESS_SENSITIVITY_REAR, 0.1);
        q.put(Quantity.VERTICAL_RATE_FRONT, 280.0);
        q.put(Quantity.VERTICAL_RATE_REAR, 300.0);
        q.put(Quantity.ROLLING_RESISTANCE_PER_SPEED, 1e-4);
        q.put(Quantity.REV_LIMIT, 8500.0);
        q.put(Quantity.FINAL_DRIVE, 3.9);
        q.put(Quantity.SHIFT_TIME, 0.08);
        q.put(Quantity.WHEEL_RADIUS, 0.34);
        q.put(Quantity.WHEEL_INERTIA, 5.0);
        q.put(Quantity.ENGINE_INERTIA, 0.15);
        q.put(Quantity.FRONT_DRIVE_SHARE, 0.0);
        q.put(Quantity.POWER_LOCK_REAR, 40.0);
        q.put(Quantity.POWER_LOCK_FRONT, 30.0);
        q.put(Quantity.BRAKE_FRONT_SHARE, 58.0);
        q.putAll(changes);
        Wing wing = new Wing(
                "rear",
                List.of(
                        new Wing.Setting(0, new Areas(0.05, -0.05, 0.4)),
                        new Wing.Setting(6, new Areas(0.12, -0.10, 0.8)),
                        new Wing.Setting(12, new Areas(0.24, -0.14, 1.1))));
        return Car.of(
                "winged",
                "a test car",
                q,
                Map.of(wing, 6.0),
                new double[] {2.9, 2.1, 1.65, 1.35, 1.12, 0.95},
                new TorqueCurve(
                        new double[] {1500, 3000, 4500, 6000, 7000, 8000, 8500},
                        new double[] {350, 420, 470, 500, 490, 450, 420}),
                PowerCorrection.SAE_J1349,
                List.of());
    }
}
