package dev.lapwright.cli.output;

import dev.lapwright.line.LineSearch;
import dev.lapwright.report.Numbers;
import java.util.function.LongSupplier;

/**
 * Progress of the search for a line, shown in one line that is overwritten. How many steps it will take is not known. Shows
 * itself only on a terminal and only after half a second; leaves nothing behind.
 */
public final class SearchProgress implements LineSearch.Progress, AutoCloseable {
    private static final long WAIT = 500_000_000L;
    private static final String ERASE_LINE = "\r\u001B[K";

    private final Console console;
    private final LongSupplier nanoseconds;
    private final long start;
    private final Thread eraser = new Thread(this::close, "erase progress");
    private volatile boolean shown;
    private volatile boolean closed;

    public SearchProgress(Console console) {
        this(console, System::nanoTime);
    }

    public SearchProgress(Console console, LongSupplier nanoseconds) {
        this.console = console;
        this.nanoseconds = nanoseconds;
        start = nanoseconds.getAsLong();
        if (console.errIsTerminal()) {
            // A prompt after an interrupt starts on a clean line.
            Runtime.getRuntime().addShutdownHook(eraser);
        }
    }

    @Override
    public void report(int steps, double difference) {
        if (console.errIsTerminal() && !closed && nanoseconds.getAsLong() - start >= WAIT) {
            shown = true;
            console.progress(ERASE_LINE + "Looking for the fastest line: step " + steps + ", "
                    + Numbers.signed(difference, 3) + " s");
        }
    }

    @Override
    public void close() {
        closed = true;
        if (shown) {
            console.progress(ERASE_LINE);
        }
        if (console.errIsTerminal() && Thread.currentThread() != eraser) {
            try {
                Runtime.getRuntime().removeShutdownHook(eraser);
            } catch (IllegalStateException e) {
                // The program is already stopping and runs the hook itself.
            }
        }
    }
}
