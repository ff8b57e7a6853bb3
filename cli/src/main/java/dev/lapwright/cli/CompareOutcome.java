package dev.lapwright.cli;

import dev.lapwright.results.Subject;
import dev.lapwright.study.compare.Comparison;

/**
 * Two laps side by side and what was asked.
 *
 * @param subject what is compared with
 * @param name of the other, for people
 * @param other what is compared
 * @param comparison what was found
 */
record CompareOutcome(Subject subject, String name, Subject other, Comparison comparison) {

    /** Whether the two cars come from two documents. */
    boolean twoCars() {
        return !subject.bare().name().equals(other.bare().name());
    }

    /** What is compared with, in a chart or a sentence. */
    String firstName() {
        return twoCars() ? subject.car().name() : subject.setupText();
    }
}
