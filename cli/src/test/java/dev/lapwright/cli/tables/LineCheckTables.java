package dev.lapwright.cli.tables;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.lines.OwnLines;
import dev.lapwright.study.lines.OwnLinesResult;
import dev.lapwright.track.Track;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;

/**
 * Prints as Markdown how well cheaper ways tell what a change of the car is worth once the line is found anew: for the nine demo laps, changes of wing,
 * final drive and both. The yardstick is searched for to the end from the smoothest line and from each other's, in turn, twice over, or until nothing gains a tenth of
 * a millisecond. Takes some minutes. Uses the public API alone; run from the top of the project, with the command built before:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/LineCheckTables.java</pre>
 */
public final class LineCheckTables {
    private static final int MOST_ROUNDS = 2;
    private static final double NOTHING = 1e-4;

    private LineCheckTables() {}

    /** What a way says of one change beside the yardstick, and the processor's time it took. */
    private record Told(double error, double seconds) {}

    private static final Map<String, List<Told>> WAYS = new TreeMap<>();

    /** A car on a road, and the searches for its line. */
    private record Driven(Car car, Vehicle vehicle, LineSearch search) {
        static Driven of(Car car, Track road) {
            return new Driven(car, Vehicle.of(car, Conditions.STANDARD), LineSearch.of(road, car, LineChoices.DEFAULT));
        }

        double on(Line line) {
            return LapSolver.on(line.driven()).lapTime(vehicle);
        }

        Line from(Line line) {
            return search.from(line).fastest(vehicle);
        }
    }

    /** Prints the table. */
    public static void main(String... arguments) {
        int changes = 0;
        for (String name : List.of("gt-talvex", "touring-merrow", "student-pipit")) {
            for (String circuit : List.of("castelvane", "harrowmere", "skarnfell")) {
                Track road = Documents.circuit(circuit);
                Car car = Documents.car(name);
                boolean student = name.equals("student-pipit");
                String wing = student ? "rear-flap" : "rear-wing";
                String drive = student ? "rear-sprocket" : "final-drive";
                List<Car> others = new ArrayList<>();
                for (int step : new int[] {-2, 2}) {
                    stepped(car, wing, step, others);
                    stepped(car, drive, step, others);
                }
                stepped(others.get(0), drive, 1, others);
                Driven first = Driven.of(car, road);
                first.search().fastest(first.vehicle());
                for (Car other : others) {
                    changes++;
                    compare(name + " at " + circuit + " " + other.settings(), first, Driven.of(other, road), road);
                }
            }
        }
        System.out.println(
                "| way, " + changes + " changes | root mean square of the error, ms | most, ms | processor, s |");
        System.out.println("|---|---|---|---|");
        WAYS.forEach((way, told) -> System.out.printf(
                Locale.ROOT,
                "| %s | %.1f | %.1f | %.2f |%n",
                way.substring(2),
                1e3
                        * Math.sqrt(told.stream()
                                .mapToDouble(one -> one.error() * one.error())
                                .average()
                                .orElseThrow()),
                1e3
                        * told.stream()
                                .mapToDouble(one -> Math.abs(one.error()))
                                .max()
                                .orElseThrow(),
                told.stream().mapToDouble(Told::seconds).average().orElseThrow()));
    }

    private static void stepped(Car car, String adjustment, int step, List<Car> to) {
        List<Double> legal = car.adjustment(adjustment).legalSettings();
        int here = 0;
        for (int i = 1; i < legal.size(); i++) {
            here = Math.abs(legal.get(i) - car.setting(adjustment))
                            < Math.abs(legal.get(here) - car.setting(adjustment))
                    ? i
                    : here;
        }
        int there = here + step * Math.max(1, legal.size() / 13);
        if (there >= 0 && there < legal.size()) {
            to.add(car.with(adjustment, legal.get(there)));
        }
    }

    private static void compare(String what, Driven first, Driven other, Track road) {
        Line smoothest = first.search().smoothest();
        double[] seconds = new double[1];
        Line own = timed(() -> first.search().fastest(first.vehicle()), seconds);
        double search = seconds[0];
        double before = first.on(own);
        Line anew = timed(() -> other.search().fastest(other.vehicle()), seconds);
        double again = seconds[0];
        Line from = timed(() -> other.from(own), seconds);
        double further = seconds[0];
        // The yardstick.
        Line a = quicker(first, own, first.from(anew));
        Line b = quicker(other, anew, from);
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double sum = first.on(a) + other.on(b);
            a = quicker(first, quicker(first, a, first.from(b)), first.from(a));
            b = quicker(other, quicker(other, b, other.from(a)), other.from(b));
            if (first.on(a) + other.on(b) > sum - NOTHING) {
                break;
            }
        }
        double worth = other.on(b) - first.on(a);
        told("1 on the smoothest line", other.on(smoothest) - first.on(smoothest) - worth, 0);
        double held = other.on(own) - before;
        told("2 on the fastest line of the car as it stands, held", held - worth, search);
        double back = other.on(from) - first.on(from);
        told("3 held, mean of both cars' lines", 0.5 * (held + back) - worth, search + further);
        told("4 each on a line sought from the smoothest", other.on(anew) - before - worth, search + again);
        Line roughly = timed(() -> other.search().from(own).roughly().fastest(other.vehicle()), seconds);
        told("6 the same roughly", other.on(roughly) - before - worth, search + seconds[0]);
        told("5 the other car's line sought from that of the first", other.on(from) - before - worth, search + further);
        OwnLinesResult check = timed(
                () -> OwnLines.of(road, first.car(), Conditions.STANDARD)
                        .against(List.of(other.car()))
                        .run(StudyRun.onThreads(1)),
                seconds);
        told(
                "7 as it is checked: roughly, and the first once more from there",
                check.difference(0) - worth,
                seconds[0]);
        System.err.printf(
                Locale.ROOT, "%s worth %.3f held %.3f checked %.3f%n", what, worth, held, check.difference(0));
    }

    private static Line quicker(Driven driven, Line one, Line two) {
        return driven.on(two) < driven.on(one) ? two : one;
    }

    private static void told(String way, double error, double seconds) {
        WAYS.computeIfAbsent(way, none -> new ArrayList<>()).add(new Told(error, seconds));
    }

    private static <T> T timed(Supplier<T> work, double[] seconds) {
        long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        T found = work.get();
        seconds[0] = 1e-9 * (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - start);
        return found;
    }
}
