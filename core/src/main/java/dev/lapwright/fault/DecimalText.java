package dev.lapwright.fault;

import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * Decimal number as a person writes it: ASCII digits with, if need be, a sign, a point and a power of ten, as in {@code -0.5}
 * or {@code 1e3}; a minus sign (U+2212), as results have it, is as good as a hyphen. What Java takes besides for a number ({@code 1d}, {@code 0x1p3}, {@code NaN}, {@code Infinity}) is none.
 */
public final class DecimalText {
    private static final Pattern NUMBER = Pattern.compile("[-+\u2212]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][-+]?[0-9]+)?");

    private DecimalText() {}

    /** The number; empty if the text, but for space about it, is none, or one beyond the range of a double. */
    public static OptionalDouble number(String text) {
        String plain = text.strip().replace('\u2212', '-');
        double value = NUMBER.matcher(plain).matches() ? Double.parseDouble(plain) : Double.NaN;
        return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    }
}
