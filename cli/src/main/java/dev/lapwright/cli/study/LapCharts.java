package dev.lapwright.cli.study;

import dev.lapwright.results.Subject;

/** Headings that the charts of all studies share. */
public final class LapCharts {
    private LapCharts() {}

    /** What has been looked at, for a heading. */
    public static String subject(Subject subject) {
        return subject.car().name() + " at " + subject.track().name();
    }
}
