package dev.lapwright.lap;

import dev.lapwright.track.Corner;
import java.util.List;

/**
 * Key figures of a lap: its time and its speeds.
 *
 * @param lapTime s
 * @param topSpeed m/s
 * @param minimumSpeed lowest speed anywhere, m/s
 * @param minimumCornerSpeed lowest speed within a corner, m/s; NaN on a track without corners
 * @param meanCornerSpeed length of all corners over the time spent in them, m/s; NaN on a track without corners
 * @param meanSpeed length over lap time, m/s
 */
public record LapFigures(
        double lapTime,
        double topSpeed,
        double minimumSpeed,
        double minimumCornerSpeed,
        double meanCornerSpeed,
        double meanSpeed) {

    /** From distances and speeds at stations (n), times of cells (n - 1) and the highest speed between stations. */
    static LapFigures of(
            List<Corner> corners, double[] s, double[] v, double[] cellTimes, double lapTime, double peakSpeed) {
        double top = peakSpeed;
        double least = Double.POSITIVE_INFINITY;
        double leastInCorner = Double.POSITIVE_INFINITY;
        for (double speed : v) {
            top = Math.max(top, speed);
            least = Math.min(least, speed);
        }
        double length = 0;
        double time = 0;
        for (Corner corner : corners) {
            for (int i = 0; i + 1 < s.length; i++) {
                if (within(corner, s[i]) && within(corner, s[i + 1])) {
                    length += s[i + 1] - s[i];
                    time += cellTimes[i];
                    leastInCorner = Math.min(leastInCorner, Math.min(v[i], v[i + 1]));
                }
            }
        }
        boolean any = time > 0;
        return new LapFigures(
                lapTime,
                top,
                least,
                any ? leastInCorner : Double.NaN,
                any ? length / time : Double.NaN,
                (s[s.length - 1] - s[0]) / lapTime);
    }

    static boolean within(Corner corner, double s) {
        return corner.entry() <= corner.exit()
                ? s >= corner.entry() && s <= corner.exit()
                : s >= corner.entry() || s <= corner.exit();
    }
}
