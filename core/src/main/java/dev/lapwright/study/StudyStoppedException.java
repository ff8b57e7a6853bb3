package dev.lapwright.study;

import dev.lapwright.fault.LapwrightException;

/** End of a study that was stopped before it had its result. */
public class StudyStoppedException extends LapwrightException {
    private static final long serialVersionUID = 1L;

    StudyStoppedException(String problem, Throwable cause) {
        super("study", problem, "run it again", cause);
    }
}
