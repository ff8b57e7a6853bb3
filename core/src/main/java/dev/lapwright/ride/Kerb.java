package dev.lapwright.ride;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/**
 * A kerb on a flat road, as the wheel crosses it.
 *
 * @param shape of the section
 * @param height of its highest place, m
 * @param length along the wheel's way, m
 * @param teeth how many of the shape stand in a row on that length; at least 1
 */
public record Kerb(KerbShape shape, double height, double length, int teeth) {
    private static final double HIGHEST = 0.5;
    private static final int MOST_TEETH = 200;

    public Kerb {
        Check.inRange("kerb height (m)", height, 0, HIGHEST);
        Check.inRange("kerb length (m)", length, 0.01, 100);
        if (teeth < 1 || teeth > MOST_TEETH) {
            throw new InvalidValueException(
                    "kerb teeth", teeth + " is outside its range", "allowed: 1 to " + MOST_TEETH);
        }
    }

    /** Height of the kerb itself (m) at a distance from its beginning, m. */
    public double at(double distance) {
        double place = teeth * distance / length;
        if (!(place >= 0 && place <= teeth)) {
            return 0;
        }
        int tooth = Math.min(teeth - 1, (int) place);
        return height * shape.height(place - tooth);
    }

    /** Area beneath the kerb from its beginning, m². */
    double area(double distance) {
        double place = Math.max(0, Math.min(teeth, teeth * distance / length));
        int tooth = Math.min(teeth - 1, (int) place);
        return height * length / teeth * (tooth * shape.area(1) + shape.area(place - tooth));
    }

    /**
     * What a tyre feels of it. A tyre bridges what is shorter than its contact patch: it is taken to feel the mean height
     * over the patch, so that even a sheer drop has a finite slope. It begins half a patch before the kerb.
     *
     * @param contactLength of the patch, m
     */
    public RoadProfile felt(double contactLength) {
        return new FeltKerb(this, Check.inRange("contact length (m)", contactLength, 0.005, 1));
    }
}
