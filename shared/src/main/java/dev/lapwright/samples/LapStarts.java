package dev.lapwright.samples;

import java.util.ArrayList;
import java.util.List;

/** Beginnings of laps in a log: where the lap's number changes, or distance or time starts anew. */
public final class LapStarts {
    /** What a distance may fall by without beginning a new lap: jitter, m. */
    public static final double JITTER = 10;

    private final double[] distance;
    private final double[] time;
    private final double[] lap;

    /** Samples of one lap: {@code from} is its first, {@code to} follows its last. */
    public record Range(int from, int to) {}

    /**
     * @param distance m; zeros if it is not logged
     * @param time s; empty if it is not logged
     * @param lap number of the lap; zeros if it is not logged
     */
    public LapStarts(double[] distance, double[] time, double[] lap) {
        this.distance = distance;
        this.time = time;
        this.lap = lap;
    }

    public boolean beginsAnew(int sample) {
        return lap[sample] != lap[sample - 1]
                || distanceFalls(sample)
                || (time.length > 0 && time[sample] < time[sample - 1]);
    }

    /** Whether distance is counted from the line of each lap, and begins again at this sample. */
    public boolean distanceFalls(int sample) {
        return distance[sample] < distance[sample - 1] - JITTER;
    }

    public List<Range> ranges() {
        List<Range> ranges = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= distance.length; i++) {
            if (i == distance.length || beginsAnew(i)) {
                ranges.add(new Range(from, i));
                from = i;
            }
        }
        return ranges;
    }
}
