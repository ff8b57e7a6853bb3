package dev.lapwright.track;

import dev.lapwright.fault.Check;
import java.util.OptionalDouble;

/**
 * Doubt of a road as its document states it, one standard deviation each; empty where it says nothing.
 *
 * @param curvaturePercent of each corner's curvature, percent of it
 * @param width of the road that is used, both sides together, m
 * @param gripPercent of each corner's grip over that of the whole, percent of it
 * @param errorLength over which errors of the curvature go together where their deviation is known at each point, m
 */
public record RoadDoubt(
        OptionalDouble curvaturePercent, OptionalDouble width, OptionalDouble gripPercent, OptionalDouble errorLength) {
    /** Nothing stated. */
    public static final RoadDoubt NONE = new RoadDoubt(
            OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

    /** Length over which errors of curvature go together where nobody says, m: as imports of many kinds of points find it. */
    public static final double USUAL_ERROR_LENGTH = 20;

    private static final double MOST_PERCENT = 100;
    private static final double MOST_LENGTH = 10_000;

    public RoadDoubt {
        check("doubt of the curvature (%)", curvaturePercent, MOST_PERCENT);
        check("doubt of the width (m)", width, MOST_PERCENT);
        check("doubt of the grip (%)", gripPercent, MOST_PERCENT);
        check("length over which errors of curvature go together (m)", errorLength, MOST_LENGTH);
    }

    private static void check(String name, OptionalDouble doubt, double most) {
        doubt.ifPresent(value -> Check.inRange(name, value, Double.MIN_NORMAL, most));
    }

    /** The same with another length over which errors of the curvature go together, m. */
    public RoadDoubt over(double length) {
        return new RoadDoubt(curvaturePercent, width, gripPercent, OptionalDouble.of(length));
    }
}
