package dev.lapwright.study.compare;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import dev.lapwright.track.Corner;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Comparison of two laps of one track: where one is faster than the other, and what limits the cars there. Differences are the
 * second lap less the first: minus where the second is faster. By part, by sector and by cause they add up to the
 * difference in lap time. Immutable.
 *
 * <p>A cause says what limits the cars where the time differs; where they are limited by two different things, each is
 * given half. Time that a straight saves because the corner before it was left faster counts as the straight's.
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
    private final List<Part> parts;

    private Comparison(Lap first, Lap second) {
        this.first = first;
        this.second = second;
        double[] one = first.column(Channel.TIME);
        double[] other = second.column(Channel.TIME);
        behind = new double[one.length];
        for (int i = 0; i < behind.length; i++) {
            behind[i] = other[i] - one[i];
        }
        parts = List.copyOf(new PartCutter(first, second).list());
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
    public List<Part> parts() {
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
        for (Part part : parts) {
            part.byCause().forEach((limit, seconds) -> sum.merge(limit, seconds, Double::sum));
        }
        return sum;
    }

    /** Difference in all corners together, s. */
    public double inCorners() {
        return parts.stream()
                .filter(Part::isCorner)
                .mapToDouble(Part::difference)
                .sum();
    }

    /** Difference on all straights together, s. */
    public double onStraights() {
        return parts.stream()
                .filter(part -> !part.isCorner())
                .mapToDouble(Part::difference)
                .sum();
    }

    /**
     * Part of the lap, a corner or what lies between two, as two laps drive it. Differences are the second lap less the
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
    public record Part(
            Optional<Corner> corner,
            Optional<Corner> after,
            Optional<Corner> before,
            double from,
            double to,
            Drive first,
            Drive second,
            Map<Limit, Double> byCause) {
        public Part {
            Map<Limit, Double> copy = new EnumMap<>(Limit.class);
            copy.putAll(byCause);
            byCause = copy;
        }

        /**
         * Time and speeds of one lap there.
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

    /** Division of two laps into corners and straights. Each cell between two stations belongs to one part. */
    static final class PartCutter {
        private final Lap first;
        private final Lap second;
        private final List<Corner> all;
        private final double[] s;
        private final double[][] time;
        private final double[][] speed;

        PartCutter(Lap first, Lap second) {
            this.first = first;
            this.second = second;
            all = first.stations().corners();
            s = first.column(Channel.DISTANCE);
            time = new double[][] {first.column(Channel.TIME), second.column(Channel.TIME)};
            speed = new double[][] {first.column(Channel.SPEED), second.column(Channel.SPEED)};
        }

        /** In driving order; what spans the start line last. */
        List<Part> list() {
            List<List<Integer>> runs = new ArrayList<>();
            List<Optional<Corner>> corners = new ArrayList<>();
            for (int i = 0; i + 1 < s.length; i++) {
                Optional<Corner> corner = Corner.at(all, 0.5 * (s[i] + s[i + 1]));
                if (runs.isEmpty() || !corner.equals(corners.get(corners.size() - 1))) {
                    runs.add(new ArrayList<>());
                    corners.add(corner);
                }
                runs.get(runs.size() - 1).add(i);
            }
            int last = runs.size() - 1;
            if (last > 0 && first.track().isClosed() && corners.get(0).equals(corners.get(last))) {
                runs.get(last).addAll(runs.get(0));
                runs.remove(0);
                corners.remove(0);
            }
            List<Part> parts = new ArrayList<>();
            for (int k = 0; k < runs.size(); k++) {
                parts.add(part(runs.get(k), corners, k));
            }
            return parts;
        }

        private Part part(List<Integer> cells, List<Optional<Corner>> corners, int k) {
            boolean closed = first.track().isClosed();
            int count = corners.size();
            boolean straight = corners.get(k).isEmpty() && count > 1;
            Optional<Corner> after =
                    straight && (k > 0 || closed) ? corners.get((k - 1 + count) % count) : Optional.empty();
            Optional<Corner> before =
                    straight && (k + 1 < count || closed) ? corners.get((k + 1) % count) : Optional.empty();
            return new Part(
                    corners.get(k),
                    after,
                    before,
                    s[cells.get(0)],
                    s[cells.get(cells.size() - 1) + 1],
                    drive(0, cells),
                    drive(1, cells),
                    causes(cells));
        }

        private Part.Drive drive(int lap, List<Integer> cells) {
            double spent = 0;
            double least = Double.POSITIVE_INFINITY;
            double most = 0;
            double[] v = speed[lap];
            for (int i : cells) {
                spent += time[lap][i + 1] - time[lap][i];
                least = Math.min(least, Math.min(v[i], v[i + 1]));
                most = Math.max(most, Math.max(v[i], v[i + 1]));
            }
            return new Part.Drive(spent, v[cells.get(0)], least, most, v[cells.get(cells.size() - 1) + 1]);
        }

        /** Each end of a cell, in each lap, answers for a quarter of the cell's difference. */
        private Map<Limit, Double> causes(List<Integer> cells) {
            Map<Limit, Double> causes = new EnumMap<>(Limit.class);
            for (int i : cells) {
                double lost = time[1][i + 1] - time[1][i] - (time[0][i + 1] - time[0][i]);
                for (Lap lap : List.of(first, second)) {
                    causes.merge(lap.limit(i), 0.25 * lost, Double::sum);
                    causes.merge(lap.limit(i + 1), 0.25 * lost, Double::sum);
                }
            }
            return causes;
        }
    }
}
