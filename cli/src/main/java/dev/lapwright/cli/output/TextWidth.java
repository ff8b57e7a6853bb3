package dev.lapwright.cli.output;

/**
 * Width of text on a terminal, in columns: East Asian wide and fullwidth characters and pictures take two, marks that stand on
 * another character none (Unicode Standard Annex 11; the ranges are blocks, so some unassigned characters in them count too).
 */
final class TextWidth {
    /** First and last code point of each range of wide characters, rising. */
    private static final int[] WIDE = {
        0x1100, 0x115F, 0x2E80, 0x303E, 0x3041, 0x33FF, 0x3400, 0x4DBF, 0x4E00, 0xA4CF, 0xA960, 0xA97F, 0xAC00, 0xD7A3,
        0xF900, 0xFAFF, 0xFE30, 0xFE6F, 0xFF01, 0xFF60, 0xFFE0, 0xFFE6, 0x1F300, 0x1F64F, 0x1F900, 0x1F9FF, 0x20000,
        0x3FFFD
    };

    /** Mark of a report that is taken out before it is printed. */
    private static final char NOTHING = '\u0005';

    private TextWidth() {}

    /** Of text without codes for a terminal. */
    static int of(String text) {
        return text.codePoints().map(TextWidth::of).sum();
    }

    private static int of(int character) {
        // Most text ends here.
        if (character < WIDE[0]) {
            if (character == NOTHING) {
                return 0;
            }
            return character >= 0x300 && isMark(character) ? 0 : 1;
        }
        for (int k = 0; k < WIDE.length; k += 2) {
            if (character <= WIDE[k + 1]) {
                return character >= WIDE[k] ? 2 : isMark(character) ? 0 : 1;
            }
        }
        return isMark(character) ? 0 : 1;
    }

    private static boolean isMark(int character) {
        int type = Character.getType(character);
        return type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK || type == Character.FORMAT;
    }
}
