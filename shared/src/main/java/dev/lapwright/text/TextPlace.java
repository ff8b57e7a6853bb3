package dev.lapwright.text;

/**
 * A place in a text.
 *
 * @param line from 1; 0 if it is not known
 * @param column from 1; 0 if it is not known
 */
public record TextPlace(int line, int column) {
    /** No place. */
    public static final TextPlace NONE = new TextPlace(0, 0);
}
