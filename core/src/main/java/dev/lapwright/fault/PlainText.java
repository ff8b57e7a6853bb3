package dev.lapwright.fault;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Rule for texts that people name things by: what cannot be seen may not stand in them. Refused are control characters (Unicode
 * category Cc: C0, DEL and C1), line and paragraph separators (U+2028, U+2029), invisible format characters (category Cf), such
 * as embeddings, overrides and isolates of writing direction, byte order marks, zero-width spaces, soft hyphens and tags, lone
 * surrogates, and U+FFFE and U+FFFF. Format characters that are needed or seen may stand: joiners (U+200C, U+200D), without which
 * some scripts and emoji are misspelt; marks of direction (U+061C, U+200E, U+200F), which right-to-left names with a number or a
 * sign want and which turn nothing else about (Unicode Standard Annex 9, section 2.6); signs that enclose Arabic and Kaithi
 * numbers, the Syriac abbreviation mark and what builds groups of Egyptian hieroglyphs. What is left may stand in XML 1.0
 * (section 2.2), so also in a page or a drawing.
 */
public final class PlainText {
    /** First and last of invisible format characters. */
    private static final int[][] FORMAT = {
        {0xad, 0xad},
        {0x180e, 0x180e},
        {0x200b, 0x200b},
        {0x202a, 0x202e},
        {0x2060, 0x2064},
        {0x2066, 0x206f},
        {0xfeff, 0xfeff},
        {0xfff9, 0xfffb},
        {0x1bca0, 0x1bca3},
        {0x1d173, 0x1d17a},
        {0xe0001, 0xe0001},
        {0xe0020, 0xe007f}
    };

    private static final String BEYOND_CONTROL =
            "\\u007f-\\u009f\\u2028\\u2029\\ud800-\\udfff\\ufffe\\uffff" + inBrackets();

    /** What may not stand in one line of text, for a regular expression's square brackets. */
    public static final String REFUSED = "\\u0000-\\u001f" + BEYOND_CONTROL;

    /** The same, but for tabs and ends of lines, which may stand in a text of several lines. */
    public static final String REFUSED_IN_LINES = "\\u0000-\\u0008\\u000b\\u000c\\u000e-\\u001f" + BEYOND_CONTROL;

    /** Joiners and marks of direction: they may stand in a text, but nothing of them is seen. */
    public static final String UNSEEN = "\\u061c\\u200c-\\u200f";

    private static final Pattern BLANK = Pattern.compile("[\\s\\p{Z}" + UNSEEN + "]*");

    private PlainText() {}

    /** Whether nothing of a text is seen. */
    public static boolean isBlank(String text) {
        return text.isBlank() || BLANK.matcher(text).matches();
    }

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
        if (isBlank(text)) {
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
                || character == 0x2028
                || character == 0x2029
                || (character >= Character.MIN_SURROGATE && character <= Character.MAX_SURROGATE)
                || character == 0xfffe
                || character == 0xffff
                || isInvisibleFormat(character);
    }

    private static boolean isInvisibleFormat(int character) {
        for (int[] range : FORMAT) {
            if (character >= range[0] && character <= range[1]) {
                return true;
            }
        }
        return false;
    }

    /** Those beyond U+FFFF as themselves: regular expressions differ in how they write such. */
    private static String inBrackets() {
        StringBuilder text = new StringBuilder();
        for (int[] range : FORMAT) {
            text.append(inPattern(range[0]));
            if (range[1] > range[0]) {
                text.append('-').append(inPattern(range[1]));
            }
        }
        return text.toString();
    }

    private static String inPattern(int character) {
        return Character.isBmpCodePoint(character)
                ? String.format(Locale.ROOT, "\\u%04x", character)
                : Character.toString(character);
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
