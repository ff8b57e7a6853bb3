package dev.lapwright.cli.page;

/**
 * A name and what is said under it.
 *
 * @param name as in {@code Conditions}
 * @param text what it is
 */
public record PageFact(String name, String text) {}
