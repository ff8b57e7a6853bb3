package dev.lapwright.doubt;

import dev.lapwright.car.CarDoubt;
import java.util.Optional;

/**
 * Unknown of a car, a day or a circuit: one number that may be another, with how far off it may be.
 *
 * @param title what it is, in a few words
 * @param size one standard deviation, or a limit, in {@code unit}
 * @param unit of the size; percent is of the value, a point one of percent
 * @param limit whether the size is a limit, within which it is anywhere alike
 * @param source where the document has its value from; empty where it says nothing and the size is assumed
 * @param measure how to know it better, in a few words: common practice; empty where there is none
 * @param group of likes whose share is told together, as the corners of a circuit; empty if it stands alone
 */
public record Unknown(
        String title,
        double size,
        String unit,
        boolean limit,
        Optional<CarDoubt.Source> source,
        String measure,
        String group) {
    /** Whether its size is that of its class, for want of a statement. */
    public boolean isAssumed() {
        return source.isEmpty();
    }
}
