package dev.lapwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What only a process of its own can show; more of it in {@code torture}. */
class ProcessTest {
    @TempDir
    private Path folder;

    private Child lapwright(List<String> options, String... arguments) throws IOException {
        ProcessBuilder process = Child.builder(Child.words(options, arguments), folder.resolve("cache"));
        process.environment().put("LC_ALL", "C");
        return Child.start(process, folder);
    }

    @Test
    void theOutputIsUtf8WhateverThePlatformPrefers() throws IOException {
        Child process = lapwright(List.of("-Dfile.encoding=US-ASCII"), "show", "gt-talvex", "--quantities");
        assertThat(process.end()).isZero();
        assertThat(process.out()).contains("m²");
    }

    @Test
    void theExitCodeOfTheProcessIsThatOfTheCommand() throws IOException {
        Child process = lapwright(List.of(), "lap", "nothing", "harrowmere");
        assertThat(process.end()).isEqualTo(2);
        assertThat(process.err()).hasLineCount(1);
    }

    @Test
    void memoryThatRunsOutIsOneLine() throws IOException {
        Child process =
                lapwright(List.of("-Xmx20m"), "sweep", "gt-talvex", "harrowmere", "--vary", "rear-wing=0:12:0.000012");
        assertThat(process.end()).isEqualTo(2);
        assertThat(process.err())
                .startsWith("lapwright: memory: ")
                .doesNotContain("\tat ")
                .hasLineCount(1);
    }
}
