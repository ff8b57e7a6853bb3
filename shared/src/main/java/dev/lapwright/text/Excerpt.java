package dev.lapwright.text;

/** The beginning of a text from a file, fit to be quoted in a message. */
public final class Excerpt {
    private static final int LONGEST = 40;

    private Excerpt() {}

    /** The text cut to a length that fits a message, control characters made visible. */
    public static String of(String text) {
        String line = text.replaceAll("\\p{Cntrl}", "?");
        return line.length() <= LONGEST ? line : line.substring(0, LONGEST) + "…";
    }
}
