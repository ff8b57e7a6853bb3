package dev.lapwright.fit;

import dev.lapwright.fault.Check;

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

    /** A word of usual worth on a corner; of all corners if its name is empty. */
    public static LimitWord of(String corner, End first) {
        return new LimitWord(corner, first, USUAL_ERROR);
    }
}
