package dev.lapwright.track;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/**
 * Segment of a road as a designer draws it: straight, circular arc or clothoid (curvature linear in distance), with the road
 * that holds along it.
 *
 * @param length along the road surface, m
 * @param startCurvature 1/m, positive to the left
 * @param endCurvature 1/m, positive to the left
 * @param road slope, bank, grip, widths and speed limit
 * @param name name of the corner, or an empty string
 */
public record Segment(double length, double startCurvature, double endCurvature, Road road, String name) {
    public Segment {
        Check.inRange("segment length (m)", length, 0.01, 50_000);
        // The ranges are those of a track point.
        TrackPoint.flat(0, startCurvature);
        TrackPoint.flat(0, endCurvature);
    }

    /**
     * Road along a segment, all but its curvature.
     *
     * @param slope rad, positive uphill
     * @param bank rad, positive lowers the left side
     * @param grip relative to the reference surface
     * @param widthLeft free width to the left of the path, m
     * @param widthRight free width to the right of the path, m
     * @param speedLimit m/s; positive infinity for none
     */
    public record Road(double slope, double bank, double grip, double widthLeft, double widthRight, double speedLimit) {
        /** Flat road on the reference surface, 5 m wide on each side of the path, without a speed limit. */
        public static final Road FLAT = new Road(0, 0, 1, 5, 5, Double.POSITIVE_INFINITY);

        public Road {
            // The ranges are those of a track point.
            new TrackPoint(0, 0, slope, bank, 0, grip, widthLeft, widthRight, speedLimit);
        }
    }

    /** Flat straight on the reference surface, 5 m of road on each side. */
    public static Segment straight(double length) {
        return clothoid(length, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    /** Flat circular arc; {@code radius} in m, positive to the left. */
    public static Segment arc(double length, double radius) {
        return clothoid(length, radius, radius);
    }

    /** Flat clothoid between two radii (m, positive to the left; infinite for straight). */
    public static Segment clothoid(double length, double startRadius, double endRadius) {
        return new Segment(length, curvature(startRadius), curvature(endRadius), Road.FLAT, "");
    }

    private static double curvature(double radius) {
        if (Double.isNaN(radius) || radius == 0) {
            throw new InvalidValueException(
                    "radius (m)", Check.text(radius) + " is no radius", "give a radius, or infinity for a straight");
        }
        return 1 / radius;
    }

    private Segment with(Road other) {
        return new Segment(length, startCurvature, endCurvature, other, name);
    }

    /** The same segment with another slope and bank, rad. */
    public Segment inclined(double slope, double bank) {
        return with(new Road(slope, bank, road.grip, road.widthLeft, road.widthRight, road.speedLimit));
    }

    /** The same segment with other free widths to the left and right of its path, m. */
    public Segment wide(double left, double right) {
        return with(new Road(road.slope, road.bank, road.grip, left, right, road.speedLimit));
    }

    /** The same segment under a speed limit, m/s. */
    public Segment limited(double limit) {
        return with(new Road(road.slope, road.bank, road.grip, road.widthLeft, road.widthRight, limit));
    }
}
