package dev.lapwright.track;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/**
 * Geometry, grip and width of a track at one distance; between neighbouring points everything varies linearly. Two points at the same distance
 * make a jump, as where an arc joins a straight.
 *
 * @param s distance along the road surface, m
 * @param curvature 1/m, positive to the left
 * @param slope angle of the road along the path, rad, positive uphill
 * @param bank angle across, rad, positive lowers the left side (helps a left turn)
 * @param verticalCurvature change of slope with distance, 1/m, positive in a dip
 * @param grip friction relative to the reference surface
 * @param widthLeft free width to the left of the path, m
 * @param widthRight free width to the right of the path, m
 * @param speedLimit a limit set by rule (pit lane, neutralised stretch), m/s; positive infinity where there is none
 */
public record TrackPoint(
        double s,
        double curvature,
        double slope,
        double bank,
        double verticalCurvature,
        double grip,
        double widthLeft,
        double widthRight,
        double speedLimit) {
    /** The tightest radius accepted is 2 m: less is not a road. */
    private static final double MAX_CURVATURE = 0.5;

    private static final double LEAST_GRIP = 0.05;
    private static final double MOST_GRIP = 3;

    public TrackPoint {
        Check.inRange("s (m)", s, 0, 200_000);
        Check.inRange("curvature (1/m)", curvature, -MAX_CURVATURE, MAX_CURVATURE);
        Check.inRange("slope (rad)", slope, -0.6, 0.6);
        Check.inRange("bank (rad)", bank, -1.2, 1.2);
        Check.inRange("vertical curvature (1/m)", verticalCurvature, -0.2, 0.2);
        Check.inRange("grip", grip, LEAST_GRIP, MOST_GRIP);
        Check.inRange("width to the left (m)", widthLeft, 0, 100);
        Check.inRange("width to the right (m)", widthRight, 0, 100);
        if (!(speedLimit > 0)) {
            throw new InvalidValueException(
                    "speed limit (m/s)", Check.text(speedLimit) + " is not above zero", "leave it out for no limit");
        }
    }

    /** A flat point on the reference surface with 5 m of road on each side and no speed limit. */
    public static TrackPoint flat(double s, double curvature) {
        return new TrackPoint(s, curvature, 0, 0, 0, 1, 5, 5, Double.POSITIVE_INFINITY);
    }

    TrackPoint at(double distance) {
        return new TrackPoint(
                distance, curvature, slope, bank, verticalCurvature, grip, widthLeft, widthRight, speedLimit);
    }

    TrackPoint bending(double newCurvature) {
        return new TrackPoint(s, newCurvature, slope, bank, verticalCurvature, grip, widthLeft, widthRight, speedLimit);
    }

    /** The same with curvature and grip by factors, kept within what a road may have. */
    TrackPoint deviating(double bend, double hold) {
        double bent = Math.max(-MAX_CURVATURE, Math.min(MAX_CURVATURE, bend * curvature));
        double held = Math.max(LEAST_GRIP, Math.min(MOST_GRIP, hold * grip));
        return new TrackPoint(s, bent, slope, bank, verticalCurvature, held, widthLeft, widthRight, speedLimit);
    }

    /** Whether all columns but distance agree within rounding. */
    boolean isNear(TrackPoint other) {
        final double slack = 1e-10;
        return Math.abs(curvature - other.curvature) < slack
                && Math.abs(slope - other.slope) < slack
                && Math.abs(bank - other.bank) < slack
                && Math.abs(verticalCurvature - other.verticalCurvature) < slack
                && Math.abs(grip - other.grip) < slack
                && Math.abs(widthLeft - other.widthLeft) < slack
                && Math.abs(widthRight - other.widthRight) < slack
                && speedLimit == other.speedLimit;
    }

    /** The point at {@code distance} on the straight line between {@code a} and {@code b} in all columns. */
    static TrackPoint between(TrackPoint a, TrackPoint b, double distance) {
        double w = weight(a, b, distance);
        return new TrackPoint(
                distance,
                mix(a.curvature, b.curvature, w),
                mix(a.slope, b.slope, w),
                mix(a.bank, b.bank, w),
                mix(a.verticalCurvature, b.verticalCurvature, w),
                mix(a.grip, b.grip, w),
                mix(a.widthLeft, b.widthLeft, w),
                mix(a.widthRight, b.widthRight, w),
                Math.min(a.speedLimit, b.speedLimit));
    }

    /** The curvature of that point. */
    static double curvatureBetween(TrackPoint a, TrackPoint b, double distance) {
        return mix(a.curvature, b.curvature, weight(a, b, distance));
    }

    private static double weight(TrackPoint a, TrackPoint b, double distance) {
        return b.s == a.s ? 0 : (distance - a.s) / (b.s - a.s);
    }

    private static double mix(double a, double b, double w) {
        return a + w * (b - a);
    }
}
