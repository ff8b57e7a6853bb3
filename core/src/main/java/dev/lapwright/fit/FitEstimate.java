package dev.lapwright.fit;

/**
 * What the laps say of one parameter. Values are in the parameter's unit.
 *
 * @param parameter which
 * @param before of the car as given
 * @param value fitted; {@code before} where it was held
 * @param standardError NaN where it was held
 * @param lower end of the interval, not below zero but for downforce; NaN where it was held
 * @param upper end of the interval; NaN where it was held
 * @param standing how well the laps tell it
 * @param atBound whether the fit ended at the end of what was searched: then the interval says little
 */
public record FitEstimate(
        FitParameter parameter,
        double before,
        double value,
        double standardError,
        double lower,
        double upper,
        FitStanding standing,
        boolean atBound) {
    /** Whether the laps tell it by itself. */
    public boolean determined() {
        return standing == FitStanding.DETERMINED && !atBound;
    }

    /** Value over that before, less one; NaN where that was zero. */
    public double change() {
        return before == 0 ? Double.NaN : value / before - 1;
    }
}
