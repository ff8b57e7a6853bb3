package dev.lapwright.car;

import dev.lapwright.fault.Check;
import java.util.OptionalDouble;

/**
 * Doubt of a day as its document states it, one standard deviation each; empty where it says nothing.
 *
 * @param airTempK of the air's temperature, K
 * @param airPressureHpa of the air's pressure, hPa
 * @param windMps of the wind from the north, and as much from the east, m/s
 */
public record DayDoubt(OptionalDouble airTempK, OptionalDouble airPressureHpa, OptionalDouble windMps) {
    /** Nothing stated. */
    public static final DayDoubt NONE =
            new DayDoubt(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

    /** The greatest that each may be. */
    private static final double MOST = 100;

    public DayDoubt {
        check("doubt of the air's temperature (K)", airTempK);
        check("doubt of the air's pressure (hPa)", airPressureHpa);
        check("doubt of the wind (m/s)", windMps);
    }

    private static void check(String name, OptionalDouble doubt) {
        doubt.ifPresent(value -> Check.inRange(name, value, Double.MIN_NORMAL, MOST));
    }
}
