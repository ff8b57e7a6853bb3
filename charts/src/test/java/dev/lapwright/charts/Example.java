package dev.lapwright.charts;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Wing;
import dev.lapwright.air.PowerCorrection;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.charts.lap.SpeedComparison;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.powertrain.TorqueCurve;
import dev.lapwright.study.sweep.Sweep;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** An invented car and invented tracks that the tests draw. Charts are tested for what they show, not for the physics. */
public final class Example {
    public static final String CAR = "Vesper GT";
    public static final String CIRCUIT = "Harrow Fen";
    private static final double STRAIGHT = Double.POSITIVE_INFINITY;

    private Example() {}

    public static Car car() {
        Map<Quantity, Double> q = new EnumMap<>(Quantity.class);
        q.put(Quantity.MASS, 1300.0);
        q.put(Quantity.FUEL_MASS, 40.0);
        q.put(Quantity.WHEELBASE, 2.6);
        q.put(Quantity.FRONT_WEIGHT, 46.0);
        q.put(Quantity.CG_HEIGHT, 0.45);
        q.put(Quantity.TRACK_FRONT, 1.65);
        q.put(Quantity.TRACK_REAR, 1.62);
        q.put(Quantity.WIDTH, 2.0);
        q.put(Quantity.SPRING_FRONT, 180.0);
        q.put(Quantity.SPRING_REAR, 180.0);
        q.put(Quantity.BAR_FRONT, 1200.0);
        q.put(Quantity.BAR_REAR, 500.0);
        q.put(Quantity.RIDE_HEIGHT_FRONT, 60.0);
        q.put(Quantity.RIDE_HEIGHT_REAR, 80.0);
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
        q.put(Quantity.VERTICAL_RATE_FRONT, 280.0);
        q.put(Quantity.VERTICAL_RATE_REAR, 300.0);
        q.put(Quantity.REV_LIMIT, 8500.0);
        q.put(Quantity.FINAL_DRIVE, 3.9);
        q.put(Quantity.SHIFT_TIME, 0.08);
        q.put(Quantity.WHEEL_RADIUS, 0.34);
        q.put(Quantity.WHEEL_INERTIA, 5.0);
        q.put(Quantity.ENGINE_INERTIA, 0.15);
        q.put(Quantity.FRONT_DRIVE_SHARE, 0.0);
        q.put(Quantity.POWER_LOCK_REAR, 40.0);
        q.put(Quantity.BRAKE_FRONT_SHARE, 58.0);
        Wing wing = new Wing(
                "rear",
                List.of(
                        new Wing.Setting(0, new Areas(0.05, -0.05, 0.4)),
                        new Wing.Setting(6, new Areas(0.12, -0.1, 0.8)),
                        new Wing.Setting(12, new Areas(0.24, -0.14, 1.1))));
        Adjustment turn = new Adjustment(
                "rear-wing",
                "Rear wing",
                Unit.DEGREE,
                Adjustment.Range.stepped(0, 12, 1, 6),
                List.of(new Effect.Absolute("aero.wings.rear.angleDeg", 0, 1)));
        return Car.of(
                CAR,
                "",
                q,
                Map.of(wing, 6.0),
                new double[] {2.9, 2.1, 1.65, 1.35, 1.12, 0.95},
                new TorqueCurve(
                        new double[] {1500, 3000, 4500, 6000, 7000, 8000, 8500},
                        new double[] {350, 420, 470, 500, 490, 450, 420}),
                PowerCorrection.NONE,
                List.of(turn));
    }

    /** A circuit of 4.4 km with 12 corners, made of two equal halves so that it closes; two corners have names. */
    public static Track circuit() {
        List<Segment> segments = new ArrayList<>();
        for (int half = 0; half < 2; half++) {
            segments.add(Segment.straight(900));
            addCorner(segments, 80, Math.PI / 2 - 60.0 / 80, 60);
            segments.add(Segment.straight(500));
            addCorner(segments, 30, Math.PI / 2 - 20.0 / 30, 20);
            segments.add(Segment.straight(150));
            for (int side : new int[] {1, -1, -1, 1}) {
                addCorner(segments, 100 * side, 0.4, 30);
            }
        }
        return new SegmentPath(segments, true, 40)
                .closedTrack(CIRCUIT, 1)
                .withCornerNames(List.of(new Track.NamedPlace(990, "Mill"), new Track.NamedPlace(1620, "Weir & Lock")));
    }

    /** A circuit with so many corners, up to some 20 km long, that closes; with none, a straight run. */
    public static Track circuit(int corners) {
        List<Segment> segments = new ArrayList<>();
        if (corners == 0) {
            return new SegmentPath(List.of(Segment.straight(2000)), false, 40).openTrack("Strip", 0);
        }
        if (corners == 1) {
            segments.add(Segment.straight(400));
            addCorner(segments, 60, Math.PI / 2 - 20.0 / 60, 20);
            segments.add(Segment.straight(300));
            return new SegmentPath(segments, false, 40).openTrack("One Bend", 0);
        }
        // Pairs to either side, in four equal parts with a quarter turn each.
        int pairs = Math.max(0, (corners - 4) / 8);
        for (int part = 0; part < 4; part++) {
            for (int pair = 0; pair < pairs; pair++) {
                segments.add(Segment.straight(50 + 10 * (pair % 3)));
                addCorner(segments, 60, 0.5, 15);
                segments.add(Segment.straight(40));
                addCorner(segments, -60, 0.5, 15);
            }
            segments.add(Segment.straight(200));
            addCorner(segments, 80, Math.PI / 2 - 60.0 / 80, 60);
            segments.add(Segment.straight(200));
        }
        return new SegmentPath(segments, true, 40).closedTrack("Long Weald", 1);
    }

    /** A run of 30 short corners from a standing start. */
    public static Track hill() {
        List<Segment> segments = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            segments.add(Segment.straight(60 + 7 * (i % 5)));
            addCorner(segments, (i % 2 == 0 ? 1 : -1) * (25 + 5 * (i % 4)), 0.6, 12);
        }
        return new SegmentPath(segments, false, 40).openTrack("Kestrel Hill", 0);
    }

    private static void addCorner(List<Segment> segments, double radius, double arcAngle, double clothoid) {
        segments.add(Segment.clothoid(clothoid, STRAIGHT, radius));
        segments.add(Segment.arc(Math.abs(radius) * arcAngle, radius));
        segments.add(Segment.clothoid(clothoid, radius, STRAIGHT));
    }

    public static Lap lap() {
        return lap(car(), circuit());
    }

    public static Lap lap(Car car, Track track) {
        return new LapSolver(track.stations(StationSpacing.DEFAULT)).solve(Vehicle.of(car, Conditions.STANDARD));
    }

    /** A lap with the rear wing at an angle. */
    public static SpeedComparison.NamedLap withWing(double degrees) {
        return new SpeedComparison.NamedLap(
                "rear wing " + NumberText.fixed(0).format(degrees) + " deg",
                lap(car().with("rear-wing", degrees), circuit()));
    }

    public static SweepResult sweep(SweepAxis... axes) {
        Sweep sweep = Sweep.of(car(), circuit(), Conditions.STANDARD);
        for (SweepAxis axis : axes) {
            sweep = sweep.over(axis);
        }
        return sweep.run();
    }

    public static SweepResult wingSweep() {
        return sweep(SweepAxis.stepped("rear-wing", 0, 12, 2));
    }
}
