package dev.lapwright.slip;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.SlipCars;
import dev.lapwright.lap.TestTracks;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;

/**
 * Laps of random cars by the fuller model and the fast one, and as Markdown: {@code java -cp ... dev.lapwright.slip.SlipLapTable [CARS]} with how
 * many; with {@code softness} what the numbers that round off its laws are worth.
 */
final class SlipLapTable {
    /** A difference that is told, s. */
    static final double TOLD = 0.02;

    private static final long SEED = 5000;
    private static final int CARS = 200;
    private static final int SOFT_CARS = 20;
    private static final Map<String, UnaryOperator<Car>> CHANGES = changes();

    /** One car by both models; of each change its difference by either, s. */
    record Both(Lap fast, Lap fuller, double[] byFast, double[] byFuller) {
        double percent() {
            return 100 * (fuller.time() / fast.time() - 1);
        }

        double slowestPercent() {
            return 100 * (fuller.figures().minimumCornerSpeed() / fast.figures().minimumCornerSpeed() - 1);
        }

        double uncheckedPercent() {
            int unchecked = 0;
            for (int i = 0; i < fuller.count(); i++) {
                unchecked += fuller.isUnchecked(i) ? 1 : 0;
            }
            return 100.0 * unchecked / fuller.count();
        }
    }

    private SlipLapTable() {}

    private static Map<String, UnaryOperator<Car>> changes() {
        Map<String, UnaryOperator<Car>> changes = new LinkedHashMap<>();
        changes.put("20 kg more", car -> by(car, Quantity.MASS, 1, 20));
        changes.put("drag 5 % more", car -> by(car, Quantity.DRAG_AREA, 1.05, 0));
        changes.put("front lift area 0.1 m² more", car -> by(car, Quantity.LIFT_AREA_FRONT, 1, 0.1));
        changes.put("1 % more weight at the front", car -> by(car, Quantity.FRONT_WEIGHT, 1, 1));
        changes.put("front bar twice as hard", car -> by(car, Quantity.BAR_FRONT, 2, 0));
        changes.put("rear bar twice as hard", car -> by(car, Quantity.BAR_REAR, 2, 0));
        changes.put("front springs 20 % harder", car -> by(car, Quantity.SPRING_FRONT, 1.2, 0));
        changes.put("brakes 2 % more at the front", car -> by(car, Quantity.BRAKE_FRONT_SHARE, 1, 2));
        changes.put("front camber 0.5 deg more", car -> by(car, Quantity.CAMBER_FRONT, 1, -0.5));
        changes.put("driven wheels' lock under drive 10 % more", SlipLapTable::locked);
        return changes;
    }

    private static Car by(Car car, Quantity quantity, double factor, double more) {
        return car.with(quantity, factor * car.value(quantity) + more);
    }

    private static Car locked(Car car) {
        Quantity lock =
                car.value(Quantity.FRONT_DRIVE_SHARE) == 100 ? Quantity.POWER_LOCK_FRONT : Quantity.POWER_LOCK_REAR;
        // Wheels that turn as one already are opened a little.
        return car.with(lock, car.value(lock) > 89 ? 80 : car.value(lock) + 10);
    }

    static List<String> changeNames() {
        return List.copyOf(CHANGES.keySet());
    }

    /** Cars that both models lap, on the test circuit of some 4.4 km. */
    static List<Both> cars(int count) {
        Stations stations = TestTracks.circuit().stations(StationSpacing.DEFAULT);
        List<List<Both>> found = StudyRun.onAllCores()
                .inParallel(
                        count,
                        () -> List.of(new LapSolver(stations), SlipModel.laps(stations)),
                        (models, i) -> both(models.get(0), models.get(1), SlipCars.randomDriven(SEED + i)),
                        done -> {});
        return found.stream().flatMap(List::stream).toList();
    }

    private static List<Both> both(LapSolver fast, LapSolver fuller, Car car) {
        try {
            Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
            Lap one = fast.solve(vehicle);
            Lap other = fuller.solve(vehicle);
            double[] byFast = new double[CHANGES.size()];
            double[] byFuller = new double[CHANGES.size()];
            int k = 0;
            for (UnaryOperator<Car> change : CHANGES.values()) {
                Vehicle changed = Vehicle.of(change.apply(car), Conditions.STANDARD);
                byFast[k] = fast.lapTime(changed) - one.time();
                byFuller[k++] = fuller.lapTime(changed) - other.time();
            }
            return List.of(new Both(one, other, byFast, byFuller));
        } catch (LapwrightException none) {
            return List.of();
        }
    }

    /** Of one change over all cars: how many it is told for by either model, and of those how many go the same way by both. */
    record Agreement(int told, int same, double correlation, double apart) {
        static Agreement of(List<Both> cars, int change) {
            double[] fast =
                    cars.stream().mapToDouble(car -> car.byFast()[change]).toArray();
            double[] fuller =
                    cars.stream().mapToDouble(car -> car.byFuller()[change]).toArray();
            int told = 0;
            int same = 0;
            double[] apart = new double[fast.length];
            for (int i = 0; i < fast.length; i++) {
                apart[i] = Math.abs(fast[i] - fuller[i]);
                if (Math.max(Math.abs(fast[i]), Math.abs(fuller[i])) >= TOLD) {
                    told++;
                    same += fast[i] < 0 == fuller[i] < 0 ? 1 : 0;
                }
            }
            return new Agreement(
                    told,
                    same,
                    new PearsonsCorrelation().correlation(fast, fuller),
                    new Percentile(50).evaluate(apart));
        }
    }

    static double percentile(List<Both> cars, ToDoubleFunction<Both> figure, double percent) {
        return new Percentile(percent)
                .evaluate(cars.stream().mapToDouble(figure).toArray());
    }

    /** Laps with one of the small numbers halved or doubled. */
    private static void softness() {
        SlipSoftness is = SlipSoftness.DEFAULT;
        Map<String, UnaryOperator<SlipSoftness>> others = new LinkedHashMap<>();
        for (double by : new double[] {0.5, 2}) {
            String so = by < 1 ? "halved" : "doubled";
            others.put(
                    "a differential's creep of " + is.creep() + ", " + so,
                    s -> with(s.creep() * by, s.release(), s.leastGrip(), s.change()));
            others.put(
                    "a brake's release of " + is.release() + ", " + so,
                    s -> with(s.creep(), s.release() * by, s.leastGrip(), s.change()));
            others.put(
                    "a lifted wheel's " + is.leastGrip() + " of the weight, " + so,
                    s -> with(s.creep(), s.release(), s.leastGrip() * by, s.change()));
            others.put(
                    "drive to brakes within " + is.change() + " of the weight, " + so,
                    s -> with(s.creep(), s.release(), s.leastGrip(), s.change() * by));
            others.put(
                    "what does not slip held by " + is.stuck() + " times the weight, " + so,
                    s -> new SlipSoftness(s.creep(), s.release(), s.leastGrip(), s.change(), s.stuck() * by));
        }
        Stations stations = TestTracks.circuit().stations(StationSpacing.DEFAULT);
        System.out.println("| " + SOFT_CARS + " random cars (seeds from " + SEED
                + "), one lap each | mean change of the lap, ms | largest, ms |");
        System.out.println("|---|---|---|");
        List<double[]> times = StudyRun.onAllCores()
                .inParallel(
                        SOFT_CARS,
                        () -> stations,
                        (any, i) -> {
                            Vehicle vehicle = Vehicle.of(SlipCars.randomDriven(SEED + i), Conditions.STANDARD);
                            double before = SlipModel.laps(stations).lapTime(vehicle);
                            return others.values().stream()
                                    .mapToDouble(other -> SlipModel.laps(stations, other.apply(is))
                                                    .lapTime(vehicle)
                                            - before)
                                    .toArray();
                        },
                        done -> {});
        int k = 0;
        for (String name : others.keySet()) {
            int place = k++;
            double[] changes =
                    times.stream().mapToDouble(all -> 1000 * all[place]).toArray();
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %+.1f | %.1f |%n",
                    name,
                    Arrays.stream(changes).average().orElseThrow(),
                    Arrays.stream(changes).map(Math::abs).max().orElseThrow());
        }
    }

    private static SlipSoftness with(double creep, double release, double leastGrip, double change) {
        return new SlipSoftness(creep, release, leastGrip, change, SlipSoftness.DEFAULT.stuck());
    }

    /** How many cars, 200 if nothing is said; or what else is asked. */
    public static void main(String... args) {
        if (args.length > 0 && args[0].equals("softness")) {
            softness();
            return;
        }
        int count = args.length > 0 ? Integer.parseInt(args[0]) : CARS;
        List<Both> cars = cars(count);
        System.out.println(cars.size() + " of " + count + " random cars lap by both models (seeds from " + SEED + ").");
        System.out.println();
        System.out.println("| the fuller model beside the fast one | 5 of 100 below | middle | 5 of 100 above |");
        System.out.println("|---|---|---|---|");
        Map<String, ToDoubleFunction<Both>> figures = new LinkedHashMap<>();
        figures.put("lap time, %", Both::percent);
        figures.put("slowest corner's speed, %", Both::slowestPercent);
        figures.put("stations without an equilibrium, %", Both::uncheckedPercent);
        figures.forEach((name, figure) -> System.out.printf(
                Locale.ROOT,
                "| %s | %+.2f | %+.2f | %+.2f |%n",
                name,
                percentile(cars, figure, 5),
                percentile(cars, figure, 50),
                percentile(cars, figure, 95)));
        System.out.println();
        System.out.println(
                "| change | told, " + TOLD
                        + " s and more by either | same sign | correlation | median apart, s | median size by the fast one, s |");
        System.out.println("|---|---|---|---|---|---|");
        List<String> names = new ArrayList<>(changeNames());
        for (int k = 0; k < names.size(); k++) {
            int change = k;
            Agreement agreement = Agreement.of(cars, k);
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %d | %d | %.2f | %.3f | %.3f |%n",
                    names.get(k),
                    agreement.told(),
                    agreement.same(),
                    agreement.correlation(),
                    agreement.apart(),
                    percentile(cars, car -> Math.abs(car.byFast()[change]), 50));
        }
        double[] laps = cars.stream().mapToDouble(Both::percent).toArray();
        Arrays.sort(laps);
        System.out.printf(Locale.ROOT, "%nLaps: %+.2f to %+.2f %%.%n", laps[0], laps[laps.length - 1]);
    }
}
