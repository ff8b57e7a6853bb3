package dev.lapwright.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.LapSolver;
import java.io.File;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.lang.module.ModuleDescriptor;
import java.lang.module.ModuleFinder;
import java.lang.module.ModuleReference;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.spi.ToolProvider;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The modules as a stranger meets them: compiled against and run, on the module path and on the class path. */
@Tag("heavy")
class ModulePathTest {
    private static final long PATIENCE_S = 120;

    /** The libraries that come along with a published module; those of the tests stay away from the module path. */
    private static final List<String> LIBRARIES = List.of(
            "commons-math3-",
            "jackson-core-",
            "commons-csv-",
            "commons-io-",
            "commons-codec-",
            "GeographicLib-Java-",
            "jfreechart-",
            "picocli-",
            "jmustache-");

    private static final List<String> MODULES = List.of("core", "shared", "tracks-demo", "charts", "cli");

    private static final String THREE_LINES = """
            package stranger;

            import dev.lapwright.car.*;
            import dev.lapwright.documents.Documents;
            import dev.lapwright.lap.*;
            import dev.lapwright.track.Track;

            public class Stranger {
                public static void main(String[] arguments) {
                    Car car = Documents.car("gt-talvex");
                    Track track = Documents.circuit("harrowmere");
                    Lap lap = LapSolver.lap(car, track, Conditions.STANDARD);
                    System.out.println(lap.time());
                }
            }
            """;

    @TempDir
    private Path folder;

    @Test
    void aStrangersModuleDrivesALap() throws Exception {
        compile(
                List.of("-p", path()),
                source(
                        "module-info.java",
                        "module stranger { requires dev.lapwright.shared; requires dev.lapwright.demo; }"),
                source("stranger/Stranger.java", THREE_LINES));
        assertThat(java(
                        "-p",
                        path() + File.pathSeparator + folder.resolve("classes"),
                        "-m",
                        "stranger/stranger.Stranger"))
                .isEqualTo(lapTime());
    }

    @Test
    void aStrangersClassDrivesALap() throws Exception {
        compile(List.of("-cp", path()), source("stranger/Stranger.java", THREE_LINES));
        assertThat(java("-cp", path() + File.pathSeparator + folder.resolve("classes"), "stranger.Stranger"))
                .isEqualTo(lapTime());
    }

    @Test
    void aStrangersModuleDrawsAChart() throws Exception {
        compile(
                List.of("-p", path()),
                source(
                        "module-info.java",
                        "module stranger { requires dev.lapwright.charts; requires dev.lapwright.shared; requires"
                                + " dev.lapwright.demo; }"),
                source(
                        "stranger/Stranger.java",
                        THREE_LINES.replace(
                                "System.out.println(lap.time());",
                                "System.out.println(new String(dev.lapwright.charts.ChartImage.svg("
                                        + "dev.lapwright.charts.lap.SpeedTrace.of(lap, dev.lapwright.charts.ChartStyle.STANDARD),"
                                        + " dev.lapwright.charts.lap.SpeedTrace.SIZE), java.nio.charset.StandardCharsets.UTF_8));")));
        assertThat(java(
                        "-p",
                        path() + File.pathSeparator + folder.resolve("classes"),
                        "-m",
                        "stranger/stranger.Stranger"))
                .startsWith("<svg")
                .endsWith("</svg>");
    }

    @Test
    void theCommandRunsAsAModule() throws Exception {
        assertThat(java(
                        "-p",
                        path(),
                        "-m",
                        "dev.lapwright.cli/dev.lapwright.cli.Main",
                        "lap",
                        "gt-talvex",
                        "harrowmere"))
                .startsWith("Talvex GT at Harrowmere");
    }

    @Test
    void everyPackageOfALibraryIsExportedButItsNumerics() {
        Set<String> exported = new TreeSet<>();
        Set<String> there = new TreeSet<>();
        for (ModuleReference module : ModuleFinder.of(paths()).findAll()) {
            ModuleDescriptor descriptor = module.descriptor();
            // The command is no library.
            if (descriptor.name().startsWith("dev.lapwright.")
                    && !descriptor.name().equals("dev.lapwright.cli")) {
                descriptor.exports().stream()
                        .filter(export -> !export.isQualified())
                        .forEach(export -> exported.add(export.source()));
            }
        }
        for (var type : House.classes()) {
            if (!type.getPackageName().startsWith("dev.lapwright.cli") && !House.isHidden(type.getPackageName())) {
                there.add(type.getPackageName());
            }
        }
        assertThat(exported).isEqualTo(there);
    }

    private static String lapTime() {
        return Double.toString(
                LapSolver.lap(Documents.car("gt-talvex"), Documents.circuit("harrowmere"), Conditions.STANDARD)
                        .time());
    }

    private Path source(String name, String text) throws IOException {
        Path file = folder.resolve("source").resolve(name);
        Files.createDirectories(file.getParent());
        return Files.writeString(file, text);
    }

    private void compile(List<String> options, Path... sources) {
        List<String> arguments = new ArrayList<>(options);
        arguments.addAll(List.of("-d", folder.resolve("classes").toString()));
        Stream.of(sources).map(Path::toString).forEach(arguments::add);
        StringWriter messages = new StringWriter();
        PrintWriter writer = new PrintWriter(messages, true);
        int code = ToolProvider.findFirst("javac").orElseThrow().run(writer, writer, arguments.toArray(String[]::new));
        assertThat(code).as(messages.toString()).isZero();
    }

    private static String java(String... arguments) throws Exception {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.add("-Djava.awt.headless=true");
        command.addAll(List.of(arguments));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().keySet().removeIf(name -> name.startsWith("JAVA_") || name.equals("JDK_JAVA_OPTIONS"));
        Process process = builder.start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(PATIENCE_S, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as(out).isZero();
        return out.strip();
    }

    private static String path() {
        return Stream.of(paths()).map(Path::toString).collect(Collectors.joining(File.pathSeparator));
    }

    /** Our modules as folders of classes or jars, whichever this build has, and the libraries they need. */
    private static Path[] paths() {
        String classPath = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        return Stream.of(classPath.split(File.pathSeparator))
                .map(Path::of)
                .filter(ModulePathTest::isOursOrALibraryOfOurs)
                .toArray(Path[]::new);
    }

    private static boolean isOursOrALibraryOfOurs(Path entry) {
        String name = entry.getFileName().toString();
        boolean ours = name.endsWith(".jar")
                ? MODULES.stream().anyMatch(module -> name.equals("lapwright-" + module + ".jar"))
                : name.equals("classes");
        return ours || LIBRARIES.stream().anyMatch(name::startsWith);
    }
}
