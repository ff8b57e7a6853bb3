package dev.lapwright.track.survey;

import java.util.ArrayList;
import java.util.List;

/**
 * The account of an import: what was done to the points or samples, and what they gave.
 *
 * @param pointsRead in the survey, or samples in the log
 * @param pointsUsed after duplicates, outliers and slow samples were dropped
 * @param smoothing what was done to the plan; of a logged lap, to its acceleration over distance
 * @param shape what came of it
 * @param elevation what was done to the elevation, or null where the survey has none
 * @param log what was done to a logged lap; null for a survey
 * @param motion what was found out about speed and lateral acceleration that were logged with points; null where none were used
 * @param laps how many were pooled
 * @param warnings what a person should look at, each a sentence; unmodifiable
 */
public record ImportReport(
        int pointsRead,
        int pointsUsed,
        SmoothingReport smoothing,
        ShapeReport shape,
        ElevationReport elevation,
        LogReport log,
        MotionReport motion,
        int laps,
        List<String> warnings) {
    /** The warnings cannot be changed. */
    public ImportReport {
        warnings = List.copyOf(warnings);
    }

    /** The same with more to look at, before the rest. */
    public ImportReport warning(List<String> more) {
        List<String> all = new ArrayList<>(more);
        all.addAll(warnings);
        return new ImportReport(pointsRead, pointsUsed, smoothing, shape, elevation, log, motion, laps, all);
    }

    /**
     * The account of how the plan was smoothed.
     *
     * @param wavelength of waves that evenly spaced points lose half the height of, m; 0 where nothing was smoothed
     * @param chosen whether the data chose it
     * @param noise standard deviation of the points' own errors across the line, m; NaN if it cannot be told
     * @param wander standard deviation of the errors that neighbouring points have in common, m; 0 if none are seen
     * @param wanderLength over which such errors are correlated, m; NaN if none are seen
     * @param curvatureUncertainty standard deviation of the curvature, in the mean of squares along the line, 1/m; NaN if it
     *     cannot be told
     * @param largestMove farthest that smoothing moved a point across the line, m
     * @param largestMoveAt where, m along the plan
     */
    public record SmoothingReport(
            double wavelength,
            boolean chosen,
            double noise,
            double wander,
            double wanderLength,
            double curvatureUncertainty,
            double largestMove,
            double largestMoveAt) {}

    /**
     * The account of the line found.
     *
     * @param smallestRadius on the plan, m; infinite for a straight line
     * @param smallestRadiusAt where, m along the road
     * @param totalTurning rad, positive to the left
     * @param crossings how often the line crosses itself
     * @param length along the road surface, m
     * @param climb sum of all that goes up, m
     */
    public record ShapeReport(
            double smallestRadius,
            double smallestRadiusAt,
            double totalTurning,
            int crossings,
            double length,
            double climb) {}

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

    /**
     * The account of the speeds and lateral accelerations that were logged with points.
     *
     * @param samples of the laps pooled, fast enough to tell a curvature
     * @param used without those far from all others, as over kerbs
     * @param accelerationNoise standard deviation of the lateral acceleration's errors, m/s²
     * @param bias constant by which the logger reads too much to the left, m/s²
     * @param scale share by which it reads too much
     */
    public record MotionReport(int samples, int used, double accelerationNoise, double bias, double scale) {}
}
