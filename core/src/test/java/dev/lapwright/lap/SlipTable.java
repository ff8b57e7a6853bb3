package dev.lapwright.lap;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.StationSpacing;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The fast model beside the equilibrium of wheel slips on rings, and as Markdown: {@code java -cp ... dev.lapwright.lap.SlipTable}. */
final class SlipTable {
    static final double[] RADII = {20, 35, 50, 100, 200};
    static final double[] SHARES = {0.6, 0.8, 0.9};

    private SlipTable() {}

    /** The test car without toe, which the equilibrium leaves out, with power to spare. */
    static Car car(boolean frontDrive, boolean spool) {
        double lock = spool ? 100 : 0;
        return TestCars.winged(Map.of(
                Quantity.FRONT_DRIVE_SHARE, frontDrive ? 100.0 : 0.0,
                Quantity.POWER_LOCK_REAR, lock,
                Quantity.POWER_LOCK_FRONT, lock,
                Quantity.TOE_FRONT, 0.0,
                Quantity.TOE_REAR, 0.0,
                Quantity.ENGINE_INERTIA, 0.0,
                Quantity.WHEEL_INERTIA, 0.0,
                Quantity.POWER_SCALE, 3.0));
    }

    private static Road ring(double radius) {
        Segment arc = Segment.arc(2 * Math.PI * radius, radius);
        return new Road(
                new SegmentPath(List.of(arc), true, 1).closedTrack("ring", 1e-6).stations(StationSpacing.DEFAULT),
                Conditions.STANDARD.wind());
    }

    /** Ring limit of the fast model, m/s. */
    static double fastLimit(Car car, double radius) {
        Road road = ring(radius);
        Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
        double[] energy = new double[road.cells + 1];
        new CornerLimit(vehicle, new WheelForces(vehicle)).fill(road, energy);
        return Math.sqrt(2 * energy[1]);
    }

    /** Greatest acceleration of the fast model on a ring, m/s2. */
    static double fastDrive(Car car, double radius, double speed) {
        Road road = ring(radius);
        Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
        double energy = 0.5 * speed * speed;
        return new AccelerationLimits(vehicle, new WheelForces(vehicle))
                .drive(
                        road.rows,
                        2 * Road.STRIDE,
                        energy,
                        vehicle.propulsion.gear[vehicle.propulsion.pieceAt(energy)],
                        -1);
    }

    /** Prints the differences. */
    public static void main(String... ignored) {
        System.out.println("| driven | differential | radius, m | ring limit, km/h, fast | by slips | difference, % |"
                + " acceleration left at 60, 80, 90 % of the limit, m/s², fast | by slips |");
        System.out.println("|---|---|---|---|---|---|---|---|");
        for (boolean frontDrive : new boolean[] {false, true}) {
            for (boolean spool : new boolean[] {false, true}) {
                for (double radius : RADII) {
                    Car car = car(frontDrive, spool);
                    SlipEquilibrium slips = new SlipEquilibrium(car, Conditions.STANDARD, spool, radius);
                    double fast = fastLimit(car, radius);
                    double limit = slips.limit();
                    StringBuilder left = new StringBuilder();
                    StringBuilder slipLeft = new StringBuilder();
                    for (double share : SHARES) {
                        left.append(String.format(Locale.ROOT, " %.1f", fastDrive(car, radius, share * limit)));
                        slipLeft.append(String.format(Locale.ROOT, " %.1f", slips.drive(share * limit)));
                    }
                    System.out.printf(
                            Locale.ROOT,
                            "| %s | %s | %.0f | %.1f | %.1f | %+.1f |%s |%s |%n",
                            frontDrive ? "front" : "rear",
                            spool ? "none" : "open",
                            radius,
                            3.6 * fast,
                            3.6 * limit,
                            100 * (fast / limit - 1),
                            left,
                            slipLeft);
                }
            }
        }
    }
}
