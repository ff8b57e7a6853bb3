package dev.lapwright.cli.page;

/**
 * Fact at the head of a page: a name and what is said under it.
 *
 * @param name as in {@code Conditions}
 * @param text what it is
 */
public record PageFact(String name, String text) {}
