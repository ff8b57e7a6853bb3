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
    /** Ink, orange, blue, stone, brown, sky; a ramp from ink through teal to sand; white paper. */
    public static final Palette STANDARD = new Palette(
            colours(0x0C2B4B, 0xE9730A, 0x0156B1, 0x7B6C62, 0x763000, 0x1F8BB0),
            colours(0x003062, 0x004D79, 0x296785, 0x507E88, 0x739286, 0x95A381, 0xB7B27B, 0xDABF74, 0xFEC96E),
            new Color(0x1B2733),
            new Color(0x56616B),
            new Color(0xDFE3E6),
            new Color(0xEEF1F3),
            Color.WHITE);

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

    /** A colour of the ramp, by linear variation between its neighbours; {@code share} is held to 0 (low) to 1 (high). */
    public Color rampAt(double share) {
        double place = Math.max(0, Math.min(1, share)) * (ramp.size() - 1);
        int low = Math.min((int) place, ramp.size() - 2);
        double w = place - low;
        Color a = ramp.get(low);
        Color b = ramp.get(low + 1);
        return new Color(
                mix(a.getRed(), b.getRed(), w), mix(a.getGreen(), b.getGreen(), w), mix(a.getBlue(), b.getBlue(), w));
    }

    private static int mix(int a, int b, double w) {
        return (int) Math.round(a + w * (b - a));
    }
}
