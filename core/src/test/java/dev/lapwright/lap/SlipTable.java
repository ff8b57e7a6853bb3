package dev.lapwright.lap;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.StationSpacing;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * The fast model beside the equilibrium of wheel slips on rings, and as Markdown: {@code java -cp ... dev.lapwright.lap.SlipTable [CARS]}
 * with how many random cars.
 */
final class SlipTable {
    static final double[] RADII = {20, 35, 50, 100, 200};
    static final double[] SHARES = {0.6, 0.8, 0.9};
    private static final double G = 9.80665;

    /**
     * Fast model and equilibrium on one ring. Accelerations and moments are at {@link #SHARES} of the equilibrium's limit, moments at
     * steady speed and under half of the drive that is left, over weight and wheelbase.
     */
    record Ring(
            double fastLimit,
            double limit,
            double[] fastDrive,
            double[] drive,
            double[] fastBrake,
            double[] brake,
            double[] fastMoment,
            double[] moment) {
        double limitPercent() {
            return 100 * (fastLimit / limit - 1);
        }
    }

    private SlipTable() {}

    /** The test car with other driven wheels and differentials; a lock of 100 is none. */
    static Car car(double frontShare, double lock, double preload, double centre) {
        boolean front = frontShare > 0;
        boolean rear = frontShare < 100;
        return SlipCars.test(Map.of(
                Quantity.FRONT_DRIVE_SHARE, frontShare,
                Quantity.POWER_LOCK_FRONT, front ? lock : 0,
                Quantity.POWER_LOCK_REAR, rear ? lock : 0,
                Quantity.COAST_LOCK_FRONT, front ? lock : 0,
                Quantity.COAST_LOCK_REAR, rear ? lock : 0,
                Quantity.PRELOAD_FRONT, front ? preload : 0,
                Quantity.PRELOAD_REAR, rear ? preload : 0,
                Quantity.CENTRE_LOCK, centre));
    }

    /** All of one ring. */
    static Ring compare(Car car, double radius) {
        SlipEquilibrium slips = new SlipEquilibrium(car, Conditions.STANDARD, radius);
        double limit = slips.limit();
        int n = SHARES.length;
        Ring ring = new Ring(
                fastLimit(car, radius),
                limit,
                new double[n],
                new double[n],
                new double[n],
                new double[n],
                new double[2 * n],
                new double[2 * n]);
        double over =
                1 / (G * (car.value(Quantity.MASS) + car.value(Quantity.FUEL_MASS)) * car.value(Quantity.WHEELBASE));
        for (int i = 0; i < n; i++) {
            double v = SHARES[i] * limit;
            ring.drive[i] = slips.drive(v);
            ring.brake[i] = slips.brake(v);
            ring.fastDrive[i] = fastDrive(car, radius, v);
            ring.fastBrake[i] = fastBrake(car, radius, v);
            for (int half = 0; half < 2; half++) {
                double a = 0.5 * half * ring.drive[i];
                ring.moment[2 * i + half] = over * slips.yawMoment(v, a);
                ring.fastMoment[2 * i + half] = over * fastMoment(car, radius, v, a);
            }
        }
        return ring;
    }

    private static Road ring(double radius) {
        Segment arc = Segment.arc(2 * Math.PI * radius, radius);
        return new Road(
                new SegmentPath(List.of(arc), true, 1).closedTrack("ring", 1e-6).stations(StationSpacing.DEFAULT),
                Conditions.STANDARD.wind());
    }

    /** Ring limit of the fast model, m/s; NaN where it finds none. */
    static double fastLimit(Car car, double radius) {
        Road road = ring(radius);
        Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
        double[] energy = new double[road.cells + 1];
        try {
            CornerLimit limits = new CornerLimit(vehicle, new WheelForces(vehicle));
            limits.begin(road, energy, new double[energy.length]);
            limits.all();
        } catch (NoLapException none) {
            return Double.NaN;
        }
        return Math.sqrt(2 * energy[1]);
    }

    /** Greatest acceleration of the fast model on a ring, m/s². */
    static double fastDrive(Car car, double radius, double speed) {
        Road road = ring(radius);
        Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
        AccelerationLimits limits = AccelerationLimits.toTell(vehicle, new WheelForces(vehicle));
        double a = limits.drive(road.rows, 2 * Road.STRIDE, 0.5 * speed * speed, 0, -1);
        if (limits.limit == Limit.POWER) {
            throw new IllegalStateException("the engine limits, not the tyres");
        }
        return a;
    }

    /** Hardest braking of the fast model on a ring, m/s². */
    static double fastBrake(Car car, double radius, double speed) {
        Road road = ring(radius);
        Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
        return AccelerationLimits.toTell(vehicle, new WheelForces(vehicle))
                .brake(road.rows, 2 * Road.STRIDE, 0.5 * speed * speed, 0);
    }

    private static double fastMoment(Car car, double radius, double speed, double acceleration) {
        WheelForces wheels = new WheelForces(Vehicle.of(car, Conditions.STANDARD));
        wheels.at(speed, 1 / radius, 0, G, 0, 0, 1, 0);
        wheels.utilisation(acceleration, 1);
        return wheels.yawMoment;
    }

    /** Differences fast model less slips over all cars that have the state, in order. */
    private static double[] sorted(List<double[]> differences, int part) {
        return differences.stream()
                .mapToDouble(d -> d[part])
                .filter(Double::isFinite)
                .sorted()
                .toArray();
    }

    private static String spread(double[] sorted, String format) {
        if (sorted.length == 0) {
            return "none | | | | |";
        }
        StringBuilder text = new StringBuilder();
        for (double share : new double[] {0, 0.1, 0.5, 0.9, 1}) {
            text.append(String.format(
                    Locale.ROOT, " " + format + " |", sorted[(int) Math.round(share * (sorted.length - 1))]));
        }
        return text.toString();
    }

    /** Prints the differences. */
    public static void main(String... args) {
        printKinds();
        int cars = args.length > 0 ? Integer.parseInt(args[0]) : 100;
        printSpread(cars);
    }

    private static void printKinds() {
        System.out.println("| car | differential | radius, m | ring limit, km/h, fast | by slips | difference, % |"
                + " drive left at 60, 80, 90 %, m/s², fast | by slips | brakes, fast | by slips |");
        System.out.println("|---|---|---|---|---|---|---|---|---|---|");
        double[] some = {20, 50, 200};
        for (double front : new double[] {0, 100, 40}) {
            for (double lock : new double[] {0, 40, 100}) {
                if (front == 40 && lock == 100) {
                    continue;
                }
                String kind = lock == 0 ? "open" : lock == 100 ? "none" : "plates";
                print("test", kind, car(front, lock, lock == 40 ? 50 : 0, front == 40 ? lock : 0), some);
            }
        }
        for (double front : new double[] {0, 100}) {
            Car stiff = car(front, 100, 0, 0).with(Quantity.SLIP_STIFFNESS_FALL, 0);
            print("test", "none, stiffness does not fall", stiff, new double[] {20});
        }
        for (Car car : SlipCars.demo()) {
            print(car.name(), "plates", car, some);
        }
    }

    private static void print(String name, String kind, Car car, double[] radii) {
        for (double radius : radii) {
            Ring ring = compare(car, radius);
            System.out.printf(
                    Locale.ROOT,
                    "| %s, %s | %s | %.0f | %.1f | %.1f | %+.1f | %s | %s | %s | %s |%n",
                    name,
                    SlipCars.driven(car),
                    kind,
                    radius,
                    3.6 * ring.fastLimit,
                    3.6 * ring.limit,
                    ring.limitPercent(),
                    list(ring.fastDrive),
                    list(ring.drive),
                    list(ring.fastBrake),
                    list(ring.brake));
        }
    }

    private static String list(double[] values) {
        StringBuilder text = new StringBuilder();
        for (double value : values) {
            text.append(String.format(Locale.ROOT, text.length() == 0 ? "%.1f" : " %.1f", value));
        }
        return text.toString();
    }

    private static void printSpread(int cars) {
        for (boolean spools : new boolean[] {false, true}) {
            List<Car> some = IntStream.range(0, cars)
                    .mapToObj(SlipCars::random)
                    .filter(car -> SlipCars.turnsAsOne(car) == spools)
                    .toList();
            System.out.printf(
                    Locale.ROOT,
                    "%n%d random cars %s an axle that turns as one%n%n| what, fast less slips | radius, m | lowest |"
                            + " a tenth below | middle | a tenth above | highest |%n|---|---|---|---|---|---|---|%n",
                    some.size(),
                    spools ? "with" : "without");
            printSpread(some);
            if (!spools) {
                printCauses(some);
            }
        }
    }

    private static void printSpread(List<Car> cars) {
        List<double[]> all = new ArrayList<>();
        for (double radius : RADII) {
            List<double[]> ring =
                    cars.stream().map(car -> differences(car, radius)).toList();
            all.addAll(ring);
            printRow("ring limit, %", radius, ring, 0);
        }
        for (int i = 0; i < SHARES.length; i++) {
            printRow(
                    String.format(Locale.ROOT, "drive left at %.0f %%, m/s²", 100 * SHARES[i]), Double.NaN, all, 1 + i);
        }
        for (int i = 0; i < SHARES.length; i++) {
            printRow(
                    String.format(Locale.ROOT, "brakes left at %.0f %%, m/s²", 100 * SHARES[i]),
                    Double.NaN,
                    all,
                    4 + i);
        }
        printRow("moment at 80 %, steady, %", Double.NaN, all, 7);
        printRow("moment at 80 %, half the drive, %", Double.NaN, all, 8);
        long against = all.stream().filter(d -> d[9] > 0).count();
        long missing = all.stream()
                .flatMapToDouble(Arrays::stream)
                .filter(x -> !Double.isFinite(x))
                .count();
        System.out.printf(
                Locale.ROOT,
                "%nunder half the drive, against the turn by the fast model and into it by slips: %d of %d; no limit found"
                        + " or no equilibrium: %d of %d%n",
                against,
                all.size(),
                missing,
                9 * all.size());
    }

    private static void printRow(String what, double radius, List<double[]> differences, int part) {
        System.out.printf(
                Locale.ROOT,
                "| %s | %s |%s%n",
                what,
                Double.isNaN(radius) ? "all" : String.format(Locale.ROOT, "%.0f", radius),
                spread(sorted(differences, part), "%+.1f"));
    }

    /** What is left of differences when the fast model takes a part from the slips. */
    private static void printCauses(List<Car> cars) {
        System.out.println("\nall differentials open:\n\n| what, fast less slips | radius, m | lowest |"
                + " a tenth below | middle | a tenth above | highest |\n|---|---|---|---|---|---|---|");
        List<double[]> all = new ArrayList<>();
        for (Car locked : cars) {
            Car car = SlipCars.opened(locked);
            for (double radius : RADII) {
                all.add(causes(car, radius));
            }
        }
        printRow("ring limit, %", Double.NaN, all, 0);
        printRow("ring limit with the slips' drag, %", Double.NaN, all, 1);
    }

    private static double[] causes(Car car, double radius) {
        SlipEquilibrium slips = new SlipEquilibrium(car, Conditions.STANDARD, radius);
        double limit = slips.limit();
        double v = 0.9999 * limit;
        WheelForces wheels = new WheelForces(Vehicle.of(car, Conditions.STANDARD));
        wheels.at(v, 1 / radius, 0, G, 0, 0, 1, 0);
        wheels.utilisation(0, 1);
        double air = 0.5 * Vehicle.of(car, Conditions.STANDARD).airDensity() * v * v;
        double area = car.value(Quantity.DRAG_AREA) + (slips.force(v) - wheels.tyreForce) / air;
        double dragged = area >= 0 && area <= 10 ? fastLimit(car.with(Quantity.DRAG_AREA, area), radius) : Double.NaN;
        return new double[] {100 * (fastLimit(car, radius) / limit - 1), 100 * (dragged / limit - 1)};
    }

    /** By parts: limit, drive and brakes at each of {@link #SHARES}, moments at 80 %, whether these disagree in sign. */
    private static double[] differences(Car car, double radius) {
        Ring ring = compare(car, radius);
        double[] d = new double[10];
        d[0] = ring.limitPercent();
        for (int i = 0; i < SHARES.length; i++) {
            d[1 + i] = ring.fastDrive[i] - ring.drive[i];
            d[4 + i] = ring.brake[i] - ring.fastBrake[i];
        }
        d[7] = 100 * (ring.fastMoment[2] - ring.moment[2]);
        d[8] = 100 * (ring.fastMoment[3] - ring.moment[3]);
        d[9] = ring.fastMoment[3] < -1e-3 && ring.moment[3] > 1e-3 ? 1 : 0;
        return d;
    }
}
