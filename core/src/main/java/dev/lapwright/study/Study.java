package dev.lapwright.study;

/**
 * Question about a car that takes many laps, put together step by step and then run. Each method of a study gives a new
 * study, so one that has been put together can be run again, and shared between threads.
 *
 * @param <R> what it finds
 */
@FunctionalInterface
public interface Study<R> {
    /**
     * Runs it. What it finds does not depend on how it is run.
     *
     * @throws dev.lapwright.fault.LapwrightException if what is asked cannot be, as soon as that is known
     * @throws StudyStoppedException if it was stopped before its end
     */
    R run(StudyRun how);

    /** Runs it on all cores, tells nobody of its progress and cannot be stopped. */
    default R run() {
        return run(StudyRun.onAllCores());
    }
}
