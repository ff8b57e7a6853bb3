package dev.lapwright.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A program that is stopped while it writes (Ctrl-C, or a request to end) leaves nothing half-written. */
class StoppedWritingTest {
    @TempDir
    Path folder;

    /** The program: begins to write the file named and waits in the midst of it. */
    public static void main(String[] arguments) {
        SafeFile.write(Path.of(arguments[0]), true, out -> {
            out.write(new byte[1_000_000]);
            try {
                Thread.sleep(60_000);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        });
    }

    @Test
    @Timeout(60)
    void leavesTheOldFileAndNothingElse() throws IOException, InterruptedException {
        Path file = Files.writeString(folder.resolve("a.csv"), "old");
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        StoppedWritingTest.class.getName(),
                        file.toString())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        while (names().size() < 2) {
            assertThat(process.isAlive()).isTrue();
            TimeUnit.MILLISECONDS.sleep(20);
        }
        process.destroy();
        process.waitFor();
        assertThat(names()).containsExactly("a.csv");
        assertThat(file).hasContent("old");
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }
}
