package dev.lapwright.cli.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** When the bench ends, and which questions are out of date. */
class WindowsTest {
    private static boolean isDeserted(Windows windows) {
        CompletableFuture<Void> deserted = CompletableFuture.runAsync(() -> {
            try {
                windows.awaitDesertion();
            } catch (InterruptedException e) {
                throw new AssertionError(e);
            }
        });
        try {
            deserted.get(100, TimeUnit.MILLISECONDS);
            return true;
        } catch (Exception stillOpen) {
            return false;
        }
    }

    private static void tick(Windows windows, int times) {
        for (int i = 0; i < times; i++) {
            windows.tick();
        }
    }

    @Test
    void itWaitsForTheFirstWindowForEver() {
        Windows windows = new Windows(3);
        tick(windows, 100);
        assertThat(isDeserted(windows)).isFalse();
    }

    @Test
    void itEndsAWhileAfterTheLastWindow() {
        Windows windows = new Windows(3);
        windows.opened();
        windows.opened();
        windows.closed();
        tick(windows, 10);
        assertThat(isDeserted(windows)).isFalse();
        windows.closed();
        tick(windows, 2);
        assertThat(isDeserted(windows)).isFalse();
        tick(windows, 1);
        assertThat(isDeserted(windows)).isTrue();
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
        assertThat(isDeserted(windows)).isFalse();
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
