package dev.lapwright.brief;

import dev.lapwright.lap.Limit;
import dev.lapwright.track.Corner;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * A corner, or what lies between two, and what the lap spends there.
 *
 * @param label the corner, or the corners that a straight lies between
 * @param corner the corner; empty on a straight
 * @param from distance where it begins, m; exceeds {@code to} where it spans the start line
 * @param to distance where it ends, m
 * @param time spent there, s; over all places these add up to the lap time
 * @param share of the lap time, 0 to 1
 * @param entrySpeed m/s
 * @param minimumSpeed m/s
 * @param topSpeed m/s
 * @param exitSpeed m/s
 * @param limits share of the time there limited by each thing; adds up to 1
 */
public record PlaceShare(
        String label,
        Optional<Corner> corner,
        double from,
        double to,
        double time,
        double share,
        double entrySpeed,
        double minimumSpeed,
        double topSpeed,
        double exitSpeed,
        Map<Limit, Double> limits) {
    public PlaceShare {
        Map<Limit, Double> copy = new EnumMap<>(Limit.class);
        copy.putAll(limits);
        limits = copy;
    }

    /** By limit; a copy. */
    @Override
    public Map<Limit, Double> limits() {
        return new EnumMap<>(limits);
    }

    /** Whether it is a corner. */
    public boolean isCorner() {
        return corner.isPresent();
    }

    /** What limits the car most of the time there; of equals the first in the order of {@link Limit}. */
    public Limit mainLimit() {
        return limits.entrySet().stream()
                .reduce((most, other) -> other.getValue() > most.getValue() ? other : most)
                .orElseThrow()
                .getKey();
    }
}
