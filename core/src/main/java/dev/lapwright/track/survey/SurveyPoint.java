package dev.lapwright.track.survey;

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
 */
public record SurveyPoint(double x, double y, double z, double widthLeft, double widthRight, double bank, double grip) {
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
        return new SurveyPoint(newX, newY, newZ, widthLeft, widthRight, bank, grip);
    }

    /** The same point as one who drives the other way sees it. */
    SurveyPoint reversed() {
        return new SurveyPoint(x, y, z, widthRight, widthLeft, -bank, grip);
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
                grip + share * (other.grip - grip));
    }

    double distanceTo(SurveyPoint other) {
        return Math.hypot(other.x - x, other.y - y);
    }
}
