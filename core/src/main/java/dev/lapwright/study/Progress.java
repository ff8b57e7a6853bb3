package dev.lapwright.study;

/** Listener that is told how far a long study has come; called from several threads, never at the same time. */
@FunctionalInterface
public interface Progress {
    /** Tells nobody. */
    Progress NONE = (done, total) -> {};

    /** {@code done} of {@code total} laps are finished. */
    void report(int done, int total);
}
