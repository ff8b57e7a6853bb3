package dev.lapwright.study.optimise;

/**
 * A limit that a setup does not keep.
 *
 * @param limit what is limited
 * @param unit of the three numbers
 * @param wanted at least or at most, whichever it misses
 * @param reached by the setup
 * @param bestAlone what the best setup found for this limit alone reaches, all others forgotten; NaN if that was not asked
 */
public record OptimisationMiss(Limit limit, String unit, double wanted, double reached, double bestAlone) {
    /** What can be limited. */
    public enum Limit {
        TOP_SPEED("top speed"),
        BALANCE_LEAST("limit balance, lower end"),
        BALANCE_MOST("limit balance, upper end"),
        RIDE_HEIGHT("ride height at top speed"),
        UPSHIFTS("upshifts in corners"),
        LAP("a lap on every circuit and day");

        private final String label;

        Limit(String label) {
            this.label = label;
        }

        /** Whether more of it is better. */
        boolean isAtLeast() {
            return this == TOP_SPEED || this == BALANCE_LEAST || this == RIDE_HEIGHT;
        }

        /** For tables and messages. */
        public String label() {
            return label;
        }
    }

    /** By how much it misses, in its unit; above 0. */
    public double shortfall() {
        return Math.abs(wanted - reached);
    }

    /** Whether some setup found keeps this limit when all others are forgotten. */
    public boolean isKeptAlone() {
        return limit.isAtLeast() ? bestAlone >= wanted : bestAlone <= wanted;
    }

    /** The figure of a setup that is limited, in the limit's unit. */
    static double figure(Limit limit, OptimisationPoint point) {
        return switch (limit) {
            case TOP_SPEED -> OptimisationLimits.KMH * point.topSpeed();
            case RIDE_HEIGHT -> point.rideHeightMm();
            case BALANCE_LEAST -> point.balanceLeastPercent();
            case BALANCE_MOST -> point.balanceMostPercent();
            case UPSHIFTS -> point.upshiftsInCorners();
            case LAP -> point.hasLap() ? 0 : OptimisationLimits.NO_LAP;
        };
    }

    OptimisationMiss alone(double best) {
        return new OptimisationMiss(limit, unit, wanted, reached, best);
    }
}
