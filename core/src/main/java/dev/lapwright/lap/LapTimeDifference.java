package dev.lapwright.lap;

/**
 * Difference between two lap times, s: minus where the lap looked at is faster than the one that it is held against. Here
 * stands the one rule by which two laps are alike, for every study, report and chart.
 */
public final class LapTimeDifference {
    /** A difference below this is none, s: half of the last digit of a lap time, which is told in thousandths. */
    public static final double NONE = 0.0005;

    /**
     * A difference below this is none that counts, s. Laps of a good driver scatter by some 0.3 s (common practice, no
     * source); to show 0.05 s among them takes 567 laps with each of two setups ({@link
     * dev.lapwright.evidence.LapsToSee}), more than anybody drives. Our choice, no source.
     */
    public static final double COUNTS = 0.05;

    private LapTimeDifference() {}

    /** Whether a difference (s) is none; false for NaN. */
    public static boolean isNone(double difference) {
        return Math.abs(difference) < NONE;
    }

    /** Whether a difference (s), faster or slower, counts; false for NaN. */
    public static boolean counts(double difference) {
        return Math.abs(difference) >= COUNTS;
    }

    /** Whether a difference (s) is one, and makes the lap faster; false for NaN. */
    public static boolean isFaster(double difference) {
        return difference <= -NONE;
    }

    /** Whether a difference (s) is one, and makes the lap slower; false for NaN. */
    public static boolean isSlower(double difference) {
        return difference >= NONE;
    }
}
