package dev.lapwright.study.optimise;

import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;

/**
 * Where on a circuit the best setup gains.
 *
 * @param track where
 * @param before time in each sector with the setup that was there before, mean over the days, s
 * @param after with the best setup
 */
public record OptimisationGain(Track track, List<Double> before, List<Double> after) {
    public OptimisationGain {
        before = List.copyOf(before);
        after = List.copyOf(after);
    }

    /** Gain in each sector, s; positive is faster. */
    public List<Double> gains() {
        List<Double> gains = new ArrayList<>();
        for (int i = 0; i < before.size(); i++) {
            gains.add(before.get(i) - after.get(i));
        }
        return gains;
    }
}
