package dev.lapwright.fit;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import java.util.Arrays;

/**
 * Detection of lifts, where a driver came off the throttle though the car could go flat out: after full throttle, off throttle
 * and brake for a while where the model is at full power. From there to the model's next braking the lap tells of the driver,
 * not of the car, and is left out. Needs the throttle channel; a lift for a gear change is too short to count.
 */
final class DriverLifts {
    private static final double FULL = 0.9;
    private static final double OFF = 0.5;
    private static final double BRAKING = 0.05;
    /** m; a gear change at 60 m/s without drive for 0.3 s is shorter. */
    private static final double LEAST_LENGTH = 25;

    private DriverLifts() {}

    /** Whether each cell of a lap follows a lift; all false if the throttle was not logged. */
    static boolean[] of(LapCells cells, Lap model, double offset, double stretch) {
        boolean[] out = new boolean[cells.count];
        double[] throttle = cells.means(cells.lap.throttle());
        if (throttle.length == 0) {
            return out;
        }
        double[] sorted = throttle.clone();
        Arrays.sort(sorted);
        double full = sorted[(int) (0.95 * (sorted.length - 1))];
        double[] brake = cells.means(cells.lap.brake());
        boolean[] flat = flat(cells, model, offset, stretch);
        double cell = cells.trackLength / cells.count;
        int least = (int) Math.max(1, Math.ceil(LEAST_LENGTH / cell));
        boolean wasFull = false;
        int run = 0;
        for (int c = 0; c < cells.count; c++) {
            boolean off = throttle[c] < OFF * full && (brake.length == 0 || brake[c] < BRAKING) && flat[c];
            run = off && wasFull ? run + 1 : 0;
            if (run >= least) {
                int from = c - run + 1;
                int to = c;
                while (to + 1 < cells.count && flat[to + 1]) {
                    to++;
                }
                Arrays.fill(out, from, to + 1, true);
            }
            if (!flat[c]) {
                wasFull = false;
            } else if (throttle[c] >= FULL * full) {
                wasFull = true;
            }
        }
        return out;
    }

    /** Where the model is at full power or at the rev limit. */
    private static boolean[] flat(LapCells cells, Lap model, double offset, double stretch) {
        boolean[] flat = new boolean[cells.count];
        double[] s = model.column(Channel.DISTANCE);
        for (int c = 0; c < cells.count; c++) {
            double place = 0.5 * (cells.edge(c, offset, stretch) + cells.edge(c + 1, offset, stretch));
            Limit limit = model.limit(SpeedCurve.station(s, place, model.track().isClosed()));
            flat[c] = limit == Limit.POWER || limit == Limit.REV_LIMIT;
        }
        return flat;
    }
}
