package dev.lapwright.study.compare;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import dev.lapwright.track.Track;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Two laps of one track, side by side: where one gains on the other, and what limits the cars there. Differences are the
 * second lap less the first: positive where the second is slower. By part, by sector and by cause they add up to the
 * difference in lap time. Immutable.
 *
 * <p>A cause says what limits the cars where the time differs; where they are limited by two different things, each is
 * given half. Time that a straight gains because the corner before it was left faster counts as the straight's.
 *
 * <pre>{@code
 * Comparison comparison = Comparison.of(lap, otherLap);
 * comparison.parts().forEach(part -> System.out.println(part.label() + " " + part.difference()));
 * }</pre>
 */
public final class Comparison {
    private static final double SAME_PLACE = 1e-9;

    private final Lap first;
    private final Lap second;
    private final double[] behind;
    private final List<ComparisonPart> parts;

    private Comparison(Lap first, Lap second) {
        this.first = first;
        this.second = second;
        double[] one = first.column(Channel.TIME);
        double[] other = second.column(Channel.TIME);
        behind = new double[one.length];
        for (int i = 0; i < behind.length; i++) {
            behind[i] = other[i] - one[i];
        }
        parts = List.copyOf(new ComparisonParts(first, second).list());
    }

    /**
     * Compares two laps.
     *
     * @throws InvalidValueException if they are not laps of one track, solved at the same stations
     */
    public static Comparison of(Lap first, Lap second) {
        Track track = first.track();
        Track other = second.track();
        if (!track.name().equals(other.name()) || !sameStations(first, second)) {
            throw new InvalidValueException(
                    "laps",
                    "one is of " + track.name() + " (" + Check.text(track.length()) + " m, " + first.count()
                            + " stations), the other of " + other.name() + " (" + Check.text(other.length()) + " m, "
                            + second.count() + " stations)",
                    "compare laps of one track at one spacing");
        }
        return new Comparison(first, second);
    }

    private static boolean sameStations(Lap first, Lap second) {
        double[] one = first.column(Channel.DISTANCE);
        double[] other = second.column(Channel.DISTANCE);
        if (one.length != other.length) {
            return false;
        }
        for (int i = 0; i < one.length; i++) {
            if (!(Math.abs(one[i] - other[i]) <= SAME_PLACE * Math.max(1, one[i]))) {
                return false;
            }
        }
        return Arrays.equals(first.track().sectorEnds(), second.track().sectorEnds());
    }

    /** What is compared with. */
    public Lap first() {
        return first;
    }

    /** What is compared. */
    public Lap second() {
        return second;
    }

    /** Lap time of the second less that of the first, s. */
    public double difference() {
        return second.time() - first.time();
    }

    /** How far the second is behind at each station of the laps, s; a copy. */
    public double[] behind() {
        return behind.clone();
    }

    /** Corners and straights in driving order; one that spans the start line comes last. */
    public List<ComparisonPart> parts() {
        return parts;
    }

    /** Difference in each timing sector, s; adds up to {@link #difference()}. */
    public double[] bySector() {
        double[] one = first.sectorTimes();
        double[] other = second.sectorTimes();
        double[] differences = new double[one.length];
        for (int i = 0; i < differences.length; i++) {
            differences[i] = other[i] - one[i];
        }
        return differences;
    }

    /** Difference by what limits the cars, s; adds up to {@link #difference()}. A copy. */
    public Map<Limit, Double> byCause() {
        Map<Limit, Double> sum = new EnumMap<>(Limit.class);
        for (ComparisonPart part : parts) {
            part.byCause().forEach((limit, seconds) -> sum.merge(limit, seconds, Double::sum));
        }
        return sum;
    }

    /** Difference in all corners together, s. */
    public double inCorners() {
        return parts.stream()
                .filter(ComparisonPart::isCorner)
                .mapToDouble(ComparisonPart::difference)
                .sum();
    }

    /** Difference on all straights together, s. */
    public double onStraights() {
        return parts.stream()
                .filter(part -> !part.isCorner())
                .mapToDouble(ComparisonPart::difference)
                .sum();
    }
}
