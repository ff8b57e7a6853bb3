package dev.lapwright.charts;

import dev.lapwright.fault.InvalidValueException;

/**
 * Size of a picture. Text has a fixed size in pixels, so a larger picture has more room, not larger letters.
 *
 * @param width px, 320 to 10000
 * @param height px, 240 to 40000
 */
public record ImageSize(int width, int height) {
    private static final int LEAST_WIDTH = 320;
    private static final int LEAST_HEIGHT = 240;
    private static final int MOST_WIDTH = 10_000;
    /** Rows above each other on a narrow page want it. */
    private static final int MOST_HEIGHT = 40_000;

    /** For traces and sweeps. */
    public static final ImageSize WIDE = new ImageSize(1200, 700);
    /** For maps. */
    public static final ImageSize MAP = new ImageSize(1200, 900);
    /** For diagrams with equal scales. */
    public static final ImageSize SQUARE = new ImageSize(900, 900);

    public ImageSize {
        checkWidth("picture width", width);
        check("picture height", height, LEAST_HEIGHT, MOST_HEIGHT);
    }

    /** Refuses a width outside its range, px, under the name by which it was given. */
    public static void checkWidth(String name, int width) {
        check(name, width, LEAST_WIDTH, MOST_WIDTH);
    }

    private static void check(String name, int pixels, int least, int most) {
        if (pixels < least || pixels > most) {
            throw new InvalidValueException(
                    name, pixels + " px is outside its range", "allowed: " + least + " to " + most + " px");
        }
    }
}
