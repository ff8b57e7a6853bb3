package dev.lapwright.cli.tables;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;

/**
 * Prints as Markdown how processor time and allocated memory grow with stations, laps, quantities and adjustments, as exponents: the slope of
 * the logarithm of the one over that of the other. Uses the public API alone; run from the top of the project, with the command built before:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/ScalingTables.java</pre>
 */
public final class ScalingTables {
    private static final int ROUNDS = 4;
    private static final int WARM = 400;

    private ScalingTables() {}

    /** What one size costs. */
    private record Cost(double size, double seconds, double bytes) {}

    /** Prints them. */
    public static void main(String... ignored) {
        Car car = Documents.car("gt-talvex");
        Track track = Documents.circuit("castelvane");
        Conditions day = Conditions.STANDARD;
        Vehicle vehicle = Vehicle.of(car, day);
        LapSolver solver = LapSolver.on(track);
        for (int i = 0; i < WARM; i++) {
            solver.lapTime(vehicle);
        }
        System.out.println(
                "| what grows | from | to | processor ms, least | most | exponent of time | exponent of memory | allocated at most, kB |");
        System.out.println("|---|---|---|---|---|---|---|---|");
        row("stations of a lap", List.of(4, 2, 1), quarter -> {
            Stations stations = track.stations(StationSpacing.DEFAULT.scaled(0.25 * quarter));
            LapSolver finer = new LapSolver(stations);
            return cost(stations.s().length, () -> finer.lapTime(vehicle), 20);
        });
        row(
                "laps one after another",
                List.of(10, 40, 160),
                laps -> cost(
                        laps,
                        () -> {
                            for (int i = 0; i < laps; i++) {
                                solver.lapTime(vehicle);
                            }
                        },
                        1));
        List<String> names = new ArrayList<>(car.quantityNames());
        row(
                "quantities of one lap's derivatives",
                List.of(17, 34, 68, 136),
                count -> cost(count, () -> solver.derivatives(vehicle, names.subList(0, count)), 1));
        List<String> knobs = List.of("rear-wing", "rake", "ride-height", "final-drive", "rear-bar", "lock-under-drive");
        row(
                "adjustments of a search for the best setup",
                List.of(1, 2, 3, 6),
                count -> cost(
                        count,
                        () -> Optimisation.of(car, track, day)
                                .over(knobs.subList(0, count))
                                .run(StudyRun.onThreads(1)),
                        1));
    }

    private static void row(String what, List<Integer> sizes, IntFunction<Cost> cost) {
        List<Cost> all = sizes.stream().map(cost::apply).toList();
        Cost first = all.get(0);
        Cost last = all.get(all.size() - 1);
        System.out.println(String.format(
                Locale.ROOT,
                "| %s | %.0f | %.0f | %.2f | %.2f | %.2f | %.2f | %.0f |",
                what,
                first.size,
                last.size,
                1e3 * first.seconds,
                1e3 * last.seconds,
                slope(
                        all.stream().mapToDouble(Cost::size).toArray(),
                        all.stream().mapToDouble(Cost::seconds).toArray()),
                slope(
                        all.stream().mapToDouble(Cost::size).toArray(),
                        all.stream().mapToDouble(Cost::bytes).toArray()),
                last.bytes / 1024));
    }

    /** Slope of a straight line by least squares through logarithms. */
    private static double slope(double[] x, double[] y) {
        double n = x.length;
        double sx = 0;
        double sy = 0;
        double xx = 0;
        double xy = 0;
        for (int i = 0; i < n; i++) {
            double a = Math.log(x[i]);
            double b = Math.log(Math.max(y[i], 1e-12));
            sx += a;
            sy += b;
            xx += a * a;
            xy += a * b;
        }
        return (n * xy - sx * sy) / (n * xx - sx * sx);
    }

    /** Processor time of the process and memory of this thread for one call, the least of some rounds after one to warm up. */
    private static Cost cost(double size, Runnable call, int times) {
        var clock = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        var system = (com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        long thread = Thread.currentThread().getId();
        double seconds = Double.POSITIVE_INFINITY;
        double bytes = Double.POSITIVE_INFINITY;
        for (int round = 0; round <= ROUNDS; round++) {
            long began = clock.getCurrentThreadCpuTime();
            long allBegan = system.getProcessCpuTime();
            long held = clock.getThreadAllocatedBytes(thread);
            for (int i = 0; i < times; i++) {
                call.run();
            }
            double here = clock.getCurrentThreadCpuTime() - began;
            double all = system.getProcessCpuTime() - allBegan;
            // A study works on threads of its own; a process's clock is coarse, and counts what Java compiles.
            seconds = Math.min(seconds, (here > 0.5 * all ? here : all) / 1e9 / times);
            bytes = Math.min(bytes, (double) (clock.getThreadAllocatedBytes(thread) - held) / times);
        }
        return new Cost(size, seconds, bytes);
    }
}
