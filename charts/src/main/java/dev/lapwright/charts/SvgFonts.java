package dev.lapwright.charts;

import java.awt.Font;
import java.util.function.UnaryOperator;
import org.jfree.svg.SVGGraphics2D;
import org.jfree.svg.StandardFontFunction;

/**
 * Which fonts an SVG asks for. The layout was measured with this machine's sans-serif font; viewers have others, so the
 * document first names families of like width, then the generic one.
 */
final class SvgFonts {
    private static final String SAMPLE = "Speed over distance 0123456789";
    private static final int SIZE = 100;
    /** Width of the sample over the size: 16.5 in DejaVu Sans and near it in Verdana, 14.0 in Arial and its kin. */
    private static final double WIDE = 15.2;

    private static final String WIDE_FAMILIES = "\"DejaVu Sans\", Verdana, sans-serif";
    private static final String NARROW_FAMILIES = "Arial, Helvetica, \"Liberation Sans\", sans-serif";

    private SvgFonts() {}

    static UnaryOperator<String> measuredBy(SVGGraphics2D g2) {
        int width =
                g2.getFontMetrics(new Font(Font.SANS_SERIF, Font.PLAIN, SIZE)).stringWidth(SAMPLE);
        StandardFontFunction families = new StandardFontFunction();
        families.put(Font.SANS_SERIF, width > WIDE * SIZE ? WIDE_FAMILIES : NARROW_FAMILIES);
        return family -> {
            String named = families.apply(family);
            return named.endsWith("serif") || named.endsWith("monospace") ? named : named + ", sans-serif";
        };
    }
}
