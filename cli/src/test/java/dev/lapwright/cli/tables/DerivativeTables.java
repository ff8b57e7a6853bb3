package dev.lapwright.cli.tables;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.lap.LapDerivatives;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Prints as Markdown how the derivatives of the lap time by all quantities of the demo cars and the day, from one solved lap each,
 * agree with differences between laps, and what they cost. Uses the public API alone; run from the top of the project, with the command
 * built before:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/DerivativeTables.java</pre>
 */
public final class DerivativeTables {
    private static final List<String> CARS = List.of("gt-talvex", "touring-merrow", "student-pipit");
    private static final List<String> CIRCUITS = List.of("harrowmere", "castelvane", "skarnfell");
    /** Steps of the differences, of the quantity: where both do not agree to a tenth, a kink lies between. */
    private static final double STEP = 1e-4;

    private static final double SMALLER = 3e-5;
    private static final double LEAST_SIZE = 0.05;
    private static final int ROUNDS = 8;

    private DerivativeTables() {}

    /** Prints them. */
    public static void main(String... ignored) {
        say(
                "| circuit | car | quantities | that move the lap time | at a kink | difference per percent, ms: median | 95 of 100 | most "
                        + "| worst by | cost of all, laps | of as many differences, laps |");
        say("|---|---|---|---|---|---|---|---|---|---|---|");
        for (String circuit : CIRCUITS) {
            for (String car : CARS) {
                row(circuit, car);
            }
        }
    }

    private static void row(String circuit, String name) {
        Car car = Documents.car(name);
        LapSolver solver = LapSolver.on(Documents.circuit(circuit));
        Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
        List<String> names = new ArrayList<>(car.quantityNames());
        names.addAll(Conditions.NAMES);
        names.remove("gearbox.lowestGear");
        LapDerivatives slopes = solver.derivatives(vehicle, names);
        List<Double> differences = new ArrayList<>();
        int kinks = 0;
        double most = 0;
        String worst = "";
        for (String quantity : names) {
            double size = Math.max(Math.abs(value(car, quantity)), LEAST_SIZE);
            double perPercent = 10 * size * slopes.of(quantity).mean();
            double byLaps = 10 * size * central(solver, car, quantity, STEP * size);
            double closer = 10 * size * central(solver, car, quantity, SMALLER * size);
            if (Double.isNaN(byLaps) || Double.isNaN(perPercent) || (byLaps == 0 && perPercent == 0)) {
                continue;
            }
            if (Math.abs(byLaps - closer) > 0.1 * Math.abs(closer) + 0.1) {
                kinks++;
                continue;
            }
            double difference = Math.abs(perPercent - closer);
            differences.add(difference);
            if (difference > most) {
                most = difference;
                worst = quantity;
            }
        }
        double[] sorted =
                differences.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        double lap = cost(() -> solver.lapTime(vehicle), 20);
        double all = cost(() -> solver.derivatives(vehicle, names), 2);
        say(String.format(
                Locale.ROOT,
                "| %s | %s | %d | %d | %d | %.3f | %.3f | %.3f | `%s` | %.0f | %d |",
                Documents.circuit(circuit).name(),
                car.name(),
                names.size(),
                sorted.length + kinks,
                kinks,
                sorted[sorted.length / 2],
                sorted[(int) (0.95 * sorted.length)],
                most,
                worst,
                all / lap,
                2 * names.size()));
    }

    private static double value(Car car, String quantity) {
        return Conditions.isMeantBy(quantity) ? Conditions.STANDARD.value(quantity) : car.value(quantity);
    }

    /** Central difference of laps, s per unit; NaN where the quantity has not both sides. */
    private static double central(LapSolver solver, Car car, String quantity, double step) {
        try {
            double above = solver.lapTime(changed(car, quantity, step));
            return (above - solver.lapTime(changed(car, quantity, -step))) / (2 * step);
        } catch (LapwrightException endOfRange) {
            return Double.NaN;
        }
    }

    private static Vehicle changed(Car car, String quantity, double by) {
        return Conditions.isMeantBy(quantity)
                ? Vehicle.of(car, Conditions.STANDARD.with(quantity, Conditions.STANDARD.value(quantity) + by))
                : Vehicle.of(car.with(quantity, car.value(quantity) + by), Conditions.STANDARD);
    }

    /** Processor time of one call, the least of some rounds, ms. */
    private static double cost(Runnable call, int times) {
        ThreadMXBean clock = ManagementFactory.getThreadMXBean();
        double[] rounds = new double[ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            long before = clock.getCurrentThreadCpuTime();
            for (int i = 0; i < times; i++) {
                call.run();
            }
            rounds[round] = (clock.getCurrentThreadCpuTime() - before) / 1e6 / times;
        }
        return Arrays.stream(rounds).min().orElseThrow();
    }

    private static void say(String line) {
        System.out.println(line);
    }
}
