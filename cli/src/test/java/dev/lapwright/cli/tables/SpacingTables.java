package dev.lapwright.cli.tables;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.doubt.PlausibleCars;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Prints as Markdown what wider stations do to differences between settings on drawn cars: both ends of each adjustment against the car
 * as it stands. Uses the public API alone; run from the top of the project, with the command built before:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/SpacingTables.java</pre>
 */
public final class SpacingTables {
    private static final int DRAWS = 6;
    private static final double[] FACTORS = {2, 3, 4};
    private static final double MS = 1000;
    private static final double NANOSECONDS_PER_MS = 1e6;

    private SpacingTables() {}

    /** Prints them. */
    public static void main(String... ignored) {
        System.out.println(
                "| circuit | car | spacing | stations | processor ms a lap | over that at the default | difference off by,"
                        + " ms: median | 95 of 100 | most |");
        System.out.println("|---|---|---|---|---|---|---|---|---|");
        for (String circuit : List.of("harrowmere", "castelvane", "skarnfell")) {
            for (String name : List.of("gt-talvex", "touring-merrow", "student-pipit")) {
                Car car = Documents.car(name);
                Track road = Documents.circuit(circuit);
                Track line = LineSearch.of(road, car, LineChoices.DEFAULT)
                        .smoothest()
                        .driven();
                new Pair(road, car, line).print();
            }
        }
    }

    /** A car on a circuit. */
    private static final class Pair {
        private final Track road;
        private final Car stands;
        private final Track line;
        private final List<Car> settings = new ArrayList<>();
        private double cost;

        Pair(Track road, Car stands, Track line) {
            this.road = road;
            this.stands = stands;
            this.line = line;
            for (Adjustment adjustment : stands.adjustments()) {
                List<Double> legal = adjustment.legalSettings();
                settings.add(stands.with(adjustment.name(), legal.get(0)));
                settings.add(stands.with(adjustment.name(), legal.get(legal.size() - 1)));
            }
        }

        void print() {
            // The first time warms the machine up.
            differences(1);
            double[] usual = differences(1);
            double usualCost = cost;
            for (double factor : FACTORS) {
                double[] wider = differences(factor);
                double[] off = new double[usual.length];
                int count = 0;
                for (int i = 0; i < usual.length; i++) {
                    double one = MS * Math.abs(wider[i] - usual[i]);
                    if (!Double.isNaN(one)) {
                        off[count++] = one;
                    }
                }
                off = Arrays.copyOf(off, count);
                Arrays.sort(off);
                System.out.printf(
                        Locale.ROOT,
                        "| %s | %s | × %.0f | %d | %.2f | %.2f | %.2f | %.2f | %.2f |%n",
                        road.name(),
                        stands.name(),
                        factor,
                        line.stations(StationSpacing.DEFAULT.scaled(factor)).count(),
                        cost,
                        cost / usualCost,
                        off[count / 2],
                        off[count * 95 / 100],
                        off[count - 1]);
            }
        }

        /** Of each setting on each drawn car, s; NaN where there is no lap. */
        private double[] differences(double factor) {
            PlausibleCars cars = PlausibleCars.of(stands, Conditions.STANDARD);
            double[][] draws = cars.draws(DRAWS, 1);
            LapSolver solver = new LapSolver(line.stations(StationSpacing.DEFAULT.scaled(factor)));
            double[] differences = new double[DRAWS * settings.size()];
            long from = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            for (int i = 0; i < DRAWS; i++) {
                double before = time(solver, cars, stands, draws[i]);
                for (int j = 0; j < settings.size(); j++) {
                    differences[i * settings.size() + j] = time(solver, cars, settings.get(j), draws[i]) - before;
                }
            }
            long spent = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - from;
            cost = spent / NANOSECONDS_PER_MS / (DRAWS * (settings.size() + 1));
            return differences;
        }

        private static double time(LapSolver solver, PlausibleCars cars, Car car, double... draw) {
            try {
                return solver.lapTime(Vehicle.of(cars.car(car, draw), cars.day(Conditions.STANDARD, draw)));
            } catch (LapwrightException noLap) {
                return Double.NaN;
            }
        }
    }
}
