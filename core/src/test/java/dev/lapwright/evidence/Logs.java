package dev.lapwright.evidence;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;

/** Logs for the tests: runs of laps that begin with an out lap. */
final class Logs {
    private final List<TimingLog.Lap> laps = new ArrayList<>();
    private final RandomGenerator random;

    Logs(long seed) {
        random = new Well19937c(seed);
    }

    /** A run: an out lap, then flying laps with a level and a slope (s a lap) and scatter (s). */
    Logs run(String setup, int count, double level, double slope, double scatter) {
        laps.add(new TimingLog.Lap(laps.size() + 1, level + 25, setup, "", TimingLog.Flag.OUT));
        for (int i = 0; i < count; i++) {
            double time = level + slope * i + scatter * random.nextGaussian();
            laps.add(new TimingLog.Lap(laps.size() + 1, time, setup, "", TimingLog.Flag.NONE));
        }
        return this;
    }

    TimingLog log() {
        return TimingLog.of(laps);
    }

    /** Flying laps of one setup with no out lap. */
    static TimingLog of(String setup, double... times) {
        List<TimingLog.Lap> laps = new ArrayList<>();
        for (double time : times) {
            laps.add(new TimingLog.Lap(laps.size() + 1, time, setup, "", TimingLog.Flag.NONE));
        }
        return TimingLog.of(laps);
    }
}
