package dev.lapwright.cli.tables;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javax.tools.ToolProvider;

/**
 * Prints, as the table of docs/limits.md, what the solver's own constants are worth in lap time: the solver is compiled with each of them
 * changed, and drives the nine demo laps, and the same with front and with four driven wheels. Run from the top of the project, with the
 * command built before; it takes some minutes:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/SolverConstants.java</pre>
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
            new Changed("Propulsion", "BAND_SHARE", "width of a shift's band, of the speed", "0.03", "0.12"),
            new Changed("Propulsion", "BAND_LEAST", "its least width, m/s", "0.3", "1.2"),
            new Changed(
                    "AccelerationLimits",
                    "HARDLY_GAINING",
                    "acceleration below which a shift's cost fades, m/s²",
                    "0.1",
                    "0.4"),
            new Changed("HeldGears", "WORTH_A_TRY", "loss at sight up to which a gear held is tried", "1.05", "1.2"),
            new Changed(
                    "AccelerationLimits",
                    "FAR_FROM_LIMIT",
                    "share of the grip across from which more is looked for",
                    "0.6",
                    "0.8"),
            new Changed(
                    "AccelerationLimits",
                    "PLAIN",
                    "growth of the use that shows that there is no more, s²/m",
                    "0.015",
                    "0.06"),
            new Changed(
                    "AccelerationLimits", "TRIAL_STEP", "most of a step between trials, what is left", "0.7", "0.9"),
            new Changed(
                    "AccelerationLimits", "LEAST_TRIAL", "least step between trials of braking, m/s²", "0.025", "0.1"),
            new Changed("AccelerationLimits", "NARROWLY", "excess next to which there may be none", "0.005", "0.02"),
            new Changed(
                    "AccelerationLimits",
                    "LEAST_DRIVE_TRIAL",
                    "least step between trials of drive, m/s²",
                    "0.1",
                    "0.4"),
            new Changed(
                    "AccelerationLimits",
                    "MORE_DRIVE",
                    "what the engine has left where more drive is looked for, m/s²",
                    "0.25",
                    "1"),
            new Changed("AccelerationLimits", "MOST_MORE", "how far beyond the drive found, m/s²", "2", "8"),
            new Changed(
                    "IntervalIntegrator",
                    "SUDDEN",
                    "difference of stages from which on they may be unlike, m/s²",
                    "0.15",
                    "0.6"),
            new Changed("IntervalIntegrator", "RIDGE", "fall of the use between them", "1e-4", "4e-4"),
            new Changed("IntervalIntegrator", "SHORT", "cell up to which one step crosses it, m", "0.075", "0.3"),
            new Changed("IntervalIntegrator", "LONGEST", "longest step across, m", "0.3", "1.2"));

    private SolverConstants() {}

    public static void main(String[] args) throws IOException, InterruptedException {
        if (args.length > 0) {
            drive();
            return;
        }
        double[] before = laps(null, "");
        System.out.println(
                "| constant | is | instead | demo laps, ms | front driven, ms | four driven, ms |\n|---|---|---|---|---|---|");
        for (Changed constant : CONSTANTS) {
            for (String instead : constant.instead()) {
                double[] after = laps(constant, instead);
                StringBuilder row = new StringBuilder("| " + constant.meaning() + ", `" + constant.name() + "` | "
                        + declared(constant) + " | " + instead + " |");
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
    private static double[] laps(Changed changed, String instead) throws IOException, InterruptedException {
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
                            "laps")
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
        Path own = SOURCES.resolve("dev/lapwright/lap/" + changed.file() + ".java");
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
        String source = Files.readString(SOURCES.resolve("dev/lapwright/lap/" + changed.file() + ".java"));
        int at = source.indexOf(" " + changed.name() + " = ");
        if (at < 0) {
            throw new IllegalStateException("no constant " + changed);
        }
        at += changed.name().length() + 4;
        return source.substring(at, source.indexOf(';', at));
    }
}
