package dev.lapwright.brief;

import dev.lapwright.study.StudyRun;

/** How far the whole has come, of parts that each take about so many percent of it. */
final class BriefProgress {
    private static final int WHOLE = 100;

    private final StudyRun told;
    private int behind;

    BriefProgress(StudyRun told) {
        this.told = told;
    }

    /** The progress of the next part, which ends where the part after it begins. */
    StudyRun next(int percent) {
        int from = behind;
        behind += percent;
        told.report(from, WHOLE);
        return told.reporting((done, total) ->
                told.report(from + (int) ((long) percent * Math.min(done, total) / Math.max(1, total)), WHOLE));
    }

    void end() {
        told.report(WHOLE, WHOLE);
    }
}
