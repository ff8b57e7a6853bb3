package dev.lapwright.cli.tables;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.documents.Documents;
import dev.lapwright.doubt.PlausibleDays;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.results.LapModel;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.opinion.EitherModel;
import dev.lapwright.study.opinion.SecondOpinion;
import dev.lapwright.study.opinion.SecondOpinionResult;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.track.Track;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;

/**
 * Prints the tables of docs/validation.md on the fuller model beside the fast one: the nine demo laps on the smoothest line, and one step of each
 * adjustment; how smooth its laps are over settings; and how many of 100 cars that drive by it have gains in the intervals told. Run from
 * the top of the project, with the command built before:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/ModelTables.java [smooth|coverage]</pre>
 */
public final class ModelTables {
    private static final int WARM = 5;
    private static final double NANOSECONDS_PER_MS = 1e6;
    /** Of a step, s: below it the sign of a difference is no matter. */
    private static final double TOLD = 0.02;

    private static final int FINE = 40;
    /** Quantities, and steps of them in percent. */
    private static final Map<Quantity, Double> FINE_STEPS = fineSteps();

    private static final int DRAWS = 200;
    private static final int TRUTHS = 200;
    private static final long TRUTH_SEED = 20_001;
    private static final List<String> ASKED = List.of(
            "rear-wing", "front-bar", "rear-bar", "front-spring", "ride-height", "final-drive", "lock-under-drive");

    private static final List<String> CARS = List.of("gt-talvex", "touring-merrow", "student-pipit");
    private static final List<String> CIRCUITS = List.of("harrowmere", "castelvane", "skarnfell");

    private ModelTables() {}

    private static Map<Quantity, Double> fineSteps() {
        Map<Quantity, Double> steps = new LinkedHashMap<>();
        steps.put(Quantity.MASS, 0.05);
        steps.put(Quantity.DRAG_AREA, 0.1);
        steps.put(Quantity.BAR_FRONT, 0.5);
        return steps;
    }

    /** Prints the one asked for; the laps if none is. */
    public static void main(String... asked) {
        switch (asked.length == 0 ? "" : asked[0]) {
            case "smooth" -> smooth();
            case "coverage" -> coverage();
            default -> laps();
        }
    }

    /** The largest second difference over fine steps of a setting: noise and jumps, for what bends in between is far smaller. */
    private static void smooth() {
        System.out.println("Largest second difference of the fuller lap over " + FINE + " steps, ms:");
        System.out.println();
        System.out.println("| car | circuit | "
                + FINE_STEPS.keySet().stream().map(Quantity::path).collect(Collectors.joining(" | ")) + " |");
        System.out.println("|---|---|" + "---|".repeat(FINE_STEPS.size()));
        for (String name : CARS) {
            for (String circuit : CIRCUITS) {
                Car car = Documents.car(name);
                LapSolver solver = LapModel.FULLER.on(line(car, circuit));
                StringBuilder row = new StringBuilder("| " + car.name() + " | " + circuit + " |");
                for (Map.Entry<Quantity, Double> one : FINE_STEPS.entrySet()) {
                    double[] times = new double[FINE + 1];
                    for (int i = 0; i < times.length; i++) {
                        Quantity quantity = one.getKey();
                        Car set = car.with(quantity, car.value(quantity) * (1 + i * one.getValue() / 100));
                        times[i] = solver.lapTime(Vehicle.of(set, Conditions.STANDARD));
                    }
                    double most = 0;
                    for (int i = 1; i < FINE; i++) {
                        most = Math.max(most, Math.abs(times[i - 1] - 2 * times[i] + times[i + 1]));
                    }
                    row.append(String.format(Locale.ROOT, " %.2f |", 1000 * most));
                }
                System.out.println(row);
            }
        }
    }

    /** True cars, drawn plainly, that drive by the fuller model: how many of 100 gains lie in the interval told by the fast one, and by either. */
    private static void coverage() {
        System.out.println(
                "Of 100 true cars whose gain lies in the interval told by the fast model, and by either model: " + DRAWS
                        + " cars drawn (seed 1), " + TRUTHS + " true cars (seed " + TRUTH_SEED + ").");
        System.out.println();
        System.out.println(
                "| car | circuit | change | fast, s | fuller, s | true cars by the fast model: told by it | by either |"
                        + " by the fuller model: told by the fast one | by either |");
        System.out.println("|---|---|---|---|---|---|---|---|---|");
        for (String name : CARS) {
            Car car = Documents.car(name);
            Track line = line(car, "harrowmere");
            Map<String, Car> changes = new LinkedHashMap<>();
            for (Adjustment adjustment : car.adjustments()) {
                if (ASKED.contains(adjustment.name())) {
                    List<Double> legal = adjustment.legalSettings();
                    double now = car.setting(adjustment.name());
                    double next = legal.stream()
                            .filter(setting -> setting > now)
                            .findFirst()
                            .orElse(legal.get(0));
                    changes.put(adjustment.name(), car.with(adjustment.name(), next));
                }
            }
            coverage(car, line, changes);
        }
    }

    private static void coverage(Car car, Track line, Map<String, Car> changes) {
        Robustness study = Robustness.of(car, line, Conditions.STANDARD).withDraws(DRAWS);
        SecondOpinion opinion = SecondOpinion.of(car, line, Conditions.STANDARD);
        for (Map.Entry<String, Car> change : changes.entrySet()) {
            study = study.against(change.getValue());
            opinion = opinion.on(change.getKey(), change.getValue());
        }
        List<RobustnessResult.Standing> told = study.run().standings();
        List<SecondOpinionResult.Opinion> words = opinion.run().opinions();
        PlausibleDays days = PlausibleDays.of(car, line, Conditions.STANDARD, true, List.of());
        Random random = new Random(TRUTH_SEED);
        double[][] draws = new double[TRUTHS][days.unknowns().size()];
        for (double[] draw : draws) {
            Arrays.setAll(draw, k -> random.nextGaussian());
        }
        List<Car> cars = new ArrayList<>(List.of(car));
        cars.addAll(changes.values());
        // Of each truth the times by the fast model, then by the fuller one.
        List<double[]> times = StudyRun.onAllCores()
                .inParallel(
                        TRUTHS,
                        () -> line,
                        (any, i) -> {
                            Track road = days.road(draws[i]);
                            LapSolver[] models = {LapModel.FAST.on(road), LapModel.FULLER.on(road)};
                            double[] all = new double[2 * cars.size()];
                            for (int k = 0; k < all.length; k++) {
                                Car truth = days.car(cars.get(k % cars.size()), draws[i]);
                                all[k] = models[k / cars.size()].lapTime(
                                        Vehicle.of(truth, days.day(Conditions.STANDARD, draws[i])));
                            }
                            return all;
                        },
                        done -> {});
        int c = 0;
        for (String name : changes.keySet()) {
            RobustnessResult.Standing drawn = told.get(c);
            EitherModel either =
                    EitherModel.of(drawn, words.get(c).fuller() - words.get(c).fast());
            int[] inside = new int[4];
            for (double[] one : times) {
                for (int model = 0; model < 2; model++) {
                    int from = model * cars.size();
                    double gain = one[from + c + 1] - one[from];
                    inside[2 * model] += gain >= drawn.low() && gain <= drawn.high() ? 1 : 0;
                    inside[2 * model + 1] += gain >= either.low() && gain <= either.high() ? 1 : 0;
                }
            }
            System.out.printf(
                    Locale.ROOT,
                    "| %s | harrowmere | %s | %+.3f | %+.3f |",
                    car.name(),
                    name,
                    words.get(c).fast(),
                    words.get(c).fuller());
            for (int count : inside) {
                System.out.printf(Locale.ROOT, " %.0f |", 100.0 * count / TRUTHS);
            }
            System.out.println();
            c++;
        }
    }

    private static Track line(Car car, String circuit) {
        return LineSearch.of(Documents.circuit(circuit), car, LineChoices.DEFAULT)
                .smoothest()
                .driven();
    }

    private static void laps() {
        System.out.println(
                "| car | circuit | fast, s | fuller, s | difference, % | slowest corner, fast, km/h | fuller |"
                        + " unchecked stations | processor ms a lap, fast | fuller |");
        System.out.println("|---|---|---|---|---|---|---|---|---|---|");
        List<String> steps = new ArrayList<>();
        for (String name : CARS) {
            for (String circuit : CIRCUITS) {
                Car car = Documents.car(name);
                Track line = line(car, circuit);
                laps(car, circuit, line);
                steps.add(steps(car, circuit, line));
            }
        }
        System.out.println();
        System.out.println("| car | circuit | steps of " + TOLD
                + " s and more by either | same sign | largest apart, s: fast / fuller |");
        System.out.println("|---|---|---|---|---|");
        steps.forEach(System.out::println);
    }

    private static void laps(Car car, String circuit, Track line) {
        Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
        Lap fast = LapModel.FAST.on(line).solve(vehicle);
        Lap fuller = LapModel.FULLER.on(line).solve(vehicle);
        LapFigures one = fast.figures();
        LapFigures other = fuller.figures();
        int unchecked = 0;
        for (int i = 0; i < fuller.count(); i++) {
            unchecked += fuller.isUnchecked(i) ? 1 : 0;
        }
        System.out.printf(
                Locale.ROOT,
                "| %s | %s | %.3f | %.3f | %+.2f | %.1f | %.1f | %d of %d | %.1f | %.0f |%n",
                car.name(),
                circuit,
                fast.time(),
                fuller.time(),
                100 * (fuller.time() / fast.time() - 1),
                3.6 * one.minimumCornerSpeed(),
                3.6 * other.minimumCornerSpeed(),
                unchecked,
                fuller.count(),
                cost(LapModel.FAST.on(line), vehicle),
                cost(LapModel.FULLER.on(line), vehicle));
    }

    private static double cost(LapSolver solver, Vehicle vehicle) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < WARM; i++) {
            long begin = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            solver.lapTime(vehicle);
            long end = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            least = Math.min(least, (end - begin) / NANOSECONDS_PER_MS);
        }
        return least;
    }

    private static String steps(Car car, String circuit, Track line) {
        SecondOpinion study = SecondOpinion.of(car, line, Conditions.STANDARD);
        for (Adjustment adjustment : car.adjustments()) {
            List<Double> legal = adjustment.legalSettings();
            double now = car.setting(adjustment.name());
            double next =
                    legal.stream().filter(setting -> setting > now).findFirst().orElse(legal.get(0));
            study = study.on(adjustment.name(), car.with(adjustment.name(), next));
        }
        int told = 0;
        int same = 0;
        SecondOpinionResult.Opinion most = null;
        for (SecondOpinionResult.Opinion opinion : study.run().opinions()) {
            if (Math.max(Math.abs(opinion.fast()), Math.abs(opinion.fuller())) >= TOLD) {
                told++;
                same += opinion.fast() < 0 == opinion.fuller() < 0 ? 1 : 0;
            }
            if (most == null || Math.abs(opinion.fuller() - opinion.fast()) > Math.abs(most.fuller() - most.fast())) {
                most = opinion;
            }
        }
        return String.format(
                Locale.ROOT,
                "| %s | %s | %d | %d | %s %+.3f / %+.3f |",
                car.name(),
                circuit,
                told,
                same,
                most.name(),
                most.fast(),
                most.fuller());
    }
}
