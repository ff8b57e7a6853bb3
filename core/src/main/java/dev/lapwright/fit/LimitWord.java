package dev.lapwright.fit;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Corner;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Word on which axle gives up first at the limit, a driver's or that of the steering angle in a log: a measurement of the margin between
 * the axles.
 *
 * @param corner name, or number as in T5, of the corner that it is said of; empty for all corners together
 * @param first which gives up
 * @param error standard deviation with which the margin is felt, of an axle's grip: where one axle has that much grip left when
 *     the other gives up, 84 words of 100 are right
 */
public record LimitWord(String corner, End first, double error) {
    /** What a driver's word is usually worth: ours, without a source. */
    public static final double USUAL_ERROR = 0.03;

    private static final double MOST_ERROR = 0.5;
    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    /** End of the car that gives up. */
    public enum End {
        FRONT,
        REAR,
        /** Both at once: the car is neutral. */
        BOTH
    }

    public LimitWord {
        Check.inRange("error of a word", error, 1e-3, MOST_ERROR);
    }

    /**
     * Margin between the axles on a lap: how much more of its grip the front axle uses than the rear at the corner's apex, in the mean over
     * all corners if the word is of all; positive where the front gives up first.
     *
     * @throws InvalidValueException if the track has no such corner
     */
    public double margin(Lap lap) {
        return margin(lap, corner);
    }

    /**
     * How likely this word is if the margin is so: Φ(m/σ) for "front", Φ(−m/σ) for "rear", exp(−m²/2σ²) beside its greatest for "both", with
     * σ the error.
     */
    public double likelihood(double margin) {
        double t = margin / error;
        return switch (first) {
            case FRONT -> NORMAL.cumulativeProbability(t);
            case REAR -> NORMAL.cumulativeProbability(-t);
            case BOTH -> Math.exp(-0.5 * t * t);
        };
    }

    static double margin(Lap lap, String name) {
        List<Corner> corners = lap.stations().corners();
        double sum = 0;
        int n = 0;
        for (Corner corner : corners) {
            if (name.isEmpty() || isCalled(corner, name)) {
                int at = SpeedCurve.station(
                        lap.column(Channel.DISTANCE), corner.apex(), lap.track().isClosed());
                sum += lap.value(Channel.UTILISATION_FRONT, at) - lap.value(Channel.UTILISATION_REAR, at);
                n++;
            }
        }
        if (n == 0) {
            throw new InvalidValueException(
                    "corner '" + name + "'",
                    lap.track().name() + " has no corner of that name",
                    corners.isEmpty()
                            ? "say it of the whole lap"
                            : "use one of "
                                    + corners.stream().map(Corner::label).collect(Collectors.joining(", ")));
        }
        return sum / n;
    }

    private static boolean isCalled(Corner corner, String name) {
        String label = corner.label();
        return label.equalsIgnoreCase(name)
                || label.toLowerCase(Locale.ROOT).startsWith(name.toLowerCase(Locale.ROOT) + " ");
    }

    /** A word of usual worth on a corner; of all corners if its name is empty. */
    public static LimitWord of(String corner, End first) {
        return new LimitWord(corner, first, USUAL_ERROR);
    }
}
