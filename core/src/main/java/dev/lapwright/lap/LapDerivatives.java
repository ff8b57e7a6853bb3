package dev.lapwright.lap;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/**
 * Derivatives of one lap time by quantities of the car and the day, all from one solved lap: seconds that the lap gains or loses for
 * each unit more. Where a quantity stands at a kink or at an end of its range the two sides differ.
 *
 * <pre>{@code
 * LapDerivatives slopes = new LapSolver(stations).derivatives(vehicle, car.quantityNames());
 * double perKilogram = slopes.of("chassis.massKg").above();
 * }</pre>
 *
 * <p>They tell what a small change is worth. What a click of several degrees is worth takes a lap of its own.
 */
public final class LapDerivatives {
    private final double time;
    private final Map<String, Sides> sides;

    /**
     * Derivative by one quantity, s per its unit.
     *
     * @param below towards smaller values; NaN where the quantity can be no smaller, or no lap is driven alike
     * @param above towards greater values; NaN likewise
     */
    public record Sides(double below, double above) {
        /** The mean of both sides, or the only one. */
        public double mean() {
            return Double.isNaN(below) ? above : Double.isNaN(above) ? below : 0.5 * (below + above);
        }

        /** Whether the lap time has a kink here: the sides differ by more than this share of the greater. */
        public boolean isKink(double share) {
            return Math.abs(above - below) > share * Math.max(Math.abs(above), Math.abs(below));
        }
    }

    LapDerivatives(double time, Map<String, Sides> sides) {
        this.time = time;
        this.sides = Collections.unmodifiableMap(new LinkedHashMap<>(sides));
    }

    /** Lap time, s. */
    public double time() {
        return time;
    }

    /** Names of the quantities, as they were asked for. */
    public Set<String> names() {
        return sides.keySet();
    }

    /**
     * Derivative by one of the {@link #names}.
     *
     * @throws IllegalArgumentException if it was not asked for
     */
    public Sides of(String name) {
        Sides known = sides.get(name);
        if (known == null) {
            throw new IllegalArgumentException("no derivative by " + name + " was asked for");
        }
        return known;
    }
}
