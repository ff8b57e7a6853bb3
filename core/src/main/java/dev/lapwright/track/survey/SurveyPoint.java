package dev.lapwright.track.survey;

import dev.lapwright.fault.Check;

/**
 * One surveyed point on a plane.
 *
 * @param x to the east, m
 * @param y to the north, m
 * @param z altitude, m; ignored in a survey without elevation
 * @param widthLeft free width to the left in the order of the points, m; ignored in a survey without widths
 * @param widthRight free width to the right in the order of the points, m; ignored in a survey without widths
 * @param bank rad, positive lowers the left side
 * @param grip relative to the reference surface
 * @param motion of the car there, or null where it was not logged
 */
public record SurveyPoint(
        double x, double y, double z, double widthLeft, double widthRight, double bank, double grip, Motion motion) {
    /**
     * Motion of a car, as a logger tells it.
     *
     * @param way that was gone since the log began, m
     * @param speed m/s
     * @param lateralAcceleration m/s², positive to the left
     */
    public record Motion(double way, double speed, double lateralAcceleration) {
        /** @throws dev.lapwright.fault.InvalidValueException if a number is not finite or out of its range */
        public Motion {
            Check.inRange("way (m)", way, -1e8, 1e8);
            Check.inRange("speed (m/s)", speed, -1, 1000);
            Check.inRange("lateral acceleration (m/s²)", lateralAcceleration, -200, 200);
        }

        private Motion towards(Motion other, double share) {
            return new Motion(
                    way + share * (other.way - way),
                    speed + share * (other.speed - speed),
                    lateralAcceleration + share * (other.lateralAcceleration - lateralAcceleration));
        }

        /** The same as one sees it who drives the other way. */
        private Motion reversed() {
            return new Motion(-way, speed, -lateralAcceleration);
        }
    }

    /** A point where no motion was logged. */
    public SurveyPoint(double x, double y, double z, double widthLeft, double widthRight, double bank, double grip) {
        this(x, y, z, widthLeft, widthRight, bank, grip, null);
    }

    /** A point of a road without bank, on the reference surface. */
    public SurveyPoint(double x, double y, double z, double widthLeft, double widthRight) {
        this(x, y, z, widthLeft, widthRight, 0, 1);
    }

    /** A point on a plan without elevation or widths. */
    public static SurveyPoint plan(double x, double y) {
        return new SurveyPoint(x, y, 0, 0, 0);
    }

    /** The same point of the road, found elsewhere. */
    SurveyPoint at(double newX, double newY, double newZ) {
        return new SurveyPoint(newX, newY, newZ, widthLeft, widthRight, bank, grip, motion);
    }

    /** The same point as one who drives the other way sees it. */
    SurveyPoint reversed() {
        return new SurveyPoint(x, y, z, widthRight, widthLeft, -bank, grip, motion == null ? null : motion.reversed());
    }

    /** The same point with what a logger told there. */
    public SurveyPoint moving(Motion logged) {
        return new SurveyPoint(x, y, z, widthLeft, widthRight, bank, grip, logged);
    }

    /** The point a share of the way to another. */
    SurveyPoint towards(SurveyPoint other, double share) {
        return new SurveyPoint(
                x + share * (other.x - x),
                y + share * (other.y - y),
                z + share * (other.z - z),
                widthLeft + share * (other.widthLeft - widthLeft),
                widthRight + share * (other.widthRight - widthRight),
                bank + share * (other.bank - bank),
                grip + share * (other.grip - grip),
                motion == null || other.motion == null ? null : motion.towards(other.motion, share));
    }

    double distanceTo(SurveyPoint other) {
        return Math.hypot(other.x - x, other.y - y);
    }
}
