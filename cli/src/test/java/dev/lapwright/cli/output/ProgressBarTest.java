package dev.lapwright.cli.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class ProgressBarTest {
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();
    private final AtomicLong now = new AtomicLong();

    private ProgressBar bar(boolean terminal) {
        return new ProgressBar(new Console(new ByteArrayOutputStream(), err, false, terminal), "laps", now::get);
    }

    private String shown() {
        return err.toString(StandardCharsets.UTF_8);
    }

    private void after(double seconds) {
        now.set(Math.round(seconds * 1e9));
    }

    @Test
    void shortWorkShowsNothing() {
        try (ProgressBar bar = bar(true)) {
            after(0.4);
            bar.report(9, 10);
        }
        assertThat(shown()).isEmpty();
    }

    @Test
    void longWorkShowsHowFarItHasComeAndHowLongItWillTake() {
        ProgressBar bar = bar(true);
        after(0.1);
        bar.report(1, 100);
        after(2);
        bar.report(25, 100);
        // A quarter took 2 s, so three quarters take 6 s.
        assertThat(shown()).contains("25 of 100 laps").contains("6 s left");
    }

    @Test
    void itIsNotRedrawnForEveryLap() {
        ProgressBar bar = bar(true);
        after(2);
        for (int i = 1; i <= 50; i++) {
            bar.report(i, 100);
        }
        assertThat(shown()).contains("1 of 100").doesNotContain("2 of 100");
    }

    @Test
    void theLineIsErasedAtTheEnd() {
        try (ProgressBar bar = bar(true)) {
            after(2);
            bar.report(1, 100);
        }
        assertThat(shown()).endsWith("\r\u001B[K");
    }

    @Test
    void beforeAFifthIsDoneNothingIsSaidOfTheRest() {
        ProgressBar bar = bar(true);
        after(2);
        bar.report(19, 100);
        assertThat(shown()).contains("19 of 100 laps").doesNotContain("left");
    }

    @Test
    void withoutATerminalALineIsSaidEveryHalfMinute() {
        try (ProgressBar bar = bar(false)) {
            after(29);
            bar.report(10, 1000);
            assertThat(shown()).isEmpty();
            after(31);
            bar.report(11, 1000);
            after(60);
            bar.report(20, 1000);
            after(62);
            bar.report(500, 1000);
        }
        // Eleven laps since the first that was told, which may have been done before.
        assertThat(shown().lines())
                .containsExactly("11 of 1000 laps after 31 s", "500 of 1000 laps after 62 s, 63 s left");
    }

    @Test
    void longWorkIsForetoldOnceBySomeOfIt() {
        try (ProgressBar bar = bar(false)) {
            for (int i = 1; i <= 40; i++) {
                after(0.1 * i);
                bar.report(i, 5000);
            }
        }
        // 30 laps took 3 s, so 5000 take 500 s.
        assertThat(shown()).isEqualTo("5000 laps: about 8 min, by the first 30\n");
    }

    /** A sensitivity counts no more than some dozens of adjustments. */
    @Test
    void longWorkOfFewPartsIsForetoldByAFifth() {
        try (ProgressBar bar = bar(false)) {
            for (int i = 1; i <= 8; i++) {
                after(4 * i);
                bar.report(i, 34);
            }
        }
        // Of 34 a fifth is 6: they took 24 s, so all take 136 s.
        assertThat(shown().lines()).startsWith("34 laps: about 2 min, by the first 6");
    }

    /** What an earlier run did took no time of this one. */
    @Test
    void workThatIsGoneOnWithIsTimedByWhatIsNew() {
        try (ProgressBar bar = bar(true)) {
            after(0.1);
            bar.report(901, 1000);
            after(10);
            bar.report(950, 1000);
        }
        assertThat(shown()).contains("950 of 1000 laps, 10 s left");
    }
}
