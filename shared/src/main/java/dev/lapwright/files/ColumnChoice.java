package dev.lapwright.files;

/**
 * User's choice of which column of a file of comma-separated values holds what, where its heading does not tell.
 *
 * @param column what it holds, such as speed
 * @param heading as it stands in the file
 * @param unit of its numbers; empty if the heading says it, or it is SI
 */
public record ColumnChoice(String column, String heading, String unit) {}
