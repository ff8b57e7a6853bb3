package dev.lapwright.logs;

import java.util.OptionalDouble;

/** Lap times as people and timing screens write them: 1:44.851, 1:44,851, 1'44"851, or seconds. */
public final class LapTimes {
    private LapTimes() {}

    /** Seconds; empty if the text is no lap time. */
    public static OptionalDouble seconds(String text) {
        double seconds = LapTimeText.seconds(text.strip(), "");
        return Double.isNaN(seconds) ? OptionalDouble.empty() : OptionalDouble.of(seconds);
    }
}
