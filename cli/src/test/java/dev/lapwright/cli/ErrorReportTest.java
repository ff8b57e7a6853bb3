package dev.lapwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.output.Console;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** Faults that are ours, and memory that runs out. */
class ErrorReportTest {
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();
    private final Console console = new Console(new ByteArrayOutputStream(), err, false, false);

    private String report(Throwable fault, boolean trace) {
        return report(3, fault, trace);
    }

    private String report(int code, Throwable fault, boolean trace) {
        assertThat(ErrorReport.unexpected(console, fault, trace)).isEqualTo(code);
        return err.toString(StandardCharsets.UTF_8);
    }

    @Test
    void anInternalFaultIsOneLineThatAsksForAReport() {
        String text = report(new IllegalStateException("two\nlines"), false);
        assertThat(text.lines()).hasSize(1);
        assertThat(text)
                .startsWith("lapwright: internal fault: ")
                .contains("(two lines)")
                .contains("--debug");
    }

    @Test
    void debugAddsTheTrace() {
        assertThat(report(new IllegalStateException("odd"), true))
                .contains("\tat ")
                .doesNotContain("--debug");
    }

    @Test
    void memoryThatRunsOutIsToldWithARemedy() {
        String text = report(2, new IllegalStateException(new OutOfMemoryError("Java heap space")), false);
        assertThat(text.lines()).hasSize(1);
        assertThat(text).contains("memory").contains("-Xmx");
    }
}
