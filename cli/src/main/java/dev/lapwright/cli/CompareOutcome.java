package dev.lapwright.cli;

import dev.lapwright.study.compare.Comparison;

/**
 * Two laps side by side and what was asked.
 *
 * @param choice what is compared with
 * @param name of the other, for people
 * @param other what is compared
 * @param comparison what was found
 */
record CompareOutcome(Choice choice, String name, Choice other, Comparison comparison) {

    /** Whether the two cars come from two documents. */
    boolean twoCars() {
        return !choice.bare().name().equals(other.bare().name());
    }

    /** What is compared with, in a chart or a sentence. */
    String firstName() {
        return twoCars() ? choice.car().name() : choice.setupText();
    }
}
