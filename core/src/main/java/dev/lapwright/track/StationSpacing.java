package dev.lapwright.track;

import dev.lapwright.fault.Check;

/**
 * Greatest distances between stations.
 *
 * @param curved greatest distance between stations where the path bends, m
 * @param straight greatest distance where it does not, m
 */
public record StationSpacing(double curved, double straight) {
    /** The spacing at which the lap time is within a millisecond of its limit; see docs/performance.md. */
    public static final StationSpacing DEFAULT = new StationSpacing(3, 12);

    public StationSpacing {
        Check.inRange("station spacing in curves (m)", curved, 0.01, 100);
        Check.inRange("station spacing on straights (m)", straight, 0.01, 500);
    }

    /** The default made finer (factor below 1) or coarser. */
    public StationSpacing scaled(double factor) {
        return new StationSpacing(curved * factor, straight * factor);
    }
}
