package dev.lapwright.fit;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import java.util.Arrays;

/**
 * Modelled speed v(s) of a lap as a function of place, with its integral, so that it can be averaged over any stretch as the
 * log is. The square of speed varies linearly between stations; beyond the ends of a circuit the lap repeats, beyond
 * those of an open run the speed stays.
 */
final class SpeedCurve {
    private final double[] s;
    private final double[] v;
    private final double[] integral;
    private final boolean closed;
    private final double length;

    SpeedCurve(Lap lap) {
        s = lap.column(Channel.DISTANCE);
        v = lap.column(Channel.SPEED);
        closed = lap.track().isClosed();
        length = s[s.length - 1];
        integral = new double[s.length];
        for (int i = 1; i < s.length; i++) {
            integral[i] = integral[i - 1] + area(s[i] - s[i - 1], v[i - 1], v[i]);
        }
    }

    /** Integral of v over ds where v² is linear: (2/3) ds (v₀² + v₀v₁ + v₁²)/(v₀ + v₁). */
    private static double area(double ds, double v0, double v1) {
        double sum = v0 + v1;
        return sum > 0 ? 2.0 / 3 * ds * (v0 * v0 + v0 * v1 + v1 * v1) / sum : 0;
    }

    /** Speed at a place, m/s. */
    double at(double place) {
        double x = within(place);
        int i = cell(x);
        return speed(i, x);
    }

    /** Mean speed from one place to another further on, m/s. */
    double mean(double from, double to) {
        return (integralTo(to) - integralTo(from)) / (to - from);
    }

    private double within(double place) {
        return within(place, length, closed);
    }

    /** Place brought within a track's length, m: taken round on a circuit, held at the ends of an open run. */
    private static double within(double place, double length, boolean closed) {
        if (closed) {
            double x = place % length;
            return x < 0 ? x + length : x;
        }
        return Math.max(0, Math.min(length, place));
    }

    /** Index of the station at or before a place, of stations at rising distances s, m. */
    static int station(double[] s, double place, boolean closed) {
        double x = within(place, s[s.length - 1], closed);
        int i = Arrays.binarySearch(s, x);
        i = i >= 0 ? i : -i - 2;
        return Math.max(0, Math.min(i, s.length - 1));
    }

    /** Integral of v over s from the start to a place, m²/s. */
    double integralTo(double place) {
        double laps = closed ? Math.floor(place / length) : 0;
        double x = closed ? place - laps * length : within(place);
        int i = cell(x);
        double beyond = closed ? 0 : (place - x) * (place < 0 ? v[0] : v[v.length - 1]);
        return laps * integral[s.length - 1] + integral[i] + area(x - s[i], v[i], speed(i, x)) + beyond;
    }

    private double speed(int i, double x) {
        double ds = s[i + 1] - s[i];
        double w = ds > 0 ? (x - s[i]) / ds : 0;
        return Math.sqrt(Math.max(0, v[i] * v[i] * (1 - w) + v[i + 1] * v[i + 1] * w));
    }

    private int cell(double x) {
        int i = Arrays.binarySearch(s, x);
        i = i >= 0 ? i : -i - 2;
        return Math.max(0, Math.min(i, s.length - 2));
    }
}
