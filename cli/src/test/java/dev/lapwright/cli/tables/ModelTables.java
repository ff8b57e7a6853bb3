package dev.lapwright.cli.tables;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.results.LapModel;
import dev.lapwright.study.opinion.SecondOpinion;
import dev.lapwright.study.opinion.SecondOpinionResult;
import dev.lapwright.track.Track;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Prints the tables of docs/validation.md on the fuller model beside the fast one: the nine demo laps on the smoothest line, and one step of each
 * adjustment. Run from the top of the project, with the command built before:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/ModelTables.java</pre>
 */
public final class ModelTables {
    private static final int WARM = 5;
    private static final double NANOSECONDS_PER_MS = 1e6;
    /** Of a step, s: below it the sign of a difference is no matter. */
    private static final double TOLD = 0.02;

    private static final List<String> CARS = List.of("gt-talvex", "touring-merrow", "student-pipit");
    private static final List<String> CIRCUITS = List.of("harrowmere", "castelvane", "skarnfell");

    private ModelTables() {}

    /** No arguments. */
    public static void main(String... none) {
        System.out.println(
                "| car | circuit | fast, s | fuller, s | difference, % | slowest corner, fast, km/h | fuller |"
                        + " unchecked stations | processor ms a lap, fast | fuller |");
        System.out.println("|---|---|---|---|---|---|---|---|---|---|");
        List<String> steps = new ArrayList<>();
        for (String name : CARS) {
            for (String circuit : CIRCUITS) {
                Car car = Documents.car(name);
                Track line = LineSearch.of(Documents.circuit(circuit), car, LineChoices.DEFAULT)
                        .smoothest()
                        .driven();
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
