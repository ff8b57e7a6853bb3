package dev.lapwright.tyre;

import dev.lapwright.fault.Check;

/**
 * Scale of grip by pressure and temperature: each a parabola about its ideal, never below {@link #FLOOR}.
 *
 * <p>Common practice, no source: near its window a tyre's grip is flat and falls with the square of the distance from it.
 */
public final class TyreState {
    /** Share of grip left however far from the window. */
    public static final double FLOOR = 0.6;

    private TyreState() {}

    /**
     * @param value pressure or temperature
     * @param ideal the value with the most grip, in the same unit
     * @param lossPerSquare share of grip lost per unit squared away from the ideal
     * @return factor on grip, {@link #FLOOR} to 1
     */
    public static double gripFactor(double value, double ideal, double lossPerSquare) {
        Check.finite("loss per square", lossPerSquare);
        double away = Check.finite("pressure or temperature", value) - Check.finite("ideal", ideal);
        return Math.max(FLOOR, 1 - lossPerSquare * away * away);
    }
}
