package dev.lapwright.study.optimise;

import java.util.List;

/**
 * What a setup gives on all circuits and days of an optimisation.
 *
 * @param settings of the adjustments searched, in their order and units
 * @param cost what the search makes small, s: the lap time, or where the worst day counts the lap time of the setup that was
 *     there before less the least gain on any day
 * @param lapTime mean over the circuits by weight and over the days, s; NaN where there is no lap
 * @param circuitTimes mean lap time over the days for each circuit, s
 * @param topSpeed the least of all circuits and days, m/s
 * @param rideHeightMm least ride height of either axle at the top speed, platform settled, least of all circuits and days
 * @param balanceLeastPercent least limit balance of all circuits and days, percent; NaN where it was not asked for or no
 *     corner is taken at the limit
 * @param balanceMostPercent the greatest
 * @param upshiftsInCorners upshifts while leaning on the tyres, on all circuits and days; -1 where it was not asked for
 * @param failure why there is no lap; empty where there is one
 */
public record OptimisationPoint(
        List<Double> settings,
        double cost,
        double lapTime,
        List<Double> circuitTimes,
        double topSpeed,
        double rideHeightMm,
        double balanceLeastPercent,
        double balanceMostPercent,
        int upshiftsInCorners,
        String failure) {
    public OptimisationPoint {
        settings = List.copyOf(settings);
        circuitTimes = List.copyOf(circuitTimes);
    }

    static OptimisationPoint withoutLap(List<Double> settings, String failure) {
        double none = Double.NaN;
        return new OptimisationPoint(settings, none, none, List.of(), none, none, none, none, -1, failure);
    }

    /** Whether every circuit has a lap on every day. */
    public boolean hasLap() {
        return failure.isEmpty();
    }
}
