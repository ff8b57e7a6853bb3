package dev.lapwright.charts;

import dev.lapwright.fault.InvalidValueException;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Stroke;
import java.util.Objects;

/**
 * Style of charts: colours, font, sizes of text. Immutable and handed to every chart; there is no style that all share.
 *
 * @param palette the colours
 * @param fontFamily a logical font of Java, which every machine with fonts has, or the name of an installed one
 * @param textSize size of ordinary text, px, 12 to 48; headings are larger, the smallest text is 1 px smaller
 */
public record ChartStyle(Palette palette, String fontFamily, int textSize) {
    /** The house style: our palette, the machine's sans-serif font, 12 px. */
    public static final ChartStyle STANDARD = new ChartStyle(Palette.STANDARD, Font.SANS_SERIF, 12);

    /** Lines told apart without colour: dash and gap lengths in line widths; the first is solid. */
    private static final float[][] DASHES = {
        null, {5, 2}, {1.2f, 1.6f}, {8, 2, 1.5f, 2}, {10, 4}, {4, 1.5f, 1, 1.5f, 1, 1.5f}
    };

    private static final int LEAST = 12;
    private static final int MOST = 48;

    public ChartStyle {
        Objects.requireNonNull(palette, "palette");
        if (fontFamily.isBlank()) {
            throw new InvalidValueException("font family", "it is blank", "name a font, such as SansSerif");
        }
        if (textSize < LEAST || textSize > MOST) {
            throw new InvalidValueException(
                    "text size", textSize + " px is outside its range", "allowed: " + LEAST + " to " + MOST + " px");
        }
    }

    /** The same with other colours. */
    public ChartStyle withPalette(Palette other) {
        return new ChartStyle(other, fontFamily, textSize);
    }

    /** The same with text of another size, px. */
    public ChartStyle withTextSize(int pixels) {
        return new ChartStyle(palette, fontFamily, pixels);
    }

    public Font title() {
        return new Font(fontFamily, Font.BOLD, textSize + textSize / 2);
    }

    public Font subtitle() {
        return new Font(fontFamily, Font.PLAIN, textSize + 1);
    }

    public Font axisLabel() {
        return new Font(fontFamily, Font.PLAIN, textSize + 1);
    }

    public Font text() {
        return new Font(fontFamily, Font.PLAIN, textSize);
    }

    public Font strong() {
        return new Font(fontFamily, Font.BOLD, textSize);
    }

    public Font small() {
        return new Font(fontFamily, Font.PLAIN, textSize - 1);
    }

    public Color colour(int series) {
        return palette.series(series);
    }

    /** How many lines can be told apart. */
    public static int distinctLines() {
        return DASHES.length;
    }

    /** The stroke of a series, counted from 0. */
    public static Stroke line(int series) {
        float width = 2f;
        float[] dash = DASHES[series % DASHES.length];
        if (dash == null) {
            return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
        }
        float[] pixels = new float[dash.length];
        for (int i = 0; i < dash.length; i++) {
            pixels[i] = dash[i] * width;
        }
        return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, pixels, 0);
    }

    public static Stroke solid(double width) {
        return new BasicStroke((float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
    }

    public static Stroke dashed(double width) {
        return new BasicStroke((float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, new float[] {5, 4}, 0);
    }
}
