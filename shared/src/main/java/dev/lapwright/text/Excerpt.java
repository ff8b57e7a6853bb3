package dev.lapwright.text;

import dev.lapwright.fault.PlainText;

/** The beginning of a text from a file, fit to be quoted in a message. */
public final class Excerpt {
    private static final int LONGEST = 40;

    private Excerpt() {}

    /** The text cut to a length that fits a message, what cannot be seen made visible. */
    public static String of(String text) {
        String line = PlainText.shown(text);
        return line.length() <= LONGEST ? line : line.substring(0, LONGEST) + "…";
    }
}
