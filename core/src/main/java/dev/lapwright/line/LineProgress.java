package dev.lapwright.line;

/** Told of each step of a search. */
@FunctionalInterface
public interface LineProgress {
    /** Tells nobody. */
    LineProgress NONE = (steps, gain) -> {};

    /**
     * Called after each step.
     *
     * @param steps taken so far
     * @param gain lap time saved so far, s
     */
    void report(int steps, double gain);
}
