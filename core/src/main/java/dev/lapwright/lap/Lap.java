package dev.lapwright.lap;

import dev.lapwright.fault.Check;
import dev.lapwright.track.Corner;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * A lap, or one run over an open track: columns of one length over the stations, and what limits the car at each. Immutable.
 */
public final class Lap {
    /** Speeds that are the same but for rounding, as a share of them. */
    private static final double ALIKE = 1e-12;

    private final Vehicle vehicle;
    private final Stations stations;
    private final double[][] columns;
    private final Limit[] limits;
    /** Null for a lap by the solver's own model. */
    private final BitSet unchecked;

    private final double time;
    private final double peakSpeed;

    Lap(
            Vehicle vehicle,
            Stations stations,
            double[][] columns,
            Limit[] limits,
            BitSet unchecked,
            double time,
            double peakSpeed) {
        this.unchecked = unchecked;
        this.vehicle = vehicle;
        this.stations = stations;
        this.columns = columns;
        this.limits = limits;
        this.time = time;
        this.peakSpeed = peakSpeed;
    }

    /** Lap time, s. */
    public double time() {
        return time;
    }

    /** Number of stations. */
    public int count() {
        return limits.length;
    }

    /** A column, one value for each station, in the channel's unit; a copy. */
    public double[] column(Channel channel) {
        return columns[channel.ordinal()].clone();
    }

    /** One value of a column. */
    public double value(Channel channel, int station) {
        return columns[channel.ordinal()][station];
    }

    /** What limits the car at a station. */
    public Limit limit(int station) {
        return limits[station];
    }

    /** Whether another model was asked for the car's limits: {@link LapSolver#asking}. */
    public boolean isByAnotherModel() {
        return unchecked != null;
    }

    /** Whether a lap by another model has, at a station or on the way to the next, the word of the solver's own for want of that one's. */
    public boolean isUnchecked(int station) {
        return unchecked != null && unchecked.get(station);
    }

    /** The car that drove it. */
    public Vehicle vehicle() {
        return vehicle;
    }

    /** The stations it was solved at. */
    public Stations stations() {
        return stations;
    }

    /** The track. */
    public Track track() {
        return stations.track();
    }

    /** Time at a distance (m) from the start, s, by linear variation of v² between stations. */
    public double timeAt(double distance) {
        return timeAt(
                distance,
                columns[Channel.DISTANCE.ordinal()],
                columns[Channel.SPEED.ordinal()],
                columns[Channel.TIME.ordinal()]);
    }

    /** The same of distances, speeds and times at stations. */
    private static double timeAt(double distance, double[] s, double[] v, double[] t) {
        Check.inRange("distance (m)", distance, s[0], s[s.length - 1]);
        int i = cellOf(s, distance);
        double ds = s[i + 1] - s[i];
        // A run may begin at rest, where no share of the cell's time could be told.
        if (!(ds > 0) || distance == s[i]) {
            return t[i];
        }
        double here = speedAt(distance, s, v);
        // Share of the cell's time, so that the station's times are met exactly.
        double part = 2 * (distance - s[i]) / (v[i] + here);
        double whole = 2 * ds / (v[i] + v[i + 1]);
        return t[i] + (t[i + 1] - t[i]) * part / whole;
    }

    /** Speed at a distance (m), m/s, by linear variation of v² between stations. */
    public double speedAt(double distance) {
        return speedAt(distance, columns[Channel.DISTANCE.ordinal()], columns[Channel.SPEED.ordinal()]);
    }

    private static double speedAt(double distance, double[] s, double[] v) {
        Check.inRange("distance (m)", distance, s[0], s[s.length - 1]);
        int i = cellOf(s, distance);
        double ds = s[i + 1] - s[i];
        double w = ds > 0 ? (distance - s[i]) / ds : 0;
        return Math.sqrt(v[i] * v[i] * (1 - w) + v[i + 1] * v[i + 1] * w);
    }

    private static int cellOf(double[] s, double distance) {
        int i = Arrays.binarySearch(s, distance);
        i = i >= 0 ? i : -i - 2;
        return Math.max(0, Math.min(i, s.length - 2));
    }

    /** Time spent in each timing sector, s. */
    public double[] sectorTimes() {
        return sectorTimes(
                track().sectorEnds(),
                columns[Channel.DISTANCE.ordinal()],
                columns[Channel.SPEED.ordinal()],
                columns[Channel.TIME.ordinal()]);
    }

    /** The same by where sectors end, m, and distances, speeds and times at stations. */
    static double[] sectorTimes(double[] ends, double[] s, double[] v, double[] t) {
        double[] times = new double[ends.length];
        double before = 0;
        for (int i = 0; i < ends.length; i++) {
            double at = i == ends.length - 1 ? t[t.length - 1] : timeAt(ends[i], s, v, t);
            times[i] = at - before;
            before = at;
        }
        return times;
    }

    /** Share of the lap's time limited by each thing; the shares add up to 1. */
    public Map<Limit, Double> limitShares() {
        Map<Limit, Double> shares = new EnumMap<>(Limit.class);
        double[] t = columns[Channel.TIME.ordinal()];
        for (int i = 0; i + 1 < limits.length; i++) {
            double half = 0.5 * (t[i + 1] - t[i]) / time;
            shares.merge(limits[i], half, Double::sum);
            shares.merge(limits[i + 1], half, Double::sum);
        }
        return shares;
    }

    /** Gears used under drive. */
    public SortedSet<Integer> gearsUsed() {
        SortedSet<Integer> gears = new TreeSet<>();
        for (int i = 0; i < limits.length; i++) {
            if (limits[i] != Limit.BRAKES) {
                gears.add((int) columns[Channel.GEAR.ordinal()][i]);
            }
        }
        return gears;
    }

    /** Figures in short. */
    public LapFigures figures() {
        double[] v = columns[Channel.SPEED.ordinal()];
        double[] cellTimes = new double[v.length - 1];
        double[] t = columns[Channel.TIME.ordinal()];
        for (int i = 0; i < cellTimes.length; i++) {
            cellTimes[i] = t[i + 1] - t[i];
        }
        return LapFigures.of(stations.corners(), columns[Channel.DISTANCE.ordinal()], v, cellTimes, time, peakSpeed);
    }

    /** What happened in each corner. */
    public List<CornerFigures> corners() {
        List<CornerFigures> list = new ArrayList<>();
        double[] s = columns[Channel.DISTANCE.ordinal()];
        double[] v = columns[Channel.SPEED.ordinal()];
        double[] ay = columns[Channel.LATERAL_ACCELERATION.ordinal()];
        for (Corner corner : stations.corners()) {
            double least = Double.POSITIVE_INFINITY;
            double at = corner.apex();
            double most = 0;
            int slowest = 0;
            for (int i = 0; i < s.length; i++) {
                if (LapFigures.within(corner, s[i])) {
                    // Of places that are alike but for rounding the first.
                    if (v[i] < least * (1 - ALIKE)) {
                        at = s[i];
                        slowest = i;
                    }
                    least = Math.min(least, v[i]);
                    most = Math.max(most, Math.abs(ay[i]));
                }
            }
            double spent = corner.entry() <= corner.exit()
                    ? timeAt(corner.exit()) - timeAt(corner.entry())
                    : time - timeAt(corner.entry()) + timeAt(corner.exit());
            list.add(new CornerFigures(
                    corner,
                    speedAt(corner.entry()),
                    least,
                    at,
                    speedAt(corner.exit()),
                    most,
                    spent,
                    (int) columns[Channel.GEAR.ordinal()][slowest],
                    limits[slowest]));
        }
        return list;
    }
}
