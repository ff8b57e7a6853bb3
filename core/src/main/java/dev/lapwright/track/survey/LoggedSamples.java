package dev.lapwright.track.survey;

import dev.lapwright.track.survey.RoadPosterior.Turning;
import java.util.Arrays;

/**
 * Samples of speed and lateral acceleration that were logged with positions, each by the way that the logger had gone. Where
 * they stand on a line follows from where the positions stand: what way and line differ by there, averaged over some length, for
 * single positions err along the line as they do across it.
 *
 * @param lap of each sample, from 0
 * @param way that was gone in the lap, m
 * @param speed m/s
 * @param acceleration to the left, m/s²
 */
record LoggedSamples(int[] lap, double[] way, double[] speed, double[] acceleration) {
    static final LoggedSamples NONE = new LoggedSamples(new int[0], new double[0], new double[0], new double[0]);

    /** Half the length over which positions are averaged, m: less than their errors wander over, more than a few of them take. */
    private static final double AVERAGED = 30;

    int count() {
        return way.length;
    }

    /** The same with the other sign. */
    LoggedSamples mirrored() {
        return new LoggedSamples(
                lap, way, speed, Arrays.stream(acceleration).map(a -> -a).toArray());
    }

    /** Those that are kept. */
    LoggedSamples kept(boolean[] kept) {
        int[] some = new int[way.length];
        int count = 0;
        for (int i = 0; i < way.length; i++) {
            if (kept[i]) {
                some[count++] = i;
            }
        }
        int[] at = Arrays.copyOf(some, count);
        return new LoggedSamples(
                Arrays.stream(at).map(i -> lap[i]).toArray(),
                Arrays.stream(at).mapToDouble(i -> way[i]).toArray(),
                Arrays.stream(at).mapToDouble(i -> speed[i]).toArray(),
                Arrays.stream(at).mapToDouble(i -> acceleration[i]).toArray());
    }

    /**
     * The samples at their places on a line.
     *
     * @param line that the positions' feet stand on
     * @param pointLap lap of each position; those of one lap follow each other
     * @param pointWay way of each position, m, rising in a lap
     * @param foot of each position, m
     */
    Turning on(ReferenceLine line, int[] pointLap, double[] pointWay, double[] foot) {
        double[] place = new double[way.length];
        double length = line.length();
        int from = 0;
        int next = 0;
        while (from < pointLap.length) {
            int to = from;
            while (to < pointLap.length && pointLap[to] == pointLap[from]) {
                to++;
            }
            // Sums of what feet are ahead of the way, without the jump at the line's start.
            double[] sums = new double[to - from + 1];
            double ahead = foot[from] - pointWay[from];
            for (int i = from; i < to; i++) {
                double here = foot[i] - pointWay[i];
                ahead = line.closed() ? ahead + Math.IEEEremainder(here - ahead, length) : here;
                sums[i - from + 1] = sums[i - from] + ahead;
            }
            int low = 0;
            int high = 0;
            for (; next < way.length && lap[next] == pointLap[from]; next++) {
                while (low + 1 < to - from && pointWay[from + low] < way[next] - AVERAGED) {
                    low++;
                }
                while (high < to - from && pointWay[from + high] <= way[next] + AVERAGED) {
                    high++;
                }
                int end = Math.max(low + 1, high);
                double s = way[next] + (sums[end] - sums[low]) / (end - low);
                place[next] = line.closed() ? s - Math.floor(s / length) * length : Math.max(0, Math.min(length, s));
            }
            from = to;
        }
        return new Turning(place, speed, acceleration);
    }
}
