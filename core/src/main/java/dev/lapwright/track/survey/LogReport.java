package dev.lapwright.track.survey;

/**
 * What was done to a logged lap before its line was known.
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
