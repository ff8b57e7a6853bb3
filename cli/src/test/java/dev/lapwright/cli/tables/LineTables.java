package dev.lapwright.cli.tables;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Locale;

/**
 * Prints as Markdown what the line driven does to the nine demo laps: the lap time, and which rear wing and which final drive are best, on the
 * middle of the road, the smoothest line and the line that is fastest for the car as it stands. Uses the public API alone; run from the
 * top of the project, with the command built before:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/LineTables.java</pre>
 */
public final class LineTables {
    private static final List<String> LINES = List.of("middle", "smoothest", "fastest");

    private LineTables() {}

    /** Prints the table. */
    public static void main(String... arguments) {
        System.out.println("| car | circuit |" + heads("lap, s") + heads("best wing") + heads("best final drive"));
        System.out.println("|---|---|" + "---|".repeat(3 * LINES.size()));
        for (String name : List.of("gt-talvex", "touring-merrow", "student-pipit")) {
            for (String circuit : List.of("castelvane", "harrowmere", "skarnfell")) {
                Car car = Documents.car(name);
                Track road = Documents.circuit(circuit);
                LineSearch search = LineSearch.of(road, car, LineChoices.DEFAULT);
                List<Track> driven = List.of(
                        road,
                        search.smoothest().driven(),
                        search.fastest(Vehicle.of(car, Conditions.STANDARD)).driven());
                boolean student = name.equals("student-pipit");
                String drive = student ? "rear-sprocket" : "final-drive";
                String wing = student ? "rear-flap" : "rear-wing";
                StringBuilder row = new StringBuilder("| " + name + " | " + circuit + " |");
                driven.forEach(line -> row.append(String.format(Locale.ROOT, " %.3f |", time(car, line))));
                driven.forEach(
                        line -> row.append(' ').append(best(car, wing, line)).append(" |"));
                driven.forEach(
                        line -> row.append(' ').append(best(car, drive, line)).append(" |"));
                System.out.println(row);
            }
        }
    }

    private static String heads(String what) {
        StringBuilder text = new StringBuilder();
        LINES.forEach(
                line -> text.append(' ').append(what).append(", ").append(line).append(" |"));
        return text.toString();
    }

    /** The fastest setting, and in brackets from where to where the lap differs by nothing that counts. */
    private static String best(Car car, String adjustment, Track line) {
        LapSolver solver = LapSolver.on(line);
        List<Double> settings = car.adjustment(adjustment).legalSettings();
        double[] times = settings.stream()
                .mapToDouble(setting -> solver.lapTime(Vehicle.of(car.with(adjustment, setting), Conditions.STANDARD)))
                .toArray();
        int best = 0;
        for (int i = 1; i < times.length; i++) {
            best = times[i] < times[best] ? i : best;
        }
        int low = best;
        while (low > 0 && times[low - 1] - times[best] < LapTimeDifference.COUNTS) {
            low--;
        }
        int high = best;
        while (high + 1 < times.length && times[high + 1] - times[best] < LapTimeDifference.COUNTS) {
            high++;
        }
        String setting = text(settings.get(best));
        return low == high
                ? setting
                : setting + " (" + text(settings.get(low)) + " to " + text(settings.get(high)) + ")";
    }

    private static String text(double setting) {
        return setting == Math.rint(setting)
                ? String.valueOf((long) setting)
                : String.valueOf(Math.round(1000 * setting) / 1000.0);
    }

    private static double time(Car car, Track line) {
        return LapSolver.on(line).lapTime(Vehicle.of(car, Conditions.STANDARD));
    }
}
