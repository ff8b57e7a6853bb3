package dev.lapwright.track.survey;

import java.util.ArrayList;
import java.util.List;

/**
 * The account of an import: what was done to the points or samples, and what they gave.
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
 * @param log what was done to a logged lap, whose smoothing is then that of acceleration over distance; null for a survey
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
        LogReport log,
        List<String> warnings) {
    /** The warnings cannot be changed. */
    public ImportReport {
        warnings = List.copyOf(warnings);
    }

    /** The report of a line that a log gave. */
    ImportReport ofLog(
            LogReport ofLog, double wavelength, boolean chosen, double uncertainty, List<String> ofLogAndLine) {
        return new ImportReport(
                ofLog.samples(),
                ofLog.samples() - ofLog.slow(),
                wavelength,
                chosen,
                Double.NaN,
                uncertainty,
                0,
                0,
                smallestRadius,
                smallestRadiusAt,
                totalTurning,
                crossings,
                length,
                climb,
                null,
                ofLog,
                ofLogAndLine);
    }

    /** The same with more to look at, before the rest. */
    public ImportReport warning(List<String> more) {
        List<String> all = new ArrayList<>(more);
        all.addAll(warnings);
        return new ImportReport(
                pointsRead,
                pointsUsed,
                smoothing,
                smoothingChosen,
                noise,
                curvatureUncertainty,
                largestMove,
                largestMoveAt,
                smallestRadius,
                smallestRadiusAt,
                totalTurning,
                crossings,
                length,
                climb,
                elevation,
                log,
                all);
    }

    /**
     * The account of what was done to the elevation.
     *
     * @param smoothing as that of the plan, m
     * @param smoothingChosen whether the data chose it
     * @param noise standard deviation of the altitudes' errors as the fit sees it, m; NaN if it cannot tell
     * @param largestMove farthest that smoothing moved an altitude, m
     * @param steepestSlope of the smoothed road, rad
     */
    public record ElevationReport(
            double smoothing, boolean smoothingChosen, double noise, double largestMove, double steepestSlope) {}

    /**
     * The account of what was done to a logged lap before its line was known.
     *
     * @param samples in the log
     * @param slow how many of them were left out because the car stood or was too slow to tell a curvature
     * @param accelerationNoise standard deviation of the lateral acceleration's errors as the fit sees it, m/s²; NaN if it cannot
     *     tell
     * @param headingError by how much the log turns more than the whole rounds it should, rad; 0 for an open run
     * @param positionGap from the end to the start once the heading error was spread, m; 0 for an open run
     * @param largestCurvatureChange that closing the loop made anywhere, 1/m
     */
    public record LogReport(
            int samples,
            int slow,
            double accelerationNoise,
            double headingError,
            double positionGap,
            double largestCurvatureChange) {}
}
