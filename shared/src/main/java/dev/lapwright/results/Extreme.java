package dev.lapwright.results;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;

/** Least or greatest value of a column of a lap, and the distance (m) where it is first met. */
record Extreme(double value, double at) {

    static Extreme least(Lap lap, Channel channel) {
        int best = 0;
        for (int i = 1; i < lap.count(); i++) {
            if (lap.value(channel, i) < lap.value(channel, best)) {
                best = i;
            }
        }
        return at(lap, channel, best);
    }

    static Extreme greatest(Lap lap, Channel channel) {
        int best = 0;
        for (int i = 1; i < lap.count(); i++) {
            if (lap.value(channel, i) > lap.value(channel, best)) {
                best = i;
            }
        }
        return at(lap, channel, best);
    }

    private static Extreme at(Lap lap, Channel channel, int station) {
        return new Extreme(lap.value(channel, station), lap.value(Channel.DISTANCE, station));
    }
}
