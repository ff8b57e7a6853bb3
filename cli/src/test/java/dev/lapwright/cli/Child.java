package dev.lapwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The command in a process of its own, its outputs in files. */
public final class Child {
    private static final long PATIENCE_S = 300;

    private final Process process;
    private final Path place;

    private Child(Process process, Path place) {
        this.process = process;
        this.place = place;
    }

    /** What starts it: Java with options, and the command's arguments. */
    public static List<String> words(List<String> options, String... arguments) {
        // Surefire starts its tests from a jar that only points to the others.
        String classes = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        List<String> words = new ArrayList<>();
        words.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        words.addAll(List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-Xshare:auto", "-XX:-UsePerfData"));
        words.addAll(options);
        words.addAll(List.of("-cp", classes, "dev.lapwright.cli.Main"));
        words.addAll(List.of(arguments));
        return words;
    }

    /** A process that heeds no variable meant for other Java programs, and keeps lines in a folder. */
    public static ProcessBuilder builder(List<String> words, Path cache) {
        ProcessBuilder builder = new ProcessBuilder(words);
        builder.environment().keySet().removeIf(name -> name.startsWith("JAVA_") || name.equals("JDK_JAVA_OPTIONS"));
        builder.environment().put("XDG_CACHE_HOME", cache.toAbsolutePath().toString());
        return builder;
    }

    /** Starts it, its outputs in a folder. */
    public static Child start(ProcessBuilder builder, Path place) throws IOException {
        Files.createDirectories(place);
        return new Child(
                builder.redirectOutput(place.resolve("out.txt").toFile())
                        .redirectError(place.resolve("err.txt").toFile())
                        .start(),
                place);
    }

    /** Its exit code, once it has ended. */
    public int end() {
        try {
            assertThat(process.waitFor(PATIENCE_S, TimeUnit.SECONDS))
                    .as("it ends")
                    .isTrue();
            return process.exitValue();
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(stopped);
        } finally {
            process.destroyForcibly();
        }
    }

    /** What it printed. */
    public String out() throws IOException {
        return Files.readString(place.resolve("out.txt"), StandardCharsets.UTF_8);
    }

    /** What it printed beside its result. */
    public String err() throws IOException {
        return Files.readString(place.resolve("err.txt"), StandardCharsets.UTF_8);
    }

    /** Sends it a signal, by name, where it still runs. */
    public void signal(String name) throws IOException, InterruptedException {
        new ProcessBuilder("kill", "-" + name, Long.toString(process.pid()))
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start()
                .waitFor();
    }

    /** Whether it heeds a signal of this number: whoever started these tests may have told all to ignore interrupts. */
    public boolean heeds(int signal) throws IOException {
        Path status = Path.of("/proc", Long.toString(process.pid()), "status");
        if (!Files.isReadable(status)) {
            return false;
        }
        return Files.readAllLines(status).stream()
                .filter(line -> line.startsWith("SigIgn:"))
                .map(line -> Long.parseUnsignedLong(
                        line.substring("SigIgn:".length()).strip(), 16))
                .allMatch(mask -> (mask & 1L << (signal - 1)) == 0);
    }
}
