package dev.lapwright.study.optimise;

/**
 * An adjustment that the search leaves alone.
 *
 * @param name of the adjustment
 * @param reason why, in a few words
 */
public record OptimisationKept(String name, String reason) {}
