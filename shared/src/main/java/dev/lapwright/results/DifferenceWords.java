package dev.lapwright.results;

import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.Numbers;

/** Wording of a difference between lap times, by the one rule of when it is none and when it counts. */
public final class DifferenceWords {
    /** Digits of a lap time. */
    private static final int MOST_DECIMALS = 3;

    private static final String UNCOUNTED = " (no difference that counts)";

    private DifferenceWords() {}

    /** A difference (s, minus where faster), as in "0.120 s faster than the baseline". */
    public static String than(double difference, String what) {
        return than(difference, what, MOST_DECIMALS);
    }

    /** The same with so many decimals, which are those that its doubt leaves. */
    static String than(double difference, String what, int decimals) {
        return LapTimeDifference.isNone(difference)
                ? "as fast as " + what
                : Numbers.fixed(Math.abs(difference), decimals) + " s " + way(difference) + " than " + what
                        + remark(difference);
    }

    /** The same without what it is compared with: "0.120 s faster", "as fast", "not known". */
    public static String said(double difference) {
        return said(difference, MOST_DECIMALS);
    }

    /** The same with so many decimals, which are those that its doubt leaves. */
    static String said(double difference, int decimals) {
        if (!Double.isFinite(difference)) {
            return "not known";
        }
        return LapTimeDifference.isNone(difference) || Math.abs(difference) < 0.5 * Math.pow(10, -decimals)
                ? "as fast"
                : Numbers.fixed(Math.abs(difference), decimals) + " s " + way(difference) + remark(difference);
    }

    /** A time (s) without its sign. */
    public static String size(double difference) {
        return Numbers.fixed(Math.abs(difference), MOST_DECIMALS) + " s";
    }

    /** Whether a difference (s) is faster or slower. */
    public static String way(double difference) {
        return difference < 0 ? "faster" : "slower";
    }

    /** What to put behind a difference (s) that is one, but does not count; empty behind others. */
    public static String remark(double difference) {
        return LapTimeDifference.isNone(difference) || LapTimeDifference.counts(difference) ? "" : UNCOUNTED;
    }

    /** The least difference that counts, with its unit. */
    public static String least() {
        return Numbers.plain(LapTimeDifference.COUNTS) + " s";
    }
}
