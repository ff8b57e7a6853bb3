package dev.lapwright.study.robust;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fit.LimitWord;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Corner;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Driver's word of a lap, as the measurement that it is: a likelihood for each car that may be driven, with the driver's own error.
 */
public sealed interface DriverWord {
    /**
     * How likely it would be said of a lap, as a share of the greatest that it may be.
     *
     * @throws InvalidValueException if the track has no such corner
     */
    double likelihood(Lap lap);

    /** Which axle gives up first. */
    record OfLimit(LimitWord word) implements DriverWord {
        @Override
        public double likelihood(Lap lap) {
            return word.likelihood(word.margin(lap));
        }
    }

    /** What is read from a dash or a stopwatch. */
    enum Reading {
        /** Slowest in a corner, m/s. */
        MINIMUM_SPEED,
        /** Fastest on the lap, m/s. */
        TOP_SPEED,
        /** Time of the lap, s. */
        LAP_TIME
    }

    /**
     * Figure of a lap, normal about what the lap truly is.
     *
     * @param reading what was read
     * @param corner number or name of the corner; empty where the whole lap is meant
     * @param value m/s or s
     * @param error standard deviation of what the driver reads, and drives, about what the car could, m/s or s
     */
    record OfFigure(Reading reading, String corner, double value, double error) implements DriverWord {
        /** How far a driver's speed in a corner is usually off what the car could do, and a top speed, m/s: ours, without a source. */
        public static final double USUAL_CORNER_ERROR = 3 / 3.6;

        public static final double USUAL_TOP_ERROR = 2 / 3.6;
        /** The same of a lap time, as a share of it. */
        public static final double USUAL_LAP_ERROR = 0.01;

        public OfFigure {
            Check.positive("what the driver read", value);
            Check.positive("error of what the driver read", error);
        }

        /** With the error that is usual of such a reading. */
        public static OfFigure of(Reading reading, String corner, double value) {
            return new OfFigure(
                    reading,
                    corner,
                    value,
                    switch (reading) {
                        case MINIMUM_SPEED -> USUAL_CORNER_ERROR;
                        case TOP_SPEED -> USUAL_TOP_ERROR;
                        case LAP_TIME -> USUAL_LAP_ERROR * value;
                    });
        }

        @Override
        public double likelihood(Lap lap) {
            double off = (figure(lap) - value) / error;
            return Math.exp(-0.5 * off * off);
        }

        private double figure(Lap lap) {
            return switch (reading) {
                case MINIMUM_SPEED -> slowest(lap);
                case TOP_SPEED -> lap.figures().topSpeed();
                case LAP_TIME -> lap.time();
            };
        }

        private double slowest(Lap lap) {
            List<Corner> corners = lap.stations().corners();
            Corner found = Corner.find(corners, corner)
                    .orElseThrow(() -> new InvalidValueException(
                            "corner '" + corner + "'",
                            lap.track().name() + " has no corner of that name",
                            corners.isEmpty()
                                    ? "say it of the whole lap"
                                    : "use one of "
                                            + corners.stream()
                                                    .map(Corner::label)
                                                    .collect(Collectors.joining(", "))));
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < lap.count(); i++) {
                if (found.contains(lap.value(Channel.DISTANCE, i))) {
                    least = Math.min(least, lap.value(Channel.SPEED, i));
                }
            }
            return least;
        }
    }
}
