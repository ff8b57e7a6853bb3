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

    /** A part may take minutes, as a step of the least squares of many laps. */
    @Test
    void withoutATerminalItIsSaidThoughNothingIsReported() {
        try (ProgressBar bar = bar(false)) {
            bar.sayEveryHalfMinute();
            after(1);
            bar.report(1, 100);
            after(29);
            bar.sayEveryHalfMinute();
            assertThat(shown()).isEmpty();
            after(30);
            bar.sayEveryHalfMinute();
            after(59);
            bar.sayEveryHalfMinute();
            after(60);
            bar.sayEveryHalfMinute();
        }
        assertThat(shown().lines()).containsExactly("1 of 100 laps after 30 s", "1 of 100 laps after 60 s");
    }

    @Test
    void aSearchForALineSaysItsStepsWithoutATerminal() {
        try (ProgressBar bar = bar(false)) {
            after(20);
            bar.report(7, -0.25);
            assertThat(shown()).isEmpty();
            after(31);
            bar.report(12, -0.31);
        }
        assertThat(shown().lines()).containsExactly("Looking for the fastest line: step 12, -0.310 s after 31 s");
    }

    /** Parts that take so long each, s: the first of them, then all others. */
    private int begin(long parts, int threads, double first, double others) {
        int[] done = {0};
        bar(false).begin(parts, threads, () -> {
            now.addAndGet(Math.round(1e9 * (done[0] < 2 ? first : others)));
            done[0]++;
        });
        return done[0];
    }

    @Test
    void longWorkIsForetoldBySomeOfIt() {
        begin(5000, 2, 0.1, 0.1);
        // Fifteen laps took 1.5 s, of which the last five tell: 5000 at 0.1 s each on two threads.
        assertThat(shown()).isEqualTo("5000 laps: about 4 min on 2 threads, by 5 of them\n");
    }

    /** As while Java compiles. */
    @Test
    void firstPartsThatTakeLongTellNothing() {
        assertThat(begin(5000, 1, 0.4, 0.1)).isEqualTo(2 + 7);
        assertThat(shown()).isEqualTo("5000 laps: about 8 min on 1 thread, by 3 of them\n");
    }

    @Test
    void shortWorkIsNotForetoldAndHardlyTried() {
        assertThat(begin(190, 2, 0.1, 0.1)).isEqualTo(4);
        assertThat(shown()).isEmpty();
    }

    @Test
    void workOfFewPartsIsForetoldByOne() {
        assertThat(begin(34, 1, 4, 4)).isEqualTo(1);
        assertThat(shown()).isEqualTo("34 laps: about 2 min on 1 thread, by 1 of them\n");
    }

    /** One of four is most of it, on four threads. */
    @Test
    void workOfNextToNoPartsIsNotTried() {
        assertThat(begin(4, 4, 60, 60)).isZero();
        assertThat(shown()).isEmpty();
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
