package dev.lapwright.cli.bench;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** When the bench ends, and which questions are out of date. */
class WindowsTest {
    private static void tick(Windows windows, int times) {
        for (int i = 0; i < times; i++) {
            windows.tick();
        }
    }

    @Test
    void itWaitsForTheFirstWindowForEver() {
        Windows windows = new Windows(3);
        tick(windows, 100);
        assertThat(windows.isDeserted()).isFalse();
    }

    @Test
    void itEndsAWhileAfterTheLastWindow() {
        Windows windows = new Windows(3);
        windows.opened();
        windows.opened();
        windows.closed();
        tick(windows, 10);
        assertThat(windows.isDeserted()).isFalse();
        windows.closed();
        tick(windows, 2);
        assertThat(windows.isDeserted()).isFalse();
        tick(windows, 1);
        assertThat(windows.isDeserted()).isTrue();
    }

    /** A reload closes the window for a moment. */
    @Test
    void aReloadBeginsTheWaitAnew() {
        Windows windows = new Windows(3);
        windows.opened();
        windows.closed();
        tick(windows, 2);
        windows.opened();
        tick(windows, 5);
        windows.closed();
        tick(windows, 2);
        windows.heard();
        tick(windows, 2);
        assertThat(windows.isDeserted()).isFalse();
    }

    /** Who waits for the end is told of it. */
    @Test
    void whoWaitsIsTold() throws InterruptedException {
        Windows windows = new Windows(1);
        windows.opened();
        windows.closed();
        tick(windows, 1);
        windows.awaitDesertion();
        assertThat(windows.isDeserted()).isTrue();
    }

    @Test
    void onlyOlderQuestionsOfTheSameWindowAreOutOfDate() {
        Windows windows = new Windows(3);
        windows.ask("a", 7);
        windows.ask("b", 2);
        assertThat(windows.isOutOfDate("a", 6)).isTrue();
        assertThat(windows.isOutOfDate("a", 7)).isFalse();
        assertThat(windows.isOutOfDate("b", 2)).isFalse();
        windows.ask("a", 3);
        assertThat(windows.isOutOfDate("a", 7)).isFalse();
    }
}
