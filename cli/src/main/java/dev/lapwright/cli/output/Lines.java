package dev.lapwright.cli.output;

import java.util.Arrays;

/** Lines of running text, broken between words and indented. */
public final class Lines {
    /** Running text is no wider than this on any terminal. */
    public static final int WIDTH = 100;

    private static final int NAME_WIDTH = 14;
    private static final int FURTHER = 6;

    private Lines() {}

    /** A name and what there is to say under it. */
    public static void item(Console console, String name, String text) {
        String padding = " ".repeat(Math.max(1, NAME_WIDTH - name.length()));
        print(console, "  " + name + padding, 2 + NAME_WIDTH, text);
    }

    /** A paragraph from the left edge. */
    public static void paragraph(Console console, String text) {
        print(console, "", 0, text);
    }

    /**
     * A beginning and, from a column on, text that wraps under itself; where a word of it has no room there, on lines of its
     * own.
     */
    static void under(Console console, String beginning, int start, String text) {
        int most = Math.min(WIDTH, console.width());
        int longest = Arrays.stream(seen(text).split(" "))
                .mapToInt(TextWidth::of)
                .max()
                .orElse(0);
        if (start + longest <= most) {
            print(console, beginning + " ".repeat(start - TextWidth.of(beginning)), start, text);
        } else {
            console.line(beginning.stripTrailing());
            print(console, " ".repeat(FURTHER), FURTHER, text);
        }
    }

    /**
     * A beginning, then text that wraps under its own first word.
     *
     * @param width of the beginning as seen, without codes for bold type
     */
    public static void print(Console console, String beginning, int width, String text) {
        print(console, beginning, width, width, text);
    }

    /** The same with lines after the first indented by so much. */
    static void print(Console console, String beginning, int width, int further, String text) {
        int most = Math.min(WIDTH, console.width());
        StringBuilder line = new StringBuilder(beginning);
        int used = width;
        boolean first = true;
        for (String word : text.split(" ")) {
            int length = TextWidth.of(seen(word));
            if (!first && used + 1 + length > most) {
                console.line(line.toString());
                line = new StringBuilder(" ".repeat(further));
                used = further;
                first = true;
            }
            line.append(first ? "" : " ").append(word);
            used += length + (first ? 0 : 1);
            first = false;
        }
        console.line(line.toString());
    }

    /** Text without codes for bold type. */
    static String seen(String text) {
        return text.replaceAll("\u001B\\[[0-9]*m", "");
    }
}
