package dev.lapwright.cli.output;

import dev.lapwright.report.Report;
import java.util.regex.Pattern;

/** Minus signs of what people read. Numbers are written with a hyphen, which programs read and a keyboard has. */
public final class MinusSign {
    /**
     * A hyphen before a number, unless it belongs to a word, an option, a path, a date or a setting as it is typed
     * ({@code rear-wing=-3}, {@code -3:3:1}); also where bold type begins just before it.
     */
    private static final Pattern HYPHEN =
            Pattern.compile("(?:(?<![\\p{L}\\p{N}_=:/\\\\-])|(?<=\\x1B\\[[0-9]m))-(?=\\.?[0-9](?!\\S*:\\S))");

    private MinusSign() {}

    /** Text with a minus sign, U+2212, for the hyphen of each negative number that is not part of a name. */
    public static String in(String text) {
        return Report.plain(text.indexOf('-') < 0 ? text : HYPHEN.matcher(text).replaceAll("\u2212"));
    }
}
