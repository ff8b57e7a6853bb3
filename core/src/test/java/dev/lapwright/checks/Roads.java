package dev.lapwright.checks;

import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.List;

/** The simple roads that the checks drive on. */
final class Roads {
    private static final double ANY_SPEED = Double.POSITIVE_INFINITY;
    /** SegmentPath eases changes of slope and bank over this length, m; none of these roads has any. */
    private static final double EASE = 1;

    private Roads() {}

    /** A straight of even slope (rad), entered at a speed in m/s. */
    static Track straight(double entrySpeed, double length, double slope) {
        return Track.open(
                "straight",
                entrySpeed,
                List.of(point(0, 0, slope, 0, ANY_SPEED), point(length, 0, slope, 0, ANY_SPEED)));
    }

    /** A level straight on which a speed (m/s) is held by rule from the start. */
    static Track straightAt(double speed, double length) {
        return Track.open("straight", speed, List.of(point(0, 0, 0, 0, speed), point(length, 0, 0, 0, speed)));
    }

    /** A straight of even slope, at whose end no more than {@code endSpeed} is allowed, and ten metres beyond. */
    static Track straightToSpeed(double entrySpeed, double length, double slope, double endSpeed) {
        return Track.open(
                "straight to a limit",
                entrySpeed,
                List.of(
                        point(0, 0, slope, 0, ANY_SPEED),
                        point(length, 0, slope, 0, ANY_SPEED),
                        point(length, 0, slope, 0, endSpeed),
                        point(length + 10, 0, slope, 0, endSpeed)));
    }

    /** A full circle to the left with an even bank (rad), on which a speed limit may hold. */
    static Track circle(double radius, double bank, double speedLimit) {
        Segment arc =
                Segment.arc(2 * Math.PI * radius, radius).inclined(0, bank).limited(speedLimit);
        return new SegmentPath(List.of(arc), true, EASE).closedTrack("circle", 1e-6);
    }

    /** A full flat circle to the left. */
    static Track circle(double radius) {
        return circle(radius, 0, ANY_SPEED);
    }

    /**
     * A crest or dip of even vertical curvature, 20 m long, level at 10 m.
     *
     * @param entrySpeed m/s
     * @param curvature in plan, 1/m, positive to the left
     * @param verticalCurvature 1/m, negative over a crest
     * @param speedLimit m/s, or infinity
     */
    static Track brow(double entrySpeed, double curvature, double verticalCurvature, double speedLimit) {
        double half = 10;
        return Track.open(
                "brow",
                entrySpeed,
                List.of(
                        browPoint(0, curvature, -half * verticalCurvature, verticalCurvature, speedLimit),
                        browPoint(half, curvature, 0, verticalCurvature, speedLimit),
                        browPoint(2 * half, curvature, half * verticalCurvature, verticalCurvature, speedLimit)));
    }

    private static TrackPoint browPoint(
            double s, double curvature, double slope, double verticalCurvature, double speedLimit) {
        return new TrackPoint(s, curvature, slope, 0, verticalCurvature, 1, 5, 5, speedLimit);
    }

    private static TrackPoint point(double s, double curvature, double slope, double bank, double limit) {
        return new TrackPoint(s, curvature, slope, bank, 0, 1, 5, 5, limit);
    }
}
