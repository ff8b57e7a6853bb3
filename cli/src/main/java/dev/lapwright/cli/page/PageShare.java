package dev.lapwright.cli.page;

/**
 * A share of a whole.
 *
 * @param name of what
 * @param text the share with its unit
 * @param width of its bar in percent of the widest, as CSS takes it
 */
public record PageShare(String name, String text, String width) {}
