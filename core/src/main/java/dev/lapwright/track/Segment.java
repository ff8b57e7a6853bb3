package dev.lapwright.track;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/**
 * A piece of road as a designer draws it: straight, arc, or clothoid (curvature linear in distance), with the slope, bank,
 * grip, width and speed limit that hold along it.
 *
 * @param length along the road surface, m
 * @param startCurvature 1/m, positive to the left
 * @param endCurvature 1/m
 * @param slope rad, positive uphill
 * @param bank rad, positive lowers the left side
 * @param grip relative to the reference surface
 * @param widthLeft m
 * @param widthRight m
 * @param speedLimit m/s; positive infinity for none
 * @param name name of the corner, or an empty string
 */
public record Segment(
        double length,
        double startCurvature,
        double endCurvature,
        double slope,
        double bank,
        double grip,
        double widthLeft,
        double widthRight,
        double speedLimit,
        String name) {
    public Segment {
        Check.inRange("segment length (m)", length, 0.01, 50_000);
        // The ranges of the other values are those of a track point.
        new TrackPoint(0, startCurvature, slope, bank, 0, grip, widthLeft, widthRight, speedLimit);
        new TrackPoint(0, endCurvature, slope, bank, 0, grip, widthLeft, widthRight, speedLimit);
    }

    /** A flat straight on the reference surface, 5 m of road on each side. */
    public static Segment straight(double length) {
        return clothoid(length, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    /** A flat arc; {@code radius} in m, positive to the left. */
    public static Segment arc(double length, double radius) {
        return clothoid(length, radius, radius);
    }

    /** A flat clothoid between two radii (m, positive to the left; infinite for straight). */
    public static Segment clothoid(double length, double startRadius, double endRadius) {
        return new Segment(
                length, curvature(startRadius), curvature(endRadius), 0, 0, 1, 5, 5, Double.POSITIVE_INFINITY, "");
    }

    private static double curvature(double radius) {
        if (Double.isNaN(radius) || radius == 0) {
            throw new InvalidValueException(
                    "radius (m)", Check.text(radius) + " is no radius", "give a radius, or infinity for a straight");
        }
        return 1 / radius;
    }

    /** The same piece with another slope and bank, rad. */
    public Segment inclined(double newSlope, double newBank) {
        return new Segment(
                length, startCurvature, endCurvature, newSlope, newBank, grip, widthLeft, widthRight, speedLimit, name);
    }

    /** The same piece with other free widths to the left and right of its path, m. */
    public Segment wide(double left, double right) {
        return new Segment(length, startCurvature, endCurvature, slope, bank, grip, left, right, speedLimit, name);
    }

    /** The same piece under a speed limit, m/s. */
    public Segment limited(double limit) {
        return new Segment(length, startCurvature, endCurvature, slope, bank, grip, widthLeft, widthRight, limit, name);
    }
}
