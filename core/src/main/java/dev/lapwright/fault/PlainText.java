package dev.lapwright.fault;

import java.util.Locale;
import java.util.Optional;

/**
 * Rule for texts that people name things by: what cannot be seen may not stand in them. Refused are control characters (Unicode
 * category Cc: C0, DEL and C1), line and paragraph separators (U+2028, U+2029), embeddings, overrides and isolates of writing
 * direction (U+202A to U+202E, U+2066 to U+2069; Unicode Standard Annex 9), lone surrogates, and U+FFFE and U+FFFF. What is
 * left may stand in XML 1.0 (section 2.2), so also in a page or a drawing.
 */
public final class PlainText {
    /** What may not stand in one line of text, for a regular expression's square brackets. */
    public static final String REFUSED =
            "\\u0000-\\u001f\\u007f-\\u009f\\u2028-\\u202e\\u2066-\\u2069\\ud800-\\udfff\\ufffe\\uffff";

    /** The same, but for tabs and ends of lines, which may stand in a text of several lines. */
    public static final String REFUSED_IN_LINES = "\\u0000-\\u0008\\u000b\\u000c\\u000e-\\u001f\\u007f-\\u009f"
            + "\\u2028-\\u202e\\u2066-\\u2069\\ud800-\\udfff\\ufffe\\uffff";

    private PlainText() {}

    /** What is wrong with a text of one line: its first character that may not stand there; empty if there is none. */
    public static Optional<String> problem(String text) {
        return problem(text, false);
    }

    /** What is wrong with a text that may have several lines: the same, but for tabs and ends of lines. */
    public static Optional<String> problemInLines(String text) {
        return problem(text, true);
    }

    private static Optional<String> problem(String text, boolean lines) {
        int number = 0;
        for (int i = 0; i < text.length(); ) {
            int character = text.codePointAt(i);
            number++;
            boolean space = character == '\t' || character == '\n' || character == '\r';
            if (isRefused(character) && !(lines && space)) {
                return Optional.of("character " + number + " is " + name(character) + ", which cannot be seen");
            }
            i += Character.charCount(character);
        }
        return Optional.empty();
    }

    /** Returns {@code text} if it is one line that can be seen and is not blank. */
    public static String checkedName(String place, String text) {
        if (text.isBlank()) {
            throw new InvalidValueException(place, "it is blank", "give it a name in one line");
        }
        problem(text).ifPresent(problem -> {
            throw new InvalidValueException(place, problem, "leave it out");
        });
        return text;
    }

    /** The text with a question mark for each character that may not stand in one line. */
    public static String shown(String text) {
        StringBuilder shown = new StringBuilder(text.length());
        text.codePoints().forEach(character -> shown.appendCodePoint(isRefused(character) ? '?' : character));
        return shown.toString();
    }

    /** Whether a character may not stand in one line of text; half a pair of surrogates may not. */
    public static boolean isRefused(int character) {
        return character <= 0x1f
                || (character >= 0x7f && character <= 0x9f)
                || (character >= 0x2028 && character <= 0x202e)
                || (character >= 0x2066 && character <= 0x2069)
                || (character >= Character.MIN_SURROGATE && character <= Character.MAX_SURROGATE)
                || character == 0xfffe
                || character == 0xffff;
    }

    private static String name(int character) {
        String code = String.format(Locale.ROOT, "U+%04X", character);
        if (character >= Character.MIN_SURROGATE && character <= Character.MAX_SURROGATE) {
            return code + " (half a pair of surrogates)";
        }
        String name = Character.getName(character);
        return name == null ? code : code + " (" + name.toLowerCase(Locale.ROOT) + ")";
    }
}
