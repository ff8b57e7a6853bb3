package dev.lapwright.results;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;

/** Least or greatest value of a column of a lap, and the distance (m) where it is first met. */
record Extreme(double value, double at) {

    static Extreme least(Lap lap, Channel channel) {
        return least(lap.column(Channel.DISTANCE), lap.column(channel));
    }

    static Extreme greatest(Lap lap, Channel channel) {
        return greatest(lap.column(Channel.DISTANCE), lap.column(channel));
    }

    /** The least of some values over distance s, m. */
    static Extreme least(double[] s, double[] values) {
        int best = 0;
        for (int i = 1; i < values.length; i++) {
            best = values[i] < values[best] ? i : best;
        }
        return new Extreme(values[best], s[best]);
    }

    /** The greatest of some values over distance s, m. */
    static Extreme greatest(double[] s, double[] values) {
        int best = 0;
        for (int i = 1; i < values.length; i++) {
            best = values[i] > values[best] ? i : best;
        }
        return new Extreme(values[best], s[best]);
    }
}
