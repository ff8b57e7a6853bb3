package dev.lapwright.fit;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Wing;
import dev.lapwright.air.PowerCorrection;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.powertrain.TorqueCurve;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** What the fits are tried on: an invented winged car and invented circuits. */
final class FitScene {
    private static final double STRAIGHT = Double.POSITIVE_INFINITY;

    private FitScene() {}

    /** Rear drive, a wing, load-sensitive tyres, five gears, an adjustment of each kind. */
    static Car car() {
        return car(Map.of());
    }

    static Car car(Map<Quantity, Double> changes) {
        Map<Quantity, Double> q = new EnumMap<>(Quantity.class);
        q.put(Quantity.MASS, 1150.0);
        q.put(Quantity.FUEL_MASS, 30.0);
        q.put(Quantity.WHEELBASE, 2.55);
        q.put(Quantity.FRONT_WEIGHT, 45.0);
        q.put(Quantity.CG_HEIGHT, 0.42);
        q.put(Quantity.TRACK_FRONT, 1.6);
        q.put(Quantity.TRACK_REAR, 1.6);
        q.put(Quantity.WIDTH, 1.9);
        q.put(Quantity.SPRING_FRONT, 150.0);
        q.put(Quantity.SPRING_REAR, 150.0);
        q.put(Quantity.BAR_FRONT, 900.0);
        q.put(Quantity.BAR_REAR, 400.0);
        q.put(Quantity.RIDE_HEIGHT_FRONT, 60.0);
        q.put(Quantity.RIDE_HEIGHT_REAR, 70.0);
        q.put(Quantity.DRAG_AREA, 0.8);
        q.put(Quantity.LIFT_AREA_FRONT, 0.9);
        q.put(Quantity.LIFT_AREA_REAR, 0.6);
        q.put(Quantity.FRICTION_X_FRONT, 1.5);
        q.put(Quantity.FRICTION_Y_FRONT, 1.5);
        q.put(Quantity.SENSITIVITY_X_FRONT, 0.08);
        q.put(Quantity.SENSITIVITY_Y_FRONT, 0.1);
        q.put(Quantity.REFERENCE_LOAD_FRONT, 3500.0);
        q.put(Quantity.FRICTION_X_REAR, 1.55);
        q.put(Quantity.FRICTION_Y_REAR, 1.55);
        q.put(Quantity.SENSITIVITY_X_REAR, 0.08);
        q.put(Quantity.SENSITIVITY_Y_REAR, 0.1);
        q.put(Quantity.REFERENCE_LOAD_REAR, 3500.0);
        q.put(Quantity.VERTICAL_RATE_FRONT, 280.0);
        q.put(Quantity.VERTICAL_RATE_REAR, 280.0);
        q.put(Quantity.REV_LIMIT, 8000.0);
        q.put(Quantity.FINAL_DRIVE, 3.6);
        q.put(Quantity.SHIFT_TIME, 0.06);
        q.put(Quantity.WHEEL_RADIUS, 0.33);
        q.put(Quantity.WHEEL_INERTIA, 4.0);
        q.put(Quantity.ENGINE_INERTIA, 0.12);
        q.put(Quantity.FRONT_DRIVE_SHARE, 0.0);
        q.put(Quantity.POWER_LOCK_REAR, 40.0);
        q.put(Quantity.BRAKE_FRONT_SHARE, 58.0);
        q.putAll(changes);
        Wing wing = new Wing(
                "rear",
                List.of(
                        new Wing.Setting(0, new Areas(0.05, -0.05, 0.4)),
                        new Wing.Setting(10, new Areas(0.2, -0.1, 1.0))));
        return Car.of(
                "plover",
                "a car for tests",
                q,
                Map.of(wing, 5.0),
                new double[] {2.6, 1.9, 1.45, 1.18, 0.98},
                new TorqueCurve(
                        new double[] {1500, 3000, 4500, 6000, 7000, 8000}, new double[] {300, 370, 420, 440, 420, 370}),
                PowerCorrection.SAE_J1349,
                adjustments(q));
    }

    /** One that sets a fitted quantity outright, one by a table, one that shifts it, and a wing that moves none. */
    private static List<Adjustment> adjustments(Map<Quantity, Double> q) {
        double power = q.getOrDefault(Quantity.POWER_SCALE, 1.0);
        double rear = q.get(Quantity.LIFT_AREA_REAR);
        return List.of(
                one("wing", 0, 10, 5, new Effect.Absolute("aero.wings.rear.angleDeg", 0, 1)),
                one("restrictor", 0, 4, 0, new Effect.Absolute(Quantity.POWER_SCALE.path(), power, -0.05)),
                one(
                        "gurney",
                        0,
                        2,
                        1,
                        new Effect.Tabulated(Quantity.LIFT_AREA_REAR.path(), new double[] {0, 1, 2}, new double[] {
                            rear - 0.1, rear, rear + 0.08
                        })),
                one("cooling", -1, 1, 0, new Effect.Relative(Quantity.DRAG_AREA.path(), 0.03)));
    }

    private static Adjustment one(String name, double min, double max, double standard, Effect effect) {
        return new Adjustment(name, name, Unit.NONE, Adjustment.Range.stepped(min, max, 1, standard), List.of(effect));
    }

    /** Some 1.2 km, four corners of 20 to 70 m: quick to solve. */
    static Track shortCircuit() {
        List<Segment> path = new ArrayList<>();
        for (int half = 0; half < 2; half++) {
            path.add(Segment.straight(320));
            bend(path, 20, 25, Math.PI / 2);
            path.add(Segment.straight(60));
            bend(path, 25, 70, Math.PI / 2);
        }
        return new SegmentPath(path, true, 20).closedTrack("short circuit", 1e-3);
    }

    /** Five kilometres: twelve corners from 24 to 220 m. */
    static Track longCircuit() {
        List<Segment> path = new ArrayList<>();
        for (int half = 0; half < 2; half++) {
            path.add(Segment.straight(1010));
            bend(path, 30, 24, 2.4);
            path.add(Segment.straight(330));
            bend(path, 50, -220, -0.8);
            path.add(Segment.straight(120));
            bend(path, 50, 70, 1.3);
            path.add(Segment.straight(210));
            bend(path, 35, -95, -0.9);
            bend(path, 35, 85, 0.6);
            path.add(Segment.straight(140));
            bend(path, 40, 150, Math.PI - 2.6);
        }
        return new SegmentPath(path, true, 60).closedTrack("long circuit", 1e-3);
    }

    /** A skid-pad. */
    static Track circle(double radius) {
        return new SegmentPath(List.of(Segment.arc(2 * Math.PI * radius, radius)), true, 1).closedTrack("circle", 1e-6);
    }

    private static void bend(List<Segment> path, double clothoid, double radius, double turn) {
        path.add(Segment.clothoid(clothoid, STRAIGHT, radius));
        path.add(Segment.arc(radius * turn - clothoid, radius));
        path.add(Segment.clothoid(clothoid, radius, STRAIGHT));
    }
}
