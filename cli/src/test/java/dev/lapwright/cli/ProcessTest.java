package dev.lapwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What only a process of its own can show. */
class ProcessTest {
    private static final long PATIENCE_S = 120;
    /** Bit of SIGINT in a mask of signals, as Linux prints it. */
    private static final long INTERRUPT = 1L << (2 - 1);

    @TempDir
    private Path folder;

    private ProcessBuilder lapwright(List<String> options, String... arguments) {
        // Surefire starts its tests from a jar that only points to the others.
        String classes = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.add("-XX:+UseSerialGC");
        command.addAll(options);
        command.addAll(List.of("-cp", classes, "dev.lapwright.cli.Main"));
        command.addAll(List.of(arguments));
        ProcessBuilder process = new ProcessBuilder(command);
        process.environment().keySet().removeIf(name -> name.startsWith("JAVA_") || name.equals("JDK_JAVA_OPTIONS"));
        return process;
    }

    private static int wait(Process process) throws InterruptedException {
        assertThat(process.waitFor(PATIENCE_S, TimeUnit.SECONDS)).as("it ends").isTrue();
        return process.exitValue();
    }

    @Test
    void theOutputIsUtf8WhateverThePlatformPrefers() throws Exception {
        ProcessBuilder builder = lapwright(List.of("-Dfile.encoding=US-ASCII"), "show", "gt-talvex", "--quantities");
        builder.environment().put("LC_ALL", "C");
        Process process = builder.start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(wait(process)).isZero();
        assertThat(out).contains("m²");
    }

    @Test
    void theExitCodeOfTheProcessIsThatOfTheCommand() throws Exception {
        Process process = lapwright(List.of(), "lap", "nothing", "harrowmere").start();
        String err = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(wait(process)).isEqualTo(2);
        assertThat(err.lines()).hasSize(1);
    }

    @Test
    void memoryThatRunsOutIsOneLine() throws Exception {
        Process process = lapwright(
                        List.of("-Xmx20m"), "sweep", "gt-talvex", "harrowmere", "--vary", "rear-wing=0:12:0.000012")
                .start();
        String err = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(wait(process)).isEqualTo(3);
        assertThat(err).startsWith("lapwright: memory: ").doesNotContain("\tat ");
        assertThat(err.lines()).hasSize(1);
    }

    @Test
    void anInterruptEndsWith130AndLeavesNothingBehind() throws Exception {
        Path out = folder.resolve("out");
        Process process = lapwright(
                        List.of(),
                        "sweep",
                        "gt-talvex",
                        "castelvane",
                        "--vary",
                        "rear-wing=0:12:0.01",
                        "--vary",
                        "rear-bar=1:6:0.01",
                        "--out",
                        out.toString())
                .start();
        try {
            Assumptions.assumeTrue(heedsInterrupts(process), "whoever started these tests ignores interrupts");
            TimeUnit.SECONDS.sleep(2);
            assertThat(process.isAlive()).as("the sweep is still running").isTrue();
            Process kill = new ProcessBuilder("kill", "-INT", Long.toString(process.pid())).start();
            assertThat(wait(kill)).isZero();
            assertThat(wait(process)).isEqualTo(130);
            assertThat(out).doesNotExist();
            assertThat(folder).isEmptyDirectory();
        } finally {
            process.destroyForcibly();
        }
    }

    private static boolean heedsInterrupts(Process process) throws IOException {
        Path status = Path.of("/proc", Long.toString(process.pid()), "status");
        if (!Files.isReadable(status)) {
            return false;
        }
        return Files.readAllLines(status).stream()
                .filter(line -> line.startsWith("SigIgn:"))
                .map(line -> Long.parseUnsignedLong(
                        line.substring("SigIgn:".length()).strip(), 16))
                .allMatch(mask -> (mask & INTERRUPT) == 0);
    }
}
