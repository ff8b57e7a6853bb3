package dev.lapwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The launchers, held to one table of what they say and how they end. {@code lapwright} is run, with programs in place of Java
 * and Maven that do at once what those take a minute for; {@code lapwright.cmd} is only read: nothing here can run it, so that
 * it is tried by hand on Windows.
 */
class LauncherTest {
    private static final Path TOP = Path.of("").toAbsolutePath().getParent();
    private static final long PATIENCE_S = 120;
    private static final String LEFT_OUT = "…";

    /** Says what it was given and how long the command is that it starts. */
    private static final String JAVA = """
            #!/bin/sh
            before=
            for word; do
                [ "$before" != -jar ] || jar=$word
                before=$word
            done
            [ -z "$jar" ] || echo "started $(cat "$jar") in ${LC_ALL:-no locale}: $before"
            """;

    /** Counts its builds. The command appears in two halves, two seconds apart where that is asked for. */
    private static final String MAVEN = """
            #!/bin/sh
            echo build >>"$PWD/builds"
            [ ! -f "$PWD/broken" ] || { echo "a source is broken"; exit 1; }
            for word; do
                case $word in
                    -Dbuild.folder=*) folder=cli/${word#*=} ;;
                esac
            done
            mkdir -p "$folder"
            printf half >"$folder/lapwright.jar"
            [ ! -f "$PWD/slow" ] || sleep 2
            printf whole >"$folder/lapwright.jar"
            """;

    @TempDir
    private Path folder;

    private Path home;
    private Path tools;

    /** A line of the table: the message that both launchers have, and whether that of Windows has the case at all. */
    record Case(String name, int code, boolean onWindows, String message) {
        /** What stands between the parts that differ from run to run. */
        List<String> fixedParts() {
            return Stream.of(message.split(LEFT_OUT))
                    .filter(part -> !part.isBlank())
                    .toList();
        }

        Pattern pattern() {
            List<String> parts = new ArrayList<>();
            for (String part : message.split(LEFT_OUT, -1)) {
                parts.add(Pattern.quote(part));
            }
            return Pattern.compile(String.join(".*", parts));
        }

        @Override
        public String toString() {
            return name;
        }
    }

    static List<Case> cases() throws IOException {
        List<Case> cases = new ArrayList<>();
        for (String line : Files.readAllLines(Path.of("src", "test", "resources", "launcher-cases.txt"))) {
            if (!line.isBlank() && !line.startsWith("#")) {
                String[] cells = line.split("\\|", -1);
                cases.add(new Case(
                        cells[0].strip(),
                        Integer.parseInt(cells[1].strip()),
                        cells[2].strip().equals("yes"),
                        cells[3].strip()));
            }
        }
        return cases;
    }

    private static Case named(String name) throws IOException {
        return cases().stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no case '" + name + "' in the table"));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void bothLaunchersHaveTheMessage(Case one) throws IOException {
        String unix = Files.readString(TOP.resolve("lapwright"));
        // A caret takes a sign's special meaning.
        String windows = Files.readString(TOP.resolve("lapwright.cmd")).replace("^", "");
        assertThat(one.fixedParts()).allSatisfy(part -> {
            assertThat(unix).contains(part);
            if (one.onWindows()) {
                assertThat(windows).contains(part);
            }
        });
    }

    @BeforeEach
    void aCheckoutAndItsTools() throws IOException {
        home = checkout(folder.resolve("home"));
        tools = Files.createDirectory(folder.resolve("tools"));
        jdk("jdk", "17.0.9");
        program(Files.createDirectory(tools.resolve("maven")).resolve("mvn"), MAVEN);
    }

    private static Path checkout(Path place) throws IOException {
        Files.createDirectories(place.resolve("cli/src/main"));
        Files.writeString(place.resolve("pom.xml"), "<project/>");
        Files.writeString(place.resolve("cli/src/main/Main.java"), "class Main {}");
        program(place.resolve("lapwright"), Files.readString(TOP.resolve("lapwright")));
        // All sources are older than any build.
        try (Stream<Path> all = Files.walk(place)) {
            for (Path one : all.toList()) {
                Files.setLastModifiedTime(one, FileTime.from(Instant.now().minusSeconds(60)));
            }
        }
        return place;
    }

    private void jdk(String name, String version) throws IOException {
        Path bin = Files.createDirectories(tools.resolve(name).resolve("bin"));
        Files.writeString(bin.resolveSibling("release"), "JAVA_VERSION=\"" + version + "\"\n");
        program(bin.resolve("java"), JAVA);
        program(bin.resolve("javac"), "#!/bin/sh\n");
        program(bin.resolve("jar"), "#!/bin/sh\n[ \"$(cat \"$2\")\" = whole ]\n");
    }

    private static void program(Path file, String text) throws IOException {
        Files.writeString(file, text);
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
    }

    private record Ended(int code, String out, String err) {
        void says(Case one) {
            assertThat(err).containsPattern(one.pattern());
            assertThat(code).isEqualTo(one.code());
        }
    }

    private final Map<String, String> settings = new HashMap<>();

    private Process start(String... arguments) throws IOException {
        List<String> command =
                new ArrayList<>(List.of("/bin/sh", home.resolve("lapwright").toString()));
        command.addAll(List.of(arguments));
        ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile());
        Map<String, String> environment = builder.environment();
        environment
                .keySet()
                .removeIf(name -> name.startsWith("LC_") || name.startsWith("JAVA_") || name.equals("LANG"));
        environment.put("LANG", "C.UTF-8");
        environment.put("JAVA_HOME", tools.resolve("jdk").toString());
        environment.put("PATH", tools.resolve("maven") + File.pathSeparator + "/usr/bin:/bin");
        environment.putAll(settings);
        builder.redirectOutput(Files.createTempFile(folder, "out", "").toFile());
        builder.redirectError(Files.createTempFile(folder, "err", "").toFile());
        Process process = builder.start();
        streams.put(process, builder);
        return process;
    }

    private final Map<Process, ProcessBuilder> streams = new HashMap<>();

    private Ended end(Process process) throws IOException, InterruptedException {
        assertThat(process.waitFor(PATIENCE_S, TimeUnit.SECONDS)).as("it ends").isTrue();
        ProcessBuilder builder = streams.get(process);
        return new Ended(
                process.exitValue(),
                Files.readString(builder.redirectOutput().file().toPath(), StandardCharsets.UTF_8),
                Files.readString(builder.redirectError().file().toPath(), StandardCharsets.UTF_8));
    }

    private Ended run(String... arguments) throws IOException, InterruptedException {
        return end(start(arguments));
    }

    private Path store() {
        return home.resolve("target/launcher");
    }

    private long builds() throws IOException {
        Path builds = home.resolve("builds");
        return Files.exists(builds) ? Files.readAllLines(builds).size() : 0;
    }

    private static Path lockOf(Path store, String... owner) throws IOException {
        Path lock = Files.createDirectories(store.resolve("lock"));
        if (owner.length > 0) {
            Files.write(lock.resolve("owner"), List.of(owner));
        }
        return lock;
    }

    private static String machine() throws IOException {
        return new String(
                        new ProcessBuilder("uname", "-n")
                                .start()
                                .getInputStream()
                                .readAllBytes(),
                        StandardCharsets.UTF_8)
                .strip();
    }

    @Test
    void theFirstStartBuildsAndTheSecondDoesNot() throws Exception {
        Ended first = run("lap");
        first.says(named("first use"));
        assertThat(first.out()).startsWith("started whole").endsWith(": lap\n");
        Ended second = run("lap");
        assertThat(second.err()).isEmpty();
        assertThat(second.out()).startsWith("started whole");
        assertThat(builds()).isEqualTo(1);
        // Nothing is left but the command, its stamp and the quick start.
        try (Stream<Path> left = Files.list(store())) {
            assertThat(left.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder("lapwright.jar", "stamp", "lapwright-17.0.9.jsa");
        }
        try (Stream<Path> left = Files.list(home.resolve("cli/target"))) {
            assertThat(left).isEmpty();
        }
    }

    @Test
    void ofTwoFirstStartsOneBuildsAndTheOtherWaits() throws Exception {
        Files.createFile(home.resolve("slow"));
        List<Process> both = List.of(start("lap"), start("show"));
        List<Ended> ended = List.of(end(both.get(0)), end(both.get(1)));
        assertThat(builds()).isEqualTo(1);
        assertThat(ended).allSatisfy(one -> {
            assertThat(one.code()).isZero();
            assertThat(one.out()).startsWith("started whole");
        });
        assertThat(ended.stream().map(Ended::err).toList())
                .anySatisfy(err ->
                        assertThat(err).containsPattern(named("another build").pattern()));
    }

    @Test
    void aTornCommandIsBuiltAgain() throws Exception {
        run();
        Files.writeString(store().resolve("lapwright.jar"), "wh");
        Ended healed = run();
        healed.says(named("damaged"));
        assertThat(healed.out()).startsWith("started whole");
        assertThat(builds()).isEqualTo(2);
    }

    @Test
    void aChangeThatLeavesTheSizeIsSeenByTheTime() throws Exception {
        run();
        Files.writeString(store().resolve("lapwright.jar"), "while");
        Files.setLastModifiedTime(
                store().resolve("lapwright.jar"), FileTime.from(Instant.now().plusSeconds(5)));
        Ended healed = run();
        healed.says(named("damaged"));
        assertThat(healed.out()).startsWith("started whole");
    }

    @Test
    void aCommandWithoutItsStampIsBuiltAgain() throws Exception {
        run();
        Files.delete(store().resolve("stamp"));
        run().says(named("damaged"));
        assertThat(builds()).isEqualTo(2);
    }

    @Test
    void aChangedSourceIsBuiltAgain() throws Exception {
        run();
        Files.setLastModifiedTime(
                home.resolve("cli/src/main/Main.java"),
                FileTime.from(Instant.now().plusSeconds(5)));
        run().says(named("changed"));
    }

    @Test
    void whatMavenBuiltByHandIsTakenOver() throws Exception {
        Path ready = Files.createDirectories(home.resolve("cli/target")).resolve("lapwright.jar");
        Files.writeString(ready, "whole");
        Ended ended = run();
        assertThat(ended.err()).isEmpty();
        assertThat(ended.out()).startsWith("started whole");
        assertThat(builds()).isZero();
    }

    @Test
    void halfACommandOfMavensIsNot() throws Exception {
        Path ready = Files.createDirectories(home.resolve("cli/target")).resolve("lapwright.jar");
        Files.writeString(ready, "half");
        assertThat(run().out()).startsWith("started whole");
        assertThat(builds()).isEqualTo(1);
    }

    @Test
    void aLockOfAnEndedProcessIsTakenAway() throws Exception {
        Process ended = new ProcessBuilder("true").start();
        ended.waitFor();
        lockOf(store(), Long.toString(ended.pid()), machine(), "long ago", "1");
        assertThat(run().out()).startsWith("started whole");
    }

    /** The test's own process lives, but did not begin when the lock says. */
    @Test
    void aLockWithTheNumberOfALaterProcessIsTakenAway() throws Exception {
        lockOf(store(), Long.toString(ProcessHandle.current().pid()), machine(), "long ago", "1");
        assertThat(run().out()).startsWith("started whole");
    }

    @Test
    @Tag("long")
    void aLockThatNamesNobodyIsTakenAwayAfterAWhile() throws Exception {
        lockOf(store());
        Ended ended = run();
        assertThat(ended.out()).startsWith("started whole");
        assertThat(ended.err())
                .containsPattern(named("another build").pattern())
                .doesNotContain("owner");
    }

    @Test
    void aTimeToWaitThatIsNoNumberIsRefused() throws Exception {
        settings.put("LAPWRIGHT_BUILD_WAIT_S", "a while");
        run().says(named("no seconds"));
    }

    /** As in {@code lapwright.cmd}, which leaves for the start before it looks at the time. */
    @Test
    void unpackedFromAnArchiveThereIsNothingToWaitFor() throws Exception {
        Files.delete(home.resolve("pom.xml"));
        Files.writeString(Files.createDirectory(home.resolve("lib")).resolve("lapwright.jar"), "whole");
        settings.put("LAPWRIGHT_BUILD_WAIT_S", "a while");
        Ended ended = run();
        assertThat(ended.code()).as(ended.err()).isZero();
        assertThat(ended.out()).startsWith("started whole");
        String windows = Files.readString(TOP.resolve("lapwright.cmd"));
        assertThat(windows.indexOf("lapwright.jar\" goto start"))
                .isPositive()
                .isLessThan(windows.indexOf("delims=0123456789"));
    }

    /** Of another machine's processes nothing is known: wait, then say what to do. */
    @Test
    void aBuildThatNeverEndsIsGivenUpWithARemedy() throws Exception {
        lockOf(store(), "1", "elsewhere", "2026-11-28 10:00:00", "1");
        settings.put("LAPWRIGHT_BUILD_WAIT_S", "2");
        Ended ended = run();
        ended.says(named("given up"));
        assertThat(ended.err())
                .containsPattern(named("another build").pattern())
                .contains("2026-11-28 10:00:00");
        assertThat(store().resolve("lock")).isDirectory();
    }

    @Test
    void aKilledBuildLeavesNothingThatStaysInTheWay() throws Exception {
        Files.createFile(home.resolve("slow"));
        Process killed = start();
        while (!Files.exists(store().resolve("lock/log"))) {
            TimeUnit.MILLISECONDS.sleep(20);
        }
        killed.destroyForcibly().waitFor();
        assertThat(run().out()).startsWith("started whole");
        try (Stream<Path> left = Files.list(home.resolve("cli/target"))) {
            assertThat(left).isEmpty();
        }
    }

    @Test
    void aFailedBuildShowsItsMessages() throws Exception {
        Files.createFile(home.resolve("broken"));
        Ended ended = run();
        ended.says(named("failed"));
        assertThat(ended.err()).contains("a source is broken");
        assertThat(store().resolve("lock")).doesNotExist();
    }

    @Test
    void withoutMavenItSaysSo() throws Exception {
        Files.delete(tools.resolve("maven/mvn"));
        settings.put("PATH", toolsOf("sed", "cut", "find", "head", "mkdir", "readlink", "cat", "uname", "wc"));
        run().says(named("no Maven"));
    }

    /** A folder with these programs alone. */
    private String toolsOf(String... names) throws IOException {
        Path bin = Files.createDirectory(folder.resolve("few"));
        for (String name : names) {
            Path there = Stream.of("/usr/bin", "/bin")
                    .map(place -> Path.of(place, name))
                    .filter(Files::isExecutable)
                    .findFirst()
                    .orElseThrow();
            program(bin.resolve(name), "#!/bin/sh\nexec " + there + " \"$@\"\n");
        }
        return bin.toString();
    }

    @Test
    void anOldJavaIsNamed() throws Exception {
        jdk("jdk", "11.0.20");
        settings.put("PATH", toolsOf("sed", "readlink", "cat"));
        Ended ended = run();
        ended.says(named("old Java"));
        assertThat(ended.err()).contains("is Java 11.0.20");
    }

    @Test
    void withoutJavaItSaysSo() throws Exception {
        settings.put("JAVA_HOME", "");
        settings.put("PATH", toolsOf("sed", "readlink", "cat"));
        run().says(named("no Java"));
    }

    @Test
    void aJavaWithoutACompilerCannotBuild() throws Exception {
        Files.delete(tools.resolve("jdk/bin/javac"));
        run().says(named("no compiler"));
    }

    @Test
    void withoutSourcesThereIsNothingToBuild() throws Exception {
        Files.delete(home.resolve("pom.xml"));
        run().says(named("no sources"));
    }

    @Test
    void aCheckoutThatCannotBeWrittenToIsNamed() throws Exception {
        // A file in the way of the folder stops even a user who may write anywhere.
        Files.createFile(home.resolve("target"));
        run().says(named("not writable"));
    }

    @Test
    void aCheckoutThatCannotBeWrittenToStartsWhatIsThere() throws Exception {
        run();
        Files.setLastModifiedTime(
                home.resolve("cli/src/main/Main.java"),
                FileTime.from(Instant.now().plusSeconds(5)));
        Files.delete(tools.resolve("maven/mvn"));
        settings.put("PATH", toolsOf("sed", "cut", "find", "head", "mkdir", "readlink", "cat", "uname", "wc"));
        Ended ended = run();
        ended.says(named("changed, not built"));
        assertThat(ended.out()).startsWith("started whole");
    }

    @Test
    void whatMavenBuiltStartsFromACheckoutThatCannotBeWrittenTo() throws Exception {
        Path ready = Files.createDirectories(home.resolve("cli/target")).resolve("lapwright.jar");
        Files.writeString(ready, "whole");
        Files.createFile(home.resolve("target"));
        Ended ended = run();
        assertThat(ended.err()).isEmpty();
        assertThat(ended.out()).startsWith("started whole");
    }

    /** Java reads its arguments in the locale's encoding; in "C" it would find no file with such a name. */
    @Test
    void aPathBeyondAsciiWorksInTheLocaleC() throws Exception {
        Path other = folder.resolve("Prüfstand 東京");
        assumeThat(other.toString()).as("this file system has such names").contains("東京");
        Files.move(home, other, StandardCopyOption.ATOMIC_MOVE);
        home = other;
        settings.put("LC_ALL", "C");
        Ended ended = run("show");
        assertThat(ended.code()).isZero();
        assertThat(ended.out()).isEqualTo("started whole in C.UTF-8: show\n");
    }
}
