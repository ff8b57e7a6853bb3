package dev.lapwright.study.optimise;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Limits that a setup must keep, on every circuit and day.
 *
 * @param topSpeedKmh top speed at least, km/h
 * @param balanceLeastPercent limit balance at least: see {@link LimitBalance}
 * @param balanceMostPercent limit balance at most
 * @param rideHeightMm ride height of either axle at the top speed at least, mm
 * @param withoutUpshiftInCorner whether no upshift may fall where the car leans on its tyres
 */
public record OptimisationLimits(
        OptionalDouble topSpeedKmh,
        OptionalDouble balanceLeastPercent,
        OptionalDouble balanceMostPercent,
        OptionalDouble rideHeightMm,
        boolean withoutUpshiftInCorner) {
    /** Nothing is demanded. */
    public static final OptimisationLimits NONE = new OptimisationLimits(
            OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), false);

    static final double KMH = 3.6;
    /** A setup without a lap misses more than any setup that has one. */
    static final double NO_LAP = 1e5;

    public OptimisationLimits {
        topSpeedKmh.ifPresent(v -> Check.inRange("least top speed (km/h)", v, 1, 600));
        rideHeightMm.ifPresent(v -> Check.inRange("least ride height (mm)", v, -100, 500));
        balanceLeastPercent.ifPresent(v -> Check.inRange("least limit balance (%)", v, -100, 100));
        balanceMostPercent.ifPresent(v -> Check.inRange("greatest limit balance (%)", v, -100, 100));
        if (balanceLeastPercent.isPresent()
                && balanceMostPercent.isPresent()
                && !(balanceLeastPercent.getAsDouble() <= balanceMostPercent.getAsDouble())) {
            throw new InvalidValueException(
                    "limit balance",
                    "its least " + Check.text(balanceLeastPercent.getAsDouble()) + " % is above its greatest "
                            + Check.text(balanceMostPercent.getAsDouble()) + " %",
                    "swap them");
        }
    }

    /** The same with a least top speed, km/h. */
    public OptimisationLimits withTopSpeedKmh(double least) {
        return new OptimisationLimits(
                OptionalDouble.of(least),
                balanceLeastPercent,
                balanceMostPercent,
                rideHeightMm,
                withoutUpshiftInCorner);
    }

    /** The same with the limit balance in a band, percent. */
    public OptimisationLimits withBalancePercent(double least, double most) {
        return new OptimisationLimits(
                topSpeedKmh, OptionalDouble.of(least), OptionalDouble.of(most), rideHeightMm, withoutUpshiftInCorner);
    }

    /** The same with a least ride height, mm. */
    public OptimisationLimits withRideHeightMm(double least) {
        return new OptimisationLimits(
                topSpeedKmh, balanceLeastPercent, balanceMostPercent, OptionalDouble.of(least), withoutUpshiftInCorner);
    }

    /** The same without upshifts in corners. */
    public OptimisationLimits withoutUpshifts() {
        return new OptimisationLimits(topSpeedKmh, balanceLeastPercent, balanceMostPercent, rideHeightMm, true);
    }

    /** Whether anything is asked of the corners. */
    boolean needCorners() {
        return withoutUpshiftInCorner || balanceLeastPercent.isPresent() || balanceMostPercent.isPresent();
    }

    /** The limits that a setup misses. */
    List<OptimisationResult.Miss> misses(OptimisationResult.Candidate point) {
        List<OptimisationResult.Miss> misses = new ArrayList<>();
        if (!point.hasLap()) {
            misses.add(new OptimisationResult.Miss(OptimisationResult.Miss.Limit.LAP, "", 0, NO_LAP, Double.NaN));
            return misses;
        }
        atLeast(misses, OptimisationResult.Miss.Limit.TOP_SPEED, "km/h", topSpeedKmh, KMH * point.topSpeed());
        atLeast(
                misses,
                OptimisationResult.Miss.Limit.RIDE_HEIGHT,
                "mm",
                rideHeightMm,
                point.limited().rideHeightMm());
        atLeast(
                misses,
                OptimisationResult.Miss.Limit.BALANCE_LEAST,
                "%",
                balanceLeastPercent,
                point.limited().balanceLeastPercent());
        atMost(
                misses,
                OptimisationResult.Miss.Limit.BALANCE_MOST,
                "%",
                balanceMostPercent,
                point.limited().balanceMostPercent());
        OptionalDouble upshifts = withoutUpshiftInCorner ? OptionalDouble.of(0) : OptionalDouble.empty();
        atMost(
                misses,
                OptimisationResult.Miss.Limit.UPSHIFTS,
                "",
                upshifts,
                point.limited().upshiftsInCorners());
        return misses;
    }

    // A figure that does not exist, as the balance where no corner is at the limit, misses nothing.
    private static void atLeast(
            List<OptimisationResult.Miss> misses,
            OptimisationResult.Miss.Limit limit,
            String unit,
            OptionalDouble least,
            double reached) {
        if (least.isPresent() && reached < least.getAsDouble()) {
            misses.add(new OptimisationResult.Miss(limit, unit, least.getAsDouble(), reached, Double.NaN));
        }
    }

    private static void atMost(
            List<OptimisationResult.Miss> misses,
            OptimisationResult.Miss.Limit limit,
            String unit,
            OptionalDouble most,
            double reached) {
        if (most.isPresent() && reached > most.getAsDouble()) {
            misses.add(new OptimisationResult.Miss(limit, unit, most.getAsDouble(), reached, Double.NaN));
        }
    }

    /** Sum of what is missed: a km/h, a millimetre, a percent and a shift count alike. */
    double shortfall(OptimisationResult.Candidate point) {
        return misses(point).stream()
                .mapToDouble(OptimisationResult.Miss::shortfall)
                .sum();
    }
}
