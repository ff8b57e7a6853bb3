package dev.lapwright.study.compare;

import dev.lapwright.lap.Limit;
import dev.lapwright.track.Corner;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * One part of the lap, a corner or what lies between two, as two laps drive it. Differences are the second lap less the
 * first: positive where the second is slower.
 *
 * @param corner the corner; empty on a straight
 * @param after the corner before a straight, if any
 * @param before the corner after a straight, if any
 * @param from distance where it begins, m; may exceed {@code to} where it spans the start line
 * @param to distance where it ends, m
 * @param first how the first lap drives it
 * @param second how the second lap drives it
 * @param byCause the difference in time, s, by what limits the cars; adds up to {@link #difference()}
 */
public record ComparisonPart(
        Optional<Corner> corner,
        Optional<Corner> after,
        Optional<Corner> before,
        double from,
        double to,
        Drive first,
        Drive second,
        Map<Limit, Double> byCause) {
    public ComparisonPart {
        Map<Limit, Double> copy = new EnumMap<>(Limit.class);
        copy.putAll(byCause);
        byCause = copy;
    }

    /**
     * How one lap drives it.
     *
     * @param time s
     * @param entrySpeed m/s
     * @param minimumSpeed m/s
     * @param topSpeed m/s
     * @param exitSpeed m/s
     */
    public record Drive(double time, double entrySpeed, double minimumSpeed, double topSpeed, double exitSpeed) {}

    /** By cause; a copy. */
    @Override
    public Map<Limit, Double> byCause() {
        return new EnumMap<>(byCause);
    }

    /** Time of the second lap less that of the first, s. */
    public double difference() {
        return second.time() - first.time();
    }

    /** The cause with most of the difference in its direction; empty where there is no difference. */
    public Optional<Limit> mainCause() {
        double sign = Math.signum(difference());
        Limit main = null;
        double most = 0;
        for (Map.Entry<Limit, Double> entry : byCause.entrySet()) {
            if (sign * entry.getValue() > most) {
                most = sign * entry.getValue();
                main = entry.getKey();
            }
        }
        return Optional.ofNullable(main);
    }

    /** Whether it is a corner. */
    public boolean isCorner() {
        return corner.isPresent();
    }

    /** For tables: the corner, or the corners that a straight lies between. */
    public String label() {
        if (corner.isPresent()) {
            return corner.get().label();
        }
        String start = after.map(c -> "T" + c.number()).orElse("start");
        String end = before.map(c -> "T" + c.number()).orElse("end");
        return start + " to " + end;
    }
}
