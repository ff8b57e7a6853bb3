package dev.lapwright.charts;

import dev.lapwright.fault.InvalidValueException;

/**
 * Size of a picture. Text has a fixed size in pixels, so a larger picture has more room, not larger letters.
 *
 * @param width px, 320 to 10000
 * @param height px, 240 to 10000
 */
public record ImageSize(int width, int height) {
    private static final int LEAST_WIDTH = 320;
    private static final int LEAST_HEIGHT = 240;
    private static final int MOST = 10_000;

    /** For traces and sweeps. */
    public static final ImageSize WIDE = new ImageSize(1200, 700);
    /** For maps. */
    public static final ImageSize MAP = new ImageSize(1200, 900);
    /** For diagrams with equal scales. */
    public static final ImageSize SQUARE = new ImageSize(900, 900);

    public ImageSize {
        check("picture width", width, LEAST_WIDTH);
        check("picture height", height, LEAST_HEIGHT);
    }

    private static void check(String name, int pixels, int least) {
        if (pixels < least || pixels > MOST) {
            throw new InvalidValueException(
                    name, pixels + " px is outside its range", "allowed: " + least + " to " + MOST + " px");
        }
    }
}
