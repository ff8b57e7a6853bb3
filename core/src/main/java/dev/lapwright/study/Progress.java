package dev.lapwright.study;

/** Listener that is told how far a long study has come; called from several threads, never at the same time. */
@FunctionalInterface
public interface Progress {
    /** Tells nobody. */
    Progress NONE = (done, total) -> {};

    /**
     * Told how much there is to do before a study's first part is done, with a way to try how long a part takes.
     *
     * @param parts to be done, about
     * @param threads on which they will be
     * @param part does the next of them, or one like them; asked by the calling thread alone, as often as it likes, before this returns
     */
    default void begin(long parts, int threads, Runnable part) {
        // Who is told of what is done need not know.
    }

    /** {@code done} of {@code total} laps are finished. */
    void report(int done, int total);
}
