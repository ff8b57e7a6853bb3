package dev.lapwright.cli.page;

/**
 * Note in the place of a result that could not be found.
 *
 * @param problem why, a sentence
 * @param remedy what to do, a sentence
 */
public record PageMissing(String problem, String remedy) {}
