package dev.lapwright.study;

/** Told how far a long study has come; called from several threads, never at the same time. */
@FunctionalInterface
public interface Progress {
    /** Tells nobody. */
    Progress NONE = (done, total) -> {};

    /** {@code done} of {@code total} laps are finished. */
    void report(int done, int total);
}
