package dev.lapwright.track.survey;

import java.util.List;

/**
 * What an import did and found.
 *
 * @param pointsRead in the survey
 * @param pointsUsed after duplicates were dropped
 * @param smoothing length of waves that evenly spaced points lose half the height of, m; 0 where nothing was smoothed
 * @param smoothingChosen whether the data chose it
 * @param noise standard deviation of the points' errors across the line as the fit sees it, m; NaN if it cannot tell
 * @param curvatureUncertainty standard deviation of the curvature that such errors leave, 1/m; NaN if it cannot tell
 * @param largestMove farthest that smoothing moved a point on the plan, m
 * @param largestMoveAt where, m along the plan
 * @param smallestRadius of the smoothed line on the plan, m; infinite for a straight line
 * @param smallestRadiusAt where, m along the road
 * @param totalTurning of the smoothed line, rad, positive to the left
 * @param crossings how often the line crosses itself
 * @param length along the road surface, m
 * @param climb sum of all that goes up, m
 * @param elevation what was done to the elevation, or null where the survey has none
 * @param warnings what a person should look at, each a sentence; unmodifiable
 */
public record ImportReport(
        int pointsRead,
        int pointsUsed,
        double smoothing,
        boolean smoothingChosen,
        double noise,
        double curvatureUncertainty,
        double largestMove,
        double largestMoveAt,
        double smallestRadius,
        double smallestRadiusAt,
        double totalTurning,
        int crossings,
        double length,
        double climb,
        ElevationReport elevation,
        List<String> warnings) {
    /** The warnings cannot be changed. */
    public ImportReport {
        warnings = List.copyOf(warnings);
    }

    /**
     * What was done to the elevation.
     *
     * @param smoothing as that of the plan, m
     * @param smoothingChosen whether the data chose it
     * @param noise standard deviation of the altitudes' errors as the fit sees it, m; NaN if it cannot tell
     * @param largestMove farthest that smoothing moved an altitude, m
     * @param steepestSlope of the smoothed road, rad
     */
    public record ElevationReport(
            double smoothing, boolean smoothingChosen, double noise, double largestMove, double steepestSlope) {}
}
