package dev.lapwright.track.survey;

/**
 * One surveyed point on a plane.
 *
 * @param x to the east, m
 * @param y to the north, m
 * @param z altitude, m; ignored in a survey without elevation
 * @param widthLeft free width to the left in the order of the points, m; ignored in a survey without widths
 * @param widthRight free width to the right in the order of the points, m; ignored in a survey without widths
 */
public record SurveyPoint(double x, double y, double z, double widthLeft, double widthRight) {
    /** A point on a plan without elevation or widths. */
    public static SurveyPoint plan(double x, double y) {
        return new SurveyPoint(x, y, 0, 0, 0);
    }

    double distanceTo(SurveyPoint other) {
        return Math.hypot(other.x - x, other.y - y);
    }
}
