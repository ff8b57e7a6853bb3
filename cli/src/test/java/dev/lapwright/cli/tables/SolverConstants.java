package dev.lapwright.cli.tables;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.surveys.ImportSource;
import dev.lapwright.surveys.SurveyFile;
import dev.lapwright.surveys.Surveys;
import dev.lapwright.track.Track;
import dev.lapwright.track.survey.ImportChoices;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.stream.Stream;
import javax.tools.ToolProvider;

/**
 * Prints, as the tables of docs/limits.md, what the solver's own constants are worth in lap time, and those of the road that an import finds: the
 * class is compiled with each of them changed. The solver drives the nine demo laps, and the same with front and with four driven wheels; on
 * roads the demo GT drives the imports of three demo files. Run from the top of the project, with the command built before; each takes some
 * minutes:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/SolverConstants.java</pre>
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/SolverConstants.java roads</pre>
 */
public final class SolverConstants {
    private static final String SELF = "cli/src/test/java/dev/lapwright/cli/tables/SolverConstants.java";
    private static final Path SOURCES = Path.of("core/src/main/java");
    private static final String[] CIRCUITS = {"harrowmere", "castelvane", "skarnfell"};
    private static final String[] CARS = {"gt-talvex", "touring-merrow", "student-pipit"};
    /** Shares of the drive at the front, %; the first stands for the car as it is. */
    private static final double[] SHARES = {Double.NaN, 100, 40};

    /** A constant, what it is, and what it is changed to. */
    private record Changed(String file, String name, String meaning, String... instead) {}

    private static final List<Changed> CONSTANTS = List.of(
            new Changed("lap/Propulsion", "BAND_SHARE", "width of a shift's band, of the speed", "0.03", "0.12"),
            new Changed("lap/Propulsion", "BAND_LEAST", "its least width, m/s", "0.3", "1.2"),
            new Changed(
                    "lap/AccelerationLimits",
                    "HARDLY_GAINING",
                    "acceleration below which a shift's cost fades, m/s²",
                    "0.1",
                    "0.4"),
            new Changed(
                    "lap/HeldGears", "WORTH_A_TRY", "loss at sight up to which a gear held is tried", "1.05", "1.2"),
            new Changed(
                    "lap/AccelerationLimits",
                    "FAR_FROM_LIMIT",
                    "share of the grip across from which more is looked for",
                    "0.55",
                    "0.75"),
            new Changed(
                    "lap/AccelerationLimits",
                    "PLAIN",
                    "growth of the use with braking that shows that there is no more, s²/m",
                    "0.015",
                    "0.06"),
            new Changed(
                    "lap/AccelerationLimits",
                    "TRIAL_STEP",
                    "most of a step between trials, what is left",
                    "0.7",
                    "0.9"),
            new Changed("lap/AccelerationLimits", "LEAST_TRIAL", "least step between trials, m/s²", "0.025", "0.1"),
            new Changed("lap/AccelerationLimits", "NARROWLY", "excess next to which there may be none", "0.025", "0.1"),
            new Changed("lap/AccelerationLimits", "FIRST_TRIAL", "first step beyond what was found, m/s²", "0.25", "1"),
            new Changed("lap/AccelerationLimits", "FIRST_GROWTH", "growth of the next ones", "0.35", "1"),
            new Changed("lap/AccelerationLimits", "GROWTH", "the same once a ridge has been come upon", "0.15", "0.6"),
            new Changed("lap/AccelerationLimits", "HOPELESS", "excess beyond which nothing is to be had", "0.5", "2"),
            new Changed(
                    "lap/AccelerationLimits", "PACE", "least step in which ridges are looked for, m/s²", "0.05", "0.2"),
            new Changed("lap/AccelerationLimits", "PARTS", "steps of it at the most", "12", "48"),
            new Changed("lap/AccelerationLimits", "BEYOND", "how far beyond what was found, m/s²", "0.5", "2"),
            new Changed(
                    "lap/IntervalIntegrator",
                    "SUDDEN",
                    "difference of stages from which on they may be unlike, m/s²",
                    "0.15",
                    "0.6"),
            new Changed("lap/IntervalIntegrator", "RIDGE", "fall of the use between them", "1e-4", "4e-4"),
            new Changed("lap/IntervalIntegrator", "SHORT", "cell up to which one step crosses it, m", "0.075", "0.3"),
            new Changed("lap/IntervalIntegrator", "LONGEST", "longest step across, m", "0.3", "1.2"));

    private static final List<Changed> OF_ROADS = List.of(
            new Changed("track/survey/Straights", "LENGTH", "mean length of straights, m", "50", "200"),
            new Changed("track/survey/Straights", "BEND_LENGTH", "mean length of bends, m", "40", "160"),
            new Changed("track/survey/Straights", "TELLS_ONCE", "length that tells one thing once, m", "7.5", "30"),
            new Changed("track/survey/Straights", "BENDS", "a bend's curvature over the circuit's", "1", "4"),
            new Changed("track/survey/Straights", "FIRST_SHARE", "share taken for straight at first", "0.2", "0.5"),
            new Changed("track/survey/Straights", "STRAIGHTEST", "curvature of the straightest, 1/m", "5e-5", "2e-4"),
            new Changed("track/survey/RoadFit", "SHARPENED", "rounds", "10", "20"),
            new Changed("track/survey/RoadFit", "FIRST_AVERAGE", "length of the first average, m", "10", "40"),
            new Changed("track/survey/RoadFit", "SHORTER", "share left of it by each round", "0.7", "0.9"),
            new Changed("track/survey/RoadFit", "LEAST_AVERAGE", "least length of it, m", "2.5", "10"),
            new Changed("track/survey/RoadFit", "CURVATURE_AVERAGE", "average of curvatures, m", "1.5", "6"),
            new Changed("track/survey/RoadFit", "FADES_OVER", "length over which curvature fades, m", "250", "1000"),
            new Changed("track/survey/RoadFit", "SMOOTHEST", "roughness of the smoothest place", "1e-8", "1e-6"),
            new Changed("track/survey/CornerCandidates", "LEAST_PEAK", "least peak of a corner", "0.075", "0.3"),
            new Changed("track/survey/CornerCandidates", "VALLEY", "valley between two corners", "0.5", "0.85"),
            new Changed("track/survey/PlainCorners", "LEAST_ERROR", "least error of a point, m", "3e-5", "1e-3"),
            new Changed("track/survey/PlainCorners", "CLOSE", "how well a lap closes, m", "0.005", "0.1"),
            new Changed("track/survey/PlainCorners", "CLOSE_TURN", "the same of its turning, rad", "2e-5", "1e-3"),
            new Changed("track/survey/PlainCorners", "LOGIT_SPREAD", "spread of the logit of shares", "1", "4"),
            new Changed("track/survey/PlainCorners", "SHORTEST", "shortest corner, m", "1", "5"),
            new Changed(
                    "track/survey/PlainCorners", "LEAST_TURNING", "least turning of a corner, rad", "0.005", "0.05"),
            new Changed("track/survey/PlainCorners", "GIVEN_UP", "squares a point at which it is given up", "5", "20"),
            new Changed("track/survey/PlainCorners", "STEPS", "most steps of a fit", "12", "50"),
            new Changed("track/survey/PlainCorners", "BETTER", "squares that are worth a step", "0.01", "0.5"),
            new Changed(
                    "track/survey/PlainCorners",
                    "WEAK",
                    "squares of a corner up to which it is tried without",
                    "15",
                    "60"),
            new Changed("track/survey/PlainRoad", "LEAST_SHARE", "least share of a transition", "0.04", "0.16"),
            new Changed("track/survey/PlainRoad", "STEP", "step of places, m", "1", "4"),
            new Changed("track/survey/RoadFit", "LARGE_WANDER", "wander that is unlikely, m", "1.5", "6"));

    private static final List<String> FILES =
            List.of("harrowmere-drawn.geojson", "harrowmere-receiver.gpx", "thornmere.geojson");

    private SolverConstants() {}

    public static void main(String[] args) throws IOException, InterruptedException {
        switch (args.length > 0 ? args[0] : "") {
            case "laps" -> drive();
            case "imports" -> driveOnImports();
            case "roads" -> roads();
            default -> solver();
        }
    }

    private static void roads() throws IOException, InterruptedException {
        double[] before = laps(null, "", "imports");
        System.out.println("| constant | is | instead | " + String.join(", s | ", FILES) + ", s |");
        System.out.println("|---|---|---|" + "---|".repeat(FILES.size()));
        for (Changed constant : OF_ROADS) {
            for (String instead : constant.instead()) {
                double[] after = laps(constant, instead, "imports");
                StringBuilder row = row(constant, instead);
                for (int i = 0; i < after.length; i++) {
                    row.append(String.format(Locale.ROOT, " %+.2f |", after[i] - before[i]));
                }
                System.out.println(row);
            }
        }
    }

    private static StringBuilder row(Changed constant, String instead) throws IOException {
        return new StringBuilder("| " + constant.meaning() + ", `" + constant.name() + "` | " + declared(constant)
                + " | " + instead + " |");
    }

    private static void driveOnImports() {
        Vehicle vehicle = Vehicle.of(Documents.car("gt-talvex"), Conditions.STANDARD);
        for (String name : FILES) {
            SurveyFile file = Surveys.readFile(Surveys.find(name), List.of(), false);
            ImportChoices choices = ImportChoices.circuit();
            Track track = ImportSource.of(file, choices, OptionalInt.empty())
                    .imported(name, choices)
                    .track();
            System.out.println(LapSolver.on(track).lapTime(vehicle));
        }
    }

    private static void solver() throws IOException, InterruptedException {
        double[] before = laps(null, "", "laps");
        System.out.println(
                "| constant | is | instead | demo laps, ms | front driven, ms | four driven, ms |\n|---|---|---|---|---|---|");
        for (Changed constant : CONSTANTS) {
            for (String instead : constant.instead()) {
                double[] after = laps(constant, instead, "laps");
                StringBuilder row = row(constant, instead);
                int each = before.length / SHARES.length;
                for (int s = 0; s < SHARES.length; s++) {
                    double most = 0;
                    for (int i = s * each; i < (s + 1) * each; i++) {
                        most = Math.max(most, 1000 * Math.abs(after[i] - before[i]));
                    }
                    row.append(String.format(Locale.ROOT, " %.2f |", most));
                }
                System.out.println(row);
            }
        }
    }

    private static void drive() {
        for (double share : SHARES) {
            for (String circuit : CIRCUITS) {
                LapSolver solver = LapSolver.on(Documents.circuit(circuit));
                for (String name : CARS) {
                    Car car = Documents.car(name);
                    if (!Double.isNaN(share)) {
                        car = car.with(Quantity.FRONT_DRIVE_SHARE, share)
                                .with(Quantity.POWER_LOCK_FRONT, car.value(Quantity.POWER_LOCK_REAR))
                                .with(Quantity.COAST_LOCK_FRONT, car.value(Quantity.COAST_LOCK_REAR))
                                .with(Quantity.PRELOAD_FRONT, car.value(Quantity.PRELOAD_REAR));
                    }
                    System.out.println(solver.lapTime(Vehicle.of(car, Conditions.STANDARD)));
                }
            }
        }
    }

    /** Lap times, s, of a solver with a constant changed, or as it is. */
    private static double[] laps(Changed changed, String instead, String driven)
            throws IOException, InterruptedException {
        Path built = Files.createTempDirectory("solver");
        try {
            if (changed != null) {
                build(changed, instead, built);
            }
            Process process = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-cp",
                            built.resolve("out") + java.io.File.pathSeparator + "cli/target/lapwright.jar",
                            SELF,
                            driven)
                    .redirectError(ProcessBuilder.Redirect.INHERIT)
                    .start();
            List<Double> times = new ArrayList<>();
            for (String line :
                    new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).split("\\R")) {
                times.add(Double.valueOf(line));
            }
            process.waitFor();
            return times.stream().mapToDouble(Double::doubleValue).toArray();
        } finally {
            try (Stream<Path> files = Files.walk(built)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(file);
                }
            }
        }
    }

    /** Compiles the one class anew beside those of the command: constants are folded within it. */
    private static void build(Changed changed, String instead, Path built) throws IOException {
        Path own = SOURCES.resolve("dev/lapwright/" + changed.file() + ".java");
        String declaration = changed.name() + " = " + declared(changed) + ";";
        Path copy = Files.createDirectories(built.resolve("src")).resolve(own.getFileName());
        Files.writeString(copy, Files.readString(own).replace(declaration, changed.name() + " = " + instead + ";"));
        String out = Files.createDirectories(built.resolve("out")).toString();
        int code = ToolProvider.getSystemJavaCompiler()
                .run(
                        null,
                        System.out,
                        System.err,
                        "-nowarn",
                        "-cp",
                        "cli/target/lapwright.jar",
                        "-d",
                        out,
                        copy.toString());
        if (code != 0) {
            throw new IllegalStateException("no compilation of " + changed);
        }
    }

    private static String declared(Changed changed) throws IOException {
        String source = Files.readString(SOURCES.resolve("dev/lapwright/" + changed.file() + ".java"));
        int at = source.indexOf(" " + changed.name() + " = ");
        if (at < 0) {
            throw new IllegalStateException("no constant " + changed);
        }
        at += changed.name().length() + 4;
        return source.substring(at, source.indexOf(';', at));
    }
}
