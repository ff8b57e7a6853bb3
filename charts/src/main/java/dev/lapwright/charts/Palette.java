package dev.lapwright.charts;

import dev.lapwright.fault.InvalidValueException;
import java.awt.Color;
import java.util.Arrays;
import java.util.List;

/**
 * The colours of a chart; immutable.
 *
 * <p>The standard colours are our own. Series colours stay apart for people who do not tell red from green and, because no
 * two are equally light, in a grey print; {@code PaletteTest} holds them to that. They are darker than three to one against
 * white, so that thin lines are seen.
 *
 * @param series for lines and points, at least one, the first for what is compared with
 * @param ramp from low to high, at least two, evenly spaced to the eye and ever lighter
 * @param ink text and the strongest lines
 * @param muted axes and lesser text
 * @param grid grid lines
 * @param band background of what is marked, as a corner is
 * @param background of the picture
 */
public record Palette(
        List<Color> series, List<Color> ramp, Color ink, Color muted, Color grid, Color band, Color background) {
    private static final List<Color> RAMP =
            colours(0x003062, 0x004D79, 0x296785, 0x507E88, 0x739286, 0x95A381, 0xB7B27B, 0xDABF74, 0xFEC96E);

    private static final List<Color> SERIES = colours(0x0C2B4B, 0xE9730A, 0x0156B1, 0x7B6C62, 0x763000, 0x1F8BB0);

    /** Ink, orange, blue, stone, brown, sky; a ramp from ink through teal to sand; white paper. */
    public static final Palette STANDARD = new Palette(
            SERIES,
            RAMP,
            new Color(0x1B2733),
            new Color(0x56616B),
            new Color(0xDFE3E6),
            new Color(0xEEF1F3),
            Color.WHITE);

    /** The same hues on dark paper, for a screen at night; the ramp stays, its dark end outlined. */
    public static final Palette DARK = new Palette(
            colours(0xD5E4F3, 0xF09A4A, 0x5F9FE8, 0xB3A59A, 0xCF8F63, 0x5BBFDD),
            RAMP,
            new Color(0xE6EAED),
            new Color(0xA9B4BD),
            new Color(0x333D46),
            new Color(0x232C34),
            new Color(0x161C22));

    /** The standard series in black ink with stronger axes and grid, for a printer. */
    public static final Palette PRINT = new Palette(
            SERIES, RAMP, Color.BLACK, new Color(0x3A3A3A), new Color(0xC4C4C4), new Color(0xE8E8E8), Color.WHITE);

    /** Least contrast of text, WCAG 2.1 success criterion 1.4.3. */
    private static final double TEXT_CONTRAST = 4.5;

    public Palette {
        series = List.copyOf(series);
        ramp = List.copyOf(ramp);
        if (series.isEmpty()) {
            throw new InvalidValueException("palette series", "there are no colours", "give at least one");
        }
        if (ramp.size() < 2) {
            throw new InvalidValueException("palette ramp", "one colour is no ramp", "give at least two");
        }
    }

    private static List<Color> colours(int... rgb) {
        return Arrays.stream(rgb).mapToObj(Color::new).toList();
    }

    /** Colour of a series, counted from 0; starts again after the last. */
    public Color series(int index) {
        return series.get(index % series.size());
    }

    /**
     * Colour of text about a series: the series' own, as far towards the ink as it takes to be read on the paper and on a band.
     */
    public Color label(Color series) {
        for (double w = 0; w < 1; w += 0.05) {
            Color mixed = mix(series, ink, w);
            if (Math.min(contrast(mixed, background), contrast(mixed, band)) >= TEXT_CONTRAST) {
                return mixed;
            }
        }
        return ink;
    }

    /** Contrast of two colours, 1 to 21, by WCAG 2.1: (lighter + 0.05)/(darker + 0.05) of their relative luminances. */
    public static double contrast(Color one, Color other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(Color colour) {
        return 0.2126 * linear(colour.getRed())
                + 0.7152 * linear(colour.getGreen())
                + 0.0722 * linear(colour.getBlue());
    }

    /** Light of one component of sRGB, IEC 61966-2-1. */
    private static double linear(int component) {
        double c = component / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    /** A colour of the ramp, by linear variation between its neighbours; {@code share} is held to 0 (low) to 1 (high). */
    public Color rampAt(double share) {
        double place = Math.max(0, Math.min(1, share)) * (ramp.size() - 1);
        int low = Math.min((int) place, ramp.size() - 2);
        return mix(ramp.get(low), ramp.get(low + 1), place - low);
    }

    private static Color mix(Color a, Color b, double w) {
        return new Color(
                mix(a.getRed(), b.getRed(), w), mix(a.getGreen(), b.getGreen(), w), mix(a.getBlue(), b.getBlue(), w));
    }

    private static int mix(int a, int b, double w) {
        return (int) Math.round(a + w * (b - a));
    }
}
