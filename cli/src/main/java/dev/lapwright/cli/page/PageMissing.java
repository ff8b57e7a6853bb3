package dev.lapwright.cli.page;

/**
 * What could not be found.
 *
 * @param problem why, a sentence
 * @param remedy what to do, a sentence
 */
public record PageMissing(String problem, String remedy) {}
