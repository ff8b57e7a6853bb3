package dev.lapwright.cli.tables;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.study.lines.OwnLines;
import dev.lapwright.study.lines.OwnLinesResult;
import dev.lapwright.track.Track;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;

/**
 * Prints as Markdown what the line driven does to the nine demo laps, on the middle of the road, the smoothest line, the line that is fastest for
 * the car as it stands (held), and that which is found anew for each car (refreshed): first lap times, and which rear wing and which final drive
 * are best; then how far the choices on the other lines agree with the refreshed one; then how long each line takes to find. Takes some
 * minutes. Uses the public API alone; run from the top of the project, with the command built before:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/LineTables.java</pre>
 */
public final class LineTables {
    private static final List<String> LINES = List.of("middle", "smoothest", "held", "refreshed");
    private static final int REFRESHED = 3;

    private LineTables() {}

    /** A car at a circuit, and the lap times of all its settings of an adjustment, in the order of {@link #LINES}. */
    private record Ranked(String car, String circuit, String adjustment, List<Double> settings, double[][] times) {
        int best(int line) {
            int best = 0;
            for (int i = 1; i < settings.size(); i++) {
                best = times[line][i] < times[line][best] ? i : best;
            }
            return best;
        }

        /** What is lost on lines found anew by taking what is best on another, s. */
        double lost(int line) {
            return times[REFRESHED][best(line)] - times[REFRESHED][best(REFRESHED)];
        }

        /** Of the pairs of settings whose difference counts on lines found anew, those in the same order, and all. */
        int[] pairs(int line) {
            int same = 0;
            int all = 0;
            for (int i = 0; i < settings.size(); i++) {
                for (int k = 0; k < i; k++) {
                    double own = times[REFRESHED][i] - times[REFRESHED][k];
                    if (LapTimeDifference.counts(own)) {
                        all++;
                        same += Math.signum(times[line][i] - times[line][k]) == Math.signum(own) ? 1 : 0;
                    }
                }
            }
            return new int[] {same, all};
        }

        /** The fastest setting, and in brackets from where to where the lap differs by nothing that counts. */
        String choice(int line) {
            double[] of = times[line];
            int best = best(line);
            int low = best;
            while (low > 0 && of[low - 1] - of[best] < LapTimeDifference.COUNTS) {
                low--;
            }
            int high = best;
            while (high + 1 < of.length && of[high + 1] - of[best] < LapTimeDifference.COUNTS) {
                high++;
            }
            String setting = text(settings.get(best));
            return low == high
                    ? setting
                    : setting + " (" + text(settings.get(low)) + " to " + text(settings.get(high)) + ")";
        }
    }

    /** Prints the tables. */
    public static void main(String... arguments) {
        List<Ranked> wings = new ArrayList<>();
        List<Ranked> drives = new ArrayList<>();
        List<String> laps = new ArrayList<>();
        List<String> taken = new ArrayList<>();
        for (String name : List.of("gt-talvex", "touring-merrow", "student-pipit")) {
            for (String circuit : List.of("castelvane", "harrowmere", "skarnfell")) {
                Car car = Documents.car(name);
                Track road = Documents.circuit(circuit);
                Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
                LineSearch search = LineSearch.of(road, car, LineChoices.DEFAULT);
                search.fastest(vehicle);
                Timed<Line> smoothest = timed(search::smoothest);
                Timed<Line> fastest = timed(() -> search.fastest(vehicle));
                boolean student = name.equals("student-pipit");
                List<Track> driven = List.of(
                        road, smoothest.found().driven(), fastest.found().driven());
                Ranked wing = ranked(name, circuit, car, road, student ? "rear-flap" : "rear-wing", driven);
                wings.add(wing);
                drives.add(ranked(name, circuit, car, road, student ? "rear-sprocket" : "final-drive", driven));
                Car other = car.with(wing.adjustment(), wing.settings().get(wing.best(REFRESHED)));
                double refreshed = own(car, road, List.of(other)).first().lapTime();
                laps.add(times(car, driven) + seconds(refreshed));
                Timed<Line> anew =
                        timed(() -> search.from(fastest.found()).fastest(Vehicle.of(other, Conditions.STANDARD)));
                taken.add(String.format(
                        Locale.ROOT,
                        "| %s | %s | %.0f | %.2f | %.2f |",
                        name,
                        circuit,
                        1000 * smoothest.seconds(),
                        fastest.seconds(),
                        anew.seconds()));
            }
        }
        choices(wings, drives, laps);
        agreement(List.of(wings, drives));
        System.out.println();
        System.out.println("| car | circuit | smoothest, ms | fastest, s | refreshed from it, s |");
        System.out.println("|---|---|---|---|---|");
        taken.forEach(System.out::println);
    }

    private static void choices(List<Ranked> wings, List<Ranked> drives, List<String> laps) {
        System.out.println("| car | circuit |" + heads("lap, s") + heads("best wing") + heads("best final drive"));
        System.out.println("|---|---|" + "---|".repeat(3 * LINES.size()));
        for (int i = 0; i < wings.size(); i++) {
            StringBuilder row = new StringBuilder(
                    "| " + wings.get(i).car() + " | " + wings.get(i).circuit() + " |" + laps.get(i));
            for (Ranked ranked : List.of(wings.get(i), drives.get(i))) {
                for (int line = 0; line < LINES.size(); line++) {
                    row.append(' ').append(ranked.choice(line)).append(" |");
                }
            }
            System.out.println(row);
        }
    }

    private static void agreement(List<List<Ranked>> all) {
        System.out.println();
        StringBuilder heads = new StringBuilder("| car | circuit | of |");
        for (int line = 0; line < REFRESHED; line++) {
            heads.append(" lost by the choice on ")
                    .append(LINES.get(line))
                    .append(", s | pairs ranked alike on ")
                    .append(LINES.get(line))
                    .append(" |");
        }
        System.out.println(heads);
        System.out.println("|---|---|---|" + "---|".repeat(2 * REFRESHED));
        int[][] sums = new int[REFRESHED][2];
        double[] most = new double[REFRESHED];
        for (List<Ranked> adjustments : all) {
            for (Ranked ranked : adjustments) {
                StringBuilder row = new StringBuilder(
                        "| " + ranked.car() + " | " + ranked.circuit() + " | " + ranked.adjustment() + " |");
                for (int line = 0; line < REFRESHED; line++) {
                    int[] pairs = ranked.pairs(line);
                    sums[line][0] += pairs[0];
                    sums[line][1] += pairs[1];
                    most[line] = Math.max(most[line], ranked.lost(line));
                    row.append(String.format(Locale.ROOT, " %.3f | %d of %d |", ranked.lost(line), pairs[0], pairs[1]));
                }
                System.out.println(row);
            }
        }
        StringBuilder row = new StringBuilder("| all | most lost, all pairs | |");
        for (int line = 0; line < REFRESHED; line++) {
            row.append(String.format(Locale.ROOT, " %.3f | %d of %d |", most[line], sums[line][0], sums[line][1]));
        }
        System.out.println(row);
    }

    private static String heads(String what) {
        StringBuilder text = new StringBuilder();
        LINES.forEach(
                line -> text.append(' ').append(what).append(", ").append(line).append(" |"));
        return text.toString();
    }

    private static Ranked ranked(
            String name, String circuit, Car car, Track road, String adjustment, List<Track> driven) {
        List<Double> settings = car.adjustment(adjustment).legalSettings();
        List<Car> cars =
                settings.stream().map(setting -> car.with(adjustment, setting)).toList();
        double[][] times = new double[LINES.size()][];
        for (int line = 0; line < REFRESHED; line++) {
            LapSolver solver = LapSolver.on(driven.get(line));
            times[line] = cars.stream()
                    .mapToDouble(one -> solver.lapTime(Vehicle.of(one, Conditions.STANDARD)))
                    .toArray();
        }
        times[REFRESHED] = own(car, road, cars).others().stream()
                .mapToDouble(OwnLinesResult.OwnLap::lapTime)
                .toArray();
        return new Ranked(name, circuit, adjustment, settings, times);
    }

    private static OwnLinesResult own(Car car, Track road, List<Car> others) {
        return OwnLines.of(road, car, Conditions.STANDARD).against(others).run();
    }

    private static String times(Car car, List<Track> driven) {
        StringBuilder text = new StringBuilder();
        driven.forEach(line -> text.append(seconds(LapSolver.on(line).lapTime(Vehicle.of(car, Conditions.STANDARD)))));
        return text.toString();
    }

    private static String seconds(double time) {
        return String.format(Locale.ROOT, " %.3f |", time);
    }

    private static String text(double setting) {
        return setting == Math.rint(setting)
                ? String.valueOf((long) setting)
                : String.valueOf(Math.round(1000 * setting) / 1000.0);
    }

    /** What was found, and the processor's time it took, s: the median of five. */
    private record Timed<T>(T found, double seconds) {}

    private static <T> Timed<T> timed(Supplier<T> search) {
        double[] seconds = new double[5];
        T found = null;
        for (int i = 0; i < seconds.length; i++) {
            long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            found = search.get();
            seconds[i] = 1e-9 * (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - start);
        }
        Arrays.sort(seconds);
        return new Timed<>(found, seconds[2]);
    }
}
