package dev.lapwright.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A program stopped while it writes a set of files: a process of its own, whose writer stands still where it is stopped. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "a process there is stopped only by force")
class StoppedWritingTest {
    private static final long PATIENCE_S = 120;
    /** Bit of SIGINT in a mask of signals, as Linux prints it. */
    private static final long INTERRUPT = 1L << (2 - 1);

    @TempDir
    private Path folder;

    /** Writes three files into a folder; the second stands still in the middle, or after all have their names. */
    static final class Writer {
        private Writer() {}

        public static void main(String[] arguments) throws IOException {
            Path folder = Path.of(arguments[0]);
            boolean middle = arguments[1].equals("middle");
            FileSet files = new FileSet(true);
            files.folder(folder.resolve("new/deep"));
            files.stage(folder.resolve("old.csv"), out -> out.write('2'));
            files.stage(folder.resolve("new/deep/a.csv"), out -> {
                out.write(new byte[1 << 20]);
                if (middle) {
                    standStill();
                }
            });
            files.stage(folder.resolve("new/b.csv"), out -> out.write('3'));
            files.commit();
            standStill();
        }

        private static void standStill() throws IOException {
            System.out.println("here");
            System.in.read();
        }
    }

    /** A process started in the background of a shell is deaf to interrupts, and so are those it starts. */
    private static boolean isHeard(String signal) throws IOException {
        Path status = Path.of("/proc/self/status");
        return !signal.equals("-INT")
                || !Files.exists(status)
                || Files.readAllLines(status).stream()
                        .filter(line -> line.startsWith("SigIgn:"))
                        .map(line -> Long.parseUnsignedLong(
                                line.substring(line.indexOf(':') + 1).strip(), 16))
                        .allMatch(mask -> (mask & INTERRUPT) == 0);
    }

    private int stopped(String signal, String where) throws Exception {
        assumeThat(isHeard(signal)).isTrue();
        Files.writeString(folder.resolve("old.csv"), "1");
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                        Writer.class.getName(),
                        folder.toString(),
                        where)
                .redirectErrorStream(true)
                .start();
        try (BufferedReader out =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            assertThat(out.readLine()).isEqualTo("here");
            new ProcessBuilder("kill", signal, Long.toString(process.pid()))
                    .start()
                    .waitFor();
            assertThat(process.waitFor(PATIENCE_S, TimeUnit.SECONDS)).isTrue();
            return process.exitValue();
        } finally {
            process.destroyForcibly();
        }
    }

    private List<String> files() throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(file -> !file.equals(folder))
                    .map(file -> folder.relativize(file).toString().replace(File.separatorChar, '/'))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"-INT", "-TERM"})
    void inTheMiddleNothingIsLeft(String signal) throws Exception {
        // 128 and the number of the signal, as shells have it.
        assertThat(stopped(signal, "middle")).isEqualTo(signal.equals("-INT") ? 130 : 143);
        assertThat(files()).containsExactly("old.csv");
        assertThat(folder.resolve("old.csv")).hasContent("1");
    }

    @ParameterizedTest
    @ValueSource(strings = {"-INT", "-TERM"})
    void atTheEndAllIsThere(String signal) throws Exception {
        stopped(signal, "end");
        assertThat(files()).containsExactly("new", "new/b.csv", "new/deep", "new/deep/a.csv", "old.csv");
        assertThat(folder.resolve("old.csv")).hasContent("2");
    }
}
