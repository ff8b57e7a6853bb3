package dev.lapwright.cli.study;

import dev.lapwright.results.Subject;

/** What pictures of all studies have in common. */
public final class LapCharts {
    /** Pixels of a .png for each pixel of the layout: sharp on paper and on dense screens. */
    public static final int PNG_SCALE = 2;

    private LapCharts() {}

    /** What has been looked at, for a heading. */
    public static String subject(Subject subject) {
        return subject.car().name() + " at " + subject.track().name();
    }
}
