package dev.lapwright.study;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Wing;
import dev.lapwright.air.PowerCorrection;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Plain cars with adjustments, and roads, for studies with known answers. */
public final class StudyCars {
    /** Final drive at which {@link PlainCar} states force and top speed. */
    public static final double RATIO = 5;

    private static final double STRAIGHT = Double.POSITIVE_INFINITY;

    private StudyCars() {}

    public static Adjustment finalDrive(double min, double max, double step) {
        return adjustment("final-drive", min, max, step, min, new Effect.Absolute("gearbox.finalDrive", 0, 1));
    }

    public static Adjustment adjustment(
            String name, double min, double max, double step, double standard, Effect effect) {
        return new Adjustment(
                name, name, Unit.NONE, Adjustment.Range.stepped(min, max, step, standard), List.of(effect));
    }

    /** A rear-driven car with load transfer, whose axles lose grip by load alike: one to be balanced. */
    public static PlainCar rearDriven() {
        return PlainCar.ofMass(1000)
                .axles(1.3, 1.2, 0.45)
                .friction(1.4)
                .with(Quantity.SENSITIVITY_Y_FRONT, 0.1)
                .with(Quantity.SENSITIVITY_Y_REAR, 0.1)
                .stiffness(25)
                .frontDrive(0)
                .with(Quantity.BRAKE_FRONT_SHARE, 62)
                .topSpeed(80);
    }

    public static Car with(PlainCar plain, Adjustment... adjustments) {
        return with(plain, Map.of(), adjustments);
    }

    /** A plain car with a wing that gives so much drag area and downforce area on each axle per degree, m². */
    public static Car winged(PlainCar plain, double drag, double lift, Adjustment... more) {
        Wing wing = new Wing(
                "rear",
                List.of(
                        new Wing.Setting(0, Areas.NONE),
                        new Wing.Setting(10, new Areas(10 * drag, 10 * lift, 10 * lift))));
        Adjustment angle = adjustment("wing", 0, 10, 1, 5, new Effect.Absolute("aero.wings.rear.angleDeg", 0, 1));
        Adjustment[] all = new Adjustment[more.length + 1];
        all[0] = angle;
        System.arraycopy(more, 0, all, 1, more.length);
        return with(plain, Map.of(wing, 5.0), all);
    }

    private static Car with(PlainCar plain, Map<Wing, Double> wings, Adjustment... adjustments) {
        Car car = plain.car();
        return Car.of(
                "plain",
                "",
                car.quantities(),
                wings,
                car.gearRatios(),
                car.torqueCurve(),
                PowerCorrection.NONE,
                List.of(adjustments));
    }

    /** A straight from a standing start. */
    public static Track straight(double length) {
        return Track.open("straight " + length, 0, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(length, 0)));
    }

    /** Two straights and two half circles. */
    public static Track oval(double straight, double radius) {
        Segment half = Segment.arc(Math.PI * radius, radius);
        return new SegmentPath(List.of(Segment.straight(straight), half, Segment.straight(straight), half), true, 1)
                .closedTrack("oval", 1e-6);
    }

    /** Two equal halves, each a straight and two left bends with transitions; closed by symmetry. */
    public static Track circuit() {
        List<Segment> path = new ArrayList<>();
        for (int half = 0; half < 2; half++) {
            path.add(Segment.straight(400));
            bend(path, 30, 50);
            path.add(Segment.straight(150));
            bend(path, 40, 90);
        }
        return new SegmentPath(path, true, 20).closedTrack("halves", 1e-3);
    }

    private static void bend(List<Segment> path, double clothoid, double radius) {
        path.add(Segment.clothoid(clothoid, STRAIGHT, radius));
        path.add(Segment.arc(radius * (Math.PI / 2 - clothoid / radius), radius));
        path.add(Segment.clothoid(clothoid, radius, STRAIGHT));
    }
}
