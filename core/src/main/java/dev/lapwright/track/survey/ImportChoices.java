package dev.lapwright.track.survey;

import dev.lapwright.fault.Check;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The choices of an import: whether the line is closed, how it is smoothed, how wide it is, which way it is driven.
 *
 * @param closed whether the end joins the start
 * @param smoothing length of waves that lose half their height, m; empty lets the data choose, 0 goes through all points
 * @param elevationSmoothing the same for the elevation
 * @param accuracy standard deviation of the points' errors across the line where it is known, m; empty lets the data tell
 * @param width of the whole road where the survey has none, m
 * @param reversed whether to drive from the last point to the first
 * @param crossesItself whether the line is meant to cross itself, as a figure of eight does
 * @param corners as many as a driver counts, where that is known; empty lets the data tell
 */
public record ImportChoices(
        boolean closed,
        OptionalDouble smoothing,
        OptionalDouble elevationSmoothing,
        OptionalDouble accuracy,
        double width,
        boolean reversed,
        boolean crossesItself,
        OptionalInt corners) {
    private static final double LONGEST_WAVE = 5000;

    /** @throws dev.lapwright.fault.InvalidValueException if a number is out of its range */
    public ImportChoices {
        smoothing.ifPresent(wave -> Check.inRange("smoothing (m)", wave, 0, LONGEST_WAVE));
        elevationSmoothing.ifPresent(wave -> Check.inRange("elevation smoothing (m)", wave, 0, LONGEST_WAVE));
        accuracy.ifPresent(error -> Check.inRange("accuracy (m)", error, 0.001, 50));
        Check.inRange("width (m)", width, 1, 200);
        corners.ifPresent(count -> Check.inRange("corners", count, 0, 300));
    }

    /** A circuit 10 m wide, smoothed as the data ask for. */
    public static ImportChoices circuit() {
        return new ImportChoices(
                true,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                10,
                false,
                false,
                OptionalInt.empty());
    }

    /** An open run 10 m wide, smoothed as the data ask for. */
    public static ImportChoices openRun() {
        return new ImportChoices(
                false,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                10,
                false,
                false,
                OptionalInt.empty());
    }

    /** The same with the smoothing of the plan set by hand, m. */
    public ImportChoices withSmoothing(double wavelength) {
        return new ImportChoices(
                closed,
                OptionalDouble.of(wavelength),
                elevationSmoothing,
                accuracy,
                width,
                reversed,
                crossesItself,
                corners);
    }

    /** The same, driven from the last point to the first. */
    public ImportChoices backwards() {
        return new ImportChoices(closed, smoothing, elevationSmoothing, accuracy, width, true, crossesItself, corners);
    }

    /** The same for a line that is meant to cross itself. */
    public ImportChoices figureOfEight() {
        return new ImportChoices(closed, smoothing, elevationSmoothing, accuracy, width, reversed, true, corners);
    }

    /** The same for points whose errors across the line are known to have this standard deviation, m. */
    public ImportChoices withAccuracy(double error) {
        return new ImportChoices(
                closed,
                smoothing,
                elevationSmoothing,
                OptionalDouble.of(error),
                width,
                reversed,
                crossesItself,
                corners);
    }

    /** The same for a line on which a driver counts so many corners. */
    public ImportChoices withCorners(int count) {
        return new ImportChoices(
                closed, smoothing, elevationSmoothing, accuracy, width, reversed, crossesItself, OptionalInt.of(count));
    }
}
