package dev.lapwright.cli.tables;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Prints as Markdown how exact and how smooth lap times of the demo cars are on the demo circuits, and what a lap costs. Uses
 * the public API alone; run from the top of the project, with the command built before:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/AccuracyTables.java</pre>
 */
public final class AccuracyTables {
    private static final List<String> CARS = List.of("gt-talvex", "touring-merrow", "student-pipit");
    private static final List<String> CIRCUITS = List.of("harrowmere", "castelvane", "skarnfell");
    private static final String WING = "aero.wings.rear.angleDeg";
    private static final String FINAL_DRIVE = "gearbox.finalDrive";
    /** Spacing taken as converged, and one twice as coarse that tells how well it is, as factors on the default. */
    private static final double FINE = 1 / 32.0;

    /** After which a step of 0.02 is a few billionths: what any slope leaves is far below the digits told. */
    private static final int HALVINGS = 22;

    private AccuracyTables() {}

    /** Prints them. */
    public static void main(String... ignored) {
        convergence();
        say("");
        smoothness();
        say("");
        pace();
    }

    private static void convergence() {
        say(
                "| circuit | car | stations | converged lap time, s | default spacing less that, ms | worst of 13 wings, ms "
                        + "| converged to, ms |");
        say("|---|---|---|---|---|---|---|");
        double worstOfAll = 0;
        for (String circuit : CIRCUITS) {
            Track track = Documents.circuit(circuit);
            LapSolver standard = LapSolver.on(track);
            LapSolver fine = new LapSolver(track.stations(StationSpacing.DEFAULT.scaled(FINE)));
            LapSolver lessFine = new LapSolver(track.stations(StationSpacing.DEFAULT.scaled(2 * FINE)));
            for (String name : CARS) {
                Car car = Documents.car(name);
                Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
                double exact = fine.lapTime(vehicle);
                double worst = 0;
                for (int i = 0; i <= 12; i++) {
                    Vehicle other = Vehicle.of(car.with(WING, wing(car, i / 12.0)), Conditions.STANDARD);
                    worst = Math.max(worst, Math.abs(standard.lapTime(other) - fine.lapTime(other)));
                }
                worstOfAll = Math.max(worstOfAll, worst);
                say(String.format(
                        Locale.ROOT,
                        "| %s | %s | %d | %.4f | %+.3f | %.3f | %.3f |",
                        track.name(),
                        car.name(),
                        standard.stations().count(),
                        exact,
                        1000 * (standard.lapTime(vehicle) - exact),
                        1000 * worst,
                        1000 * Math.abs(lessFine.lapTime(vehicle) - exact)));
            }
        }
        say("");
        say(String.format(Locale.ROOT, "Worst of all: %.3f ms.", 1000 * worstOfAll));
    }

    /** Angle of the rear wing at a share of its range, short of the ends by a little. */
    private static double wing(Car car, double share) {
        var settings = car.wings().stream()
                .filter(wing -> wing.name().equals("rear"))
                .findFirst()
                .orElseThrow()
                .settings();
        double low = settings.get(0).angleDeg();
        double high = settings.get(settings.size() - 1).angleDeg();
        return low + (high - low) * (0.01 + 0.98 * share);
    }

    private static void smoothness() {
        say("| circuit | car | wing, median | 99 % | most | jump there | by the stations | final drive, median | 99 % "
                + "| most | jump there | by the stations |");
        say("|---|---|---|---|---|---|---|---|---|---|---|---|");
        for (String circuit : CIRCUITS) {
            Track track = Documents.circuit(circuit);
            LapSolver solver = LapSolver.on(track);
            LapSolver finer = new LapSolver(track.stations(StationSpacing.DEFAULT.scaled(0.5)));
            for (String name : CARS) {
                Car car = Documents.car(name);
                double low = wing(car, 0);
                int angles = (int) ((wing(car, 1) - low) / 0.01);
                double middle = car.value(FINAL_DRIVE);
                say("| " + track.name() + " | " + car.name() + " | "
                        + figures(solver, finer, car, WING, low, 0.01, angles) + " | "
                        + figures(solver, finer, car, FINAL_DRIVE, middle - 0.4, 0.001, 800) + " |");
            }
        }
    }

    /** Of the second differences of lap time in ms: median, 99 % and most; and the most of what half the spacing changes. */
    private static String figures(
            LapSolver solver, LapSolver finer, Car car, String quantity, double first, double step, int count) {
        double[] times = new double[count];
        double[] changes = new double[count];
        for (int i = 0; i < count; i++) {
            Vehicle vehicle = Vehicle.of(car.with(quantity, first + i * step), Conditions.STANDARD);
            times[i] = solver.lapTime(vehicle);
            changes[i] = times[i] - finer.lapTime(vehicle);
        }
        double[] rising = secondDifferences(times);
        double[] byStations = secondDifferences(changes);
        int last = rising.length - 1;
        return String.format(
                Locale.ROOT,
                "%.4f | %.4f | %.4f | %.4f | %.4f",
                rising[last / 2],
                rising[(int) Math.ceil(0.99 * last)],
                rising[last],
                jump(solver, car, quantity, first, step, times),
                byStations[last]);
    }

    /** What is left, in ms, of the change where second differences are largest when the step there is halved again and again. */
    private static double jump(LapSolver solver, Car car, String quantity, double first, double step, double[] times) {
        int worst = 1;
        for (int i = 1; i < times.length - 1; i++) {
            if (second(times, i) > second(times, worst)) {
                worst = i;
            }
        }
        double low = first + (worst - 1) * step;
        double high = first + (worst + 1) * step;
        double atLow = times[worst - 1];
        double atHigh = times[worst + 1];
        for (int i = 0; i < HALVINGS; i++) {
            double middle = 0.5 * (low + high);
            double there = solver.lapTime(Vehicle.of(car.with(quantity, middle), Conditions.STANDARD));
            if (Math.abs(there - atLow) > Math.abs(atHigh - there)) {
                high = middle;
                atHigh = there;
            } else {
                low = middle;
                atLow = there;
            }
        }
        return 1000 * Math.abs(atHigh - atLow);
    }

    private static double second(double[] values, int i) {
        return Math.abs(values[i - 1] - 2 * values[i] + values[i + 1]);
    }

    /** Rising, in milliseconds. */
    private static double[] secondDifferences(double[] values) {
        double[] second = new double[values.length - 2];
        for (int i = 0; i < second.length; i++) {
            second[i] = 1000 * second(values, i + 1);
        }
        Arrays.sort(second);
        return second;
    }

    /** Processor time of this thread for a warm lap: the quickest of some rounds, which is the least disturbed one. */
    private static void pace() {
        say("| circuit | km | stations | " + String.join(", ms | ", CARS) + ", ms |");
        say("|---|---|---|---|---|---|");
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        for (String circuit : CIRCUITS) {
            LapSolver solver = LapSolver.on(Documents.circuit(circuit));
            StringBuilder line = new StringBuilder(String.format(
                    Locale.ROOT,
                    "| %s | %.2f | %d |",
                    solver.stations().track().name(),
                    solver.stations().track().length() / 1000,
                    solver.stations().count()));
            for (String name : CARS) {
                Vehicle vehicle = Vehicle.of(Documents.car(name), Conditions.STANDARD);
                long quickest = Long.MAX_VALUE;
                for (int round = 0; round < 12; round++) {
                    long start = threads.getCurrentThreadCpuTime();
                    for (int lap = 0; lap < 100; lap++) {
                        solver.lapTime(vehicle);
                    }
                    quickest = Math.min(quickest, threads.getCurrentThreadCpuTime() - start);
                }
                line.append(String.format(Locale.ROOT, " %.2f |", quickest / 100 / 1e6));
            }
            say(line.toString());
        }
    }

    private static void say(String line) {
        System.out.println(line);
    }
}
