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
    private final Grid grid;
    private final double[] s;
    private final double[] v;
    private final double[] integral;
    private final boolean closed;
    private final double length;

    /** Stations at rising distances s, m, and where among them each of so many even steps of distance begins: what finds a place at once. */
    static final class Grid {
        private final double[] s;
        private final int[] first;
        private final double perMetre;

        Grid(double[] stations) {
            s = stations;
            int steps = s.length;
            perMetre = steps / s[s.length - 1];
            first = new int[steps + 1];
            for (int k = 1, i = 0; k <= steps; k++) {
                while (i + 2 < s.length && s[i + 1] * perMetre <= k) {
                    i++;
                }
                first[k] = i;
            }
        }

        /** Index of the cell that a place lies in, m from the start. */
        private int cell(double x) {
            int i = first[(int) Math.max(0, Math.min(first.length - 1, x * perMetre))];
            while (i > 0 && s[i] > x) {
                i--;
            }
            while (i + 2 < s.length && s[i + 1] <= x) {
                i++;
            }
            return i;
        }
    }

    SpeedCurve(Lap lap) {
        this(
                new Grid(lap.column(Channel.DISTANCE)),
                lap.column(Channel.SPEED),
                lap.track().isClosed());
    }

    /** That of speeds at stations, m/s; not copied. */
    SpeedCurve(Grid stations, double[] speeds, boolean closed) {
        grid = stations;
        s = stations.s;
        v = speeds;
        this.closed = closed;
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
        return grid.cell(x);
    }
}
