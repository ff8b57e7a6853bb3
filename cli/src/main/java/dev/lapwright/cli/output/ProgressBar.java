package dev.lapwright.cli.output;

import dev.lapwright.line.LineSearch;
import dev.lapwright.report.Numbers;
import dev.lapwright.study.Progress;
import java.util.Locale;
import java.util.function.LongSupplier;

/**
 * Progress of long work: on a terminal one line that is overwritten, from half a second on, which leaves nothing behind; elsewhere a
 * line every half minute. How long all will take is told before it begins, where that is long ({@link Foretelling}); how long it will still take
 * from a fifth of the work on: before, it is a guess.
 */
public final class ProgressBar implements Progress, LineSearch.Progress, AutoCloseable {
    private static final long WAIT = 500_000_000L;
    private static final long INTERVAL = 100_000_000L;
    private static final long HALF_A_MINUTE = 30_000_000_000L;
    private static final int TICK_MS = 1000;

    private static final double LONG_S = 60;
    private static final double HOUR_S = 3600;
    private static final int WIDTH = 30;
    /** Part of the work that tells how long the rest will take. */
    private static final int FIFTH = 5;

    private static final String ERASE_LINE = "\r\u001B[K";

    private final Console console;
    private final String things;
    private final LongSupplier nanoseconds;
    private final long start;
    private long shownAt;
    private final Thread eraser = new Thread(this::close, "erase progress");
    /** What had been done before, as by an earlier run of the same command; below zero before anything is told. */
    private int before = -1;

    /** The last that was reported. */
    private int last;

    private int lastTotal;
    private String line = "";
    private final Thread ticker = new Thread(this::tick, "say progress");
    private volatile boolean shown;
    private volatile boolean closed;

    /** @param things what is counted, as in "laps" */
    public ProgressBar(Console console, String things) {
        this(console, things, System::nanoTime);
        if (!console.errIsTerminal()) {
            // A part may take minutes.
            ticker.setDaemon(true);
            ticker.start();
        }
    }

    public ProgressBar(Console console, String things, LongSupplier nanoseconds) {
        this.console = console;
        this.things = things;
        this.nanoseconds = nanoseconds;
        start = nanoseconds.getAsLong();
        shownAt = start;
        if (console.errIsTerminal()) {
            // A prompt after an interrupt starts on a clean line.
            Runtime.getRuntime().addShutdownHook(eraser);
        }
    }

    @Override
    public void begin(long parts, int threads, Runnable part) {
        Foretelling.of(parts, threads, part, nanoseconds).ifPresent(told -> {
            if (shown) {
                console.progress(ERASE_LINE);
            }
            console.remark(parts + " " + things + ": " + about(told.seconds()) + " on " + threads
                    + (threads == 1 ? " thread" : " threads") + ", by " + told.timed() + " of them");
        });
    }

    @Override
    public synchronized void report(int done, int total) {
        long now = nanoseconds.getAsLong();
        before = before < 0 ? Math.max(0, done - 1) : before;
        if (!console.errIsTerminal()) {
            last = done;
            lastTotal = total;
            sayEveryHalfMinute();
            return;
        }
        boolean due = shown ? now - shownAt >= INTERVAL : now - start >= WAIT;
        if (due && total > 0) {
            show(text(done, total, now - start), now);
        }
    }

    /** Says where the work stands if nothing was said for half a minute. */
    synchronized void sayEveryHalfMinute() {
        long now = nanoseconds.getAsLong();
        boolean known = lastTotal > 0 || !line.isEmpty();
        if (known && !console.errIsTerminal() && !closed && now - Math.max(start, shownAt) >= HALF_A_MINUTE) {
            shownAt = now;
            String after = " after " + Math.round((now - start) * 1e-9) + " s";
            console.remark(
                    lastTotal > 0
                            ? last + " of " + lastTotal + " " + things + after + left(last, lastTotal, now - start)
                            : line + after);
        }
    }

    private void tick() {
        try {
            while (!closed) {
                Thread.sleep(TICK_MS);
                sayEveryHalfMinute();
            }
        } catch (InterruptedException done) {
            // The work is.
        }
    }

    /** The same of a search for a line: how many steps it will take is not known. */
    @Override
    public synchronized void report(int steps, double difference) {
        long now = nanoseconds.getAsLong();
        if (now - start >= WAIT) {
            line = "Looking for the fastest line: step " + steps + ", " + Numbers.signed(difference, 3) + " s";
            show(line, now);
            sayEveryHalfMinute();
        }
    }

    private void show(String text, long now) {
        if (console.errIsTerminal() && !closed) {
            shown = true;
            shownAt = now;
            console.progress(ERASE_LINE + text);
        }
    }

    private String text(int done, int total, long elapsed) {
        int full = (int) ((long) WIDTH * done / total);
        String bar = "#".repeat(full) + ".".repeat(WIDTH - full);
        return "[" + bar + "] " + done + " of " + total + " " + things + left(done, total, elapsed);
    }

    private String left(int done, int total, long elapsed) {
        int own = done - before;
        if (own < (total - before) / FIFTH || own == 0) {
            return "";
        }
        return String.format(Locale.ROOT, ", %.0f s left", elapsed * 1e-9 * (total - done) / own);
    }

    /** A time that is not known well. */
    public static String about(double seconds) {
        if (seconds < 2 * LONG_S) {
            return "about " + Math.round(seconds) + " s";
        }
        return seconds < 2 * HOUR_S
                ? "about " + Math.round(seconds / LONG_S) + " min"
                : "about " + Math.round(seconds / HOUR_S) + " h";
    }

    @Override
    public void close() {
        closed = true;
        ticker.interrupt();
        if (shown) {
            console.progress(ERASE_LINE);
        }
        if (console.errIsTerminal() && Thread.currentThread() != eraser) {
            forgetEraser();
        }
    }

    private void forgetEraser() {
        try {
            Runtime.getRuntime().removeShutdownHook(eraser);
        } catch (IllegalStateException e) {
            // The program is already stopping and runs the hook itself.
        }
    }
}
