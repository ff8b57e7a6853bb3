package dev.lapwright.charts.svg;

import java.awt.Color;
import java.util.Locale;

/** Colours as attributes of SVG elements. */
@FunctionalInterface
public interface SvgColours {
    /**
     * The attributes that give an element a colour, each with a space before it; opacity is not their business.
     *
     * @param property {@code fill} or {@code stroke}
     * @param colour to be written
     */
    String attributes(String property, Color colour);

    /** Colours as they are, such as {@code #1b2733}. */
    static String hex(Color colour) {
        return String.format(Locale.ROOT, "#%06x", colour.getRGB() & 0xFFFFFF);
    }
}
