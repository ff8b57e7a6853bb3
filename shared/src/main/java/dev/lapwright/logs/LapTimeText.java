package dev.lapwright.logs;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Lap times as people and timing screens write them. */
final class LapTimeText {
    /** To seconds, exact by definition. */
    private static final Map<String, Double> UNITS = Map.of("", 1.0, "s", 1.0, "sec", 1.0, "ms", 0.001, "min", 60.0);

    /** 1:44.851, 1:44,851, 1'44"851, 1.44.851, 0:01:44.851. */
    private static final Pattern CLOCK = Pattern.compile(
            "(?:(?<h>\\d{1,2})[:h])?(?<m>\\d{1,3})(?:[:'’m]|\\.(?=\\d\\d\\.))\\s*(?<s>\\d{1,2})(?:[.,\"”](?<f>\\d{0,9}))?[\"”s]?");

    private static final Pattern NUMBER = Pattern.compile("\\d+(?:[.,]\\d*)?");
    private static final int SIXTY = 60;

    private LapTimeText() {}

    /** Whether a heading's unit is one of time: s, ms, min; or says how times are written, as m:ss does. */
    static boolean knows(String unit) {
        return UNITS.containsKey(plain(unit));
    }

    private static String plain(String unit) {
        String lower = unit.toLowerCase(Locale.ROOT).trim();
        return lower.contains(":") ? "" : lower;
    }

    /** Whether a text is written with minutes and seconds. */
    static boolean isClock(String text) {
        return CLOCK.matcher(text).matches();
    }

    /** Seconds; NaN if it is not a time. Minutes and seconds need no unit. */
    static double seconds(String text, String unit) {
        Matcher clock = CLOCK.matcher(text);
        if (clock.matches()) {
            int seconds = Integer.parseInt(clock.group("s"));
            int minutes = Integer.parseInt(clock.group("m"));
            boolean hours = clock.group("h") != null;
            if (seconds >= SIXTY || (hours && minutes >= SIXTY)) {
                return Double.NaN;
            }
            String fraction = clock.group("f");
            String decimal = seconds + "." + (fraction == null || fraction.isEmpty() ? "0" : fraction);
            return SIXTY * (SIXTY * (hours ? Integer.parseInt(clock.group("h")) : 0) + minutes)
                    + Double.parseDouble(decimal);
        }
        return NUMBER.matcher(text).matches()
                ? Double.parseDouble(text.replace(',', '.')) * UNITS.get(plain(unit))
                : Double.NaN;
    }
}
