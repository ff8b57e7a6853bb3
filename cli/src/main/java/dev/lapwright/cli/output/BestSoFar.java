package dev.lapwright.cli.output;

import dev.lapwright.report.Numbers;

/** The best that long work has found so far, said if the command is told to end before the work is done. */
public final class BestSoFar implements AutoCloseable {
    private final Console console;
    private final Thread last = new Thread(this::say, "say the best so far");
    private volatile String best;

    public BestSoFar(Console console) {
        this.console = console;
        Runtime.getRuntime().addShutdownHook(last);
    }

    /**
     * In words.
     *
     * @param with the settings that it has
     * @param kept whether what was driven has been kept
     */
    public static String words(double lapTime, String with, boolean kept) {
        return words(Numbers.lapTime(lapTime) + " with " + with, kept);
    }

    /**
     * In words.
     *
     * @param what the best is
     * @param kept whether what was done has been kept
     */
    public static String words(String what, boolean kept) {
        return "Best so far: " + what + "; "
                + (kept
                        ? "the same command goes on from here"
                        : "with --resume FILE the same command would go on from here");
    }

    /** Takes what is the best from now on, in words; called by any thread. */
    public void is(String found) {
        best = found;
    }

    void say() {
        String found = best;
        if (found != null) {
            console.remark(found);
        }
    }

    /** The work is done. */
    @Override
    public void close() {
        try {
            Runtime.getRuntime().removeShutdownHook(last);
        } catch (IllegalStateException e) {
            // The program is already stopping and says it.
        }
    }
}
