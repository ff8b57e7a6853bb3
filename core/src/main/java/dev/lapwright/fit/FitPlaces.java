package dev.lapwright.fit;

import java.util.Arrays;

/** Finds stations by place. */
final class FitPlaces {
    private FitPlaces() {}

    /** A place brought within the track, m. */
    static double within(double place, double length, boolean closed) {
        if (closed) {
            double x = place % length;
            return x < 0 ? x + length : x;
        }
        return Math.max(0, Math.min(length, place));
    }

    /** The station at or before a place. */
    static int station(double[] s, double place, boolean closed) {
        double x = within(place, s[s.length - 1], closed);
        int i = Arrays.binarySearch(s, x);
        i = i >= 0 ? i : -i - 2;
        return Math.max(0, Math.min(i, s.length - 1));
    }
}
