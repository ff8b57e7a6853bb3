package dev.lapwright.cli.bench;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.CountDownLatch;

/**
 * Windows of the browser that look at the bench: how many are open, and which of each one's questions is the newest. Time is
 * counted in ticks of the running process, so that a machine asleep does not count as an empty room.
 */
final class Windows {
    /** Known at most; the one unheard of longest is forgotten. */
    private static final int MOST = 1000;

    private final int patience;
    private final CountDownLatch deserted = new CountDownLatch(1);
    private final Map<String, Long> newest = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Long> eldest) {
            return size() > MOST;
        }
    };

    private int open;
    private boolean everOpen;
    private int empty;

    /** @param patience ticks without a window after which nobody comes back */
    Windows(int patience) {
        this.patience = patience;
    }

    synchronized void opened() {
        open++;
        everOpen = true;
        empty = 0;
    }

    synchronized void closed() {
        open--;
    }

    synchronized int open() {
        return open;
    }

    /** A second of the process's life has passed. */
    synchronized void tick() {
        empty = open > 0 || !everOpen ? 0 : empty + 1;
        if (empty >= patience) {
            deserted.countDown();
        }
    }

    /** Something was asked, so somebody is there. */
    synchronized void heard() {
        empty = 0;
    }

    /** Waits until the last window has been closed for long. */
    void awaitDesertion() throws InterruptedException {
        deserted.await();
    }

    /** Whether the last window has been closed for long. */
    boolean isDeserted() {
        return deserted.getCount() == 0;
    }

    /** Takes down the number of a window's question: older ones are out of date. */
    synchronized void ask(String window, long number) {
        newest.merge(window, number, Math::max);
    }

    /** Whether a window has asked something newer. */
    synchronized boolean isOutOfDate(String window, long number) {
        Long latest = newest.get(window);
        return latest != null && latest > number;
    }
}
