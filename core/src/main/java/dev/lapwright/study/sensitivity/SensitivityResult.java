package dev.lapwright.study.sensitivity;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.evidence.LapsToSee;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.track.Track;
import java.util.List;

/**
 * What matters at a circuit.
 *
 * @param car as it stood
 * @param track where
 * @param conditions the day
 * @param baseline the lap of the car as it stood
 * @param scatter standard deviation of lap times taken for the timing screen, s
 * @param laps how many laps there are to try something, both setups together
 * @param gains one for each adjustment that can be turned, the one worth most over its range first
 * @param fixed adjustments with a single setting
 * @param interactions of the strongest pairs, the strongest first
 */
public record SensitivityResult(
        Car car,
        Track track,
        Conditions conditions,
        LapFigures baseline,
        double scatter,
        int laps,
        List<AdjustmentGain> gains,
        List<Adjustment> fixed,
        List<Interaction> interactions) {
    public SensitivityResult {
        gains = List.copyOf(gains);
        fixed = List.copyOf(fixed);
        interactions = List.copyOf(interactions);
    }

    /** Whether the laps there are can show what this adjustment is worth. */
    public boolean canBeSeen(AdjustmentGain gain) {
        return gain.lapsToSee() <= lapsWithEach();
    }

    /** Laps with each of two setups. */
    public int lapsWithEach() {
        return laps / 2;
    }

    /** The least gain that the laps there are can show, s. */
    public double visibleGain() {
        return LapsToSee.visibleGain(lapsWithEach(), scatter);
    }
}
