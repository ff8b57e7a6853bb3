package dev.lapwright.cli.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class SearchProgressTest {
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();
    private final AtomicLong now = new AtomicLong();

    private ProgressBar progress(boolean terminal) {
        return new ProgressBar(new Console(new ByteArrayOutputStream(), err, false, terminal), "steps", now::get);
    }

    private String shown() {
        return err.toString(StandardCharsets.UTF_8);
    }

    @Test
    void aShortSearchShowsNothing() {
        try (ProgressBar progress = progress(true)) {
            now.set(400_000_000L);
            progress.report(3, 0.5);
        }
        assertThat(shown()).isEmpty();
    }

    @Test
    void aLongSearchShowsStepsAndDifference() {
        try (ProgressBar progress = progress(true)) {
            now.set(2_000_000_000L);
            progress.report(7, -1.25);
            assertThat(shown()).contains("step 7, \u22121.250 s");
        }
    }

    @Test
    void itLeavesNothingBehind() {
        ProgressBar progress = progress(true);
        now.set(2_000_000_000L);
        progress.report(7, -1.25);
        progress.close();
        // A carriage return and the code that erases the line (ECMA-48, EL).
        assertThat(shown()).endsWith("\r\u001B[K");
    }

    @Test
    void awayFromATerminalNothingIsShown() {
        try (ProgressBar progress = progress(false)) {
            now.set(9_000_000_000L);
            progress.report(7, -1.25);
        }
        assertThat(shown()).isEmpty();
    }
}
