package dev.lapwright.study.sensitivity;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.evidence.LapsToSee;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.study.RemedyCaution;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Set;

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
        List<Gain> gains,
        List<Adjustment> fixed,
        List<Interaction> interactions) {
    public SensitivityResult {
        gains = List.copyOf(gains);
        fixed = List.copyOf(fixed);
        interactions = List.copyOf(interactions);
    }

    /** Whether the laps there are can show what this adjustment is worth. */
    public boolean canBeSeen(Gain gain) {
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

    /**
     * What one adjustment is worth on a lap. Gains are in seconds against the car as it stood, positive is faster.
     *
     * @param adjustment which
     * @param setting where it stood
     * @param lower the legal setting next below; NaN if there is none
     * @param lowerGain gain there; NaN without a lap
     * @param higher the legal setting next above; NaN if there is none
     * @param higherGain gain there; NaN without a lap
     * @param best the fastest setting of those tried across the range
     * @param bestGain gain there, not below zero
     * @param worst the slowest setting of those tried across the range
     * @param worstGain gain there, not above zero
     * @param curvature second difference of the lap time about the setting, s for a step each way (where the two differ, for
     *     their geometric mean); positive where the setting lies in a hollow of the lap time; NaN where a side is missing
     * @param sectorGains where the lap gains at the best setting, s for each timing sector; where nothing is gained, at the worst
     * @param lapsToSee laps with each setup it takes to see the best gain on the timing screen, or where the car stands best
     *     already the loss at the worst; {@link Integer#MAX_VALUE} if never
     */
    public record Gain(
            Adjustment adjustment,
            double setting,
            double lower,
            double lowerGain,
            double higher,
            double higherGain,
            double best,
            double bestGain,
            double worst,
            double worstGain,
            double curvature,
            List<Double> sectorGains,
            int lapsToSee) {
        /** Lap times are given in thousandths; less than half of one is nothing, s. */
        public static final double NOTHING = 0.0005;

        public Gain {
            sectorGains = List.copyOf(sectorGains);
        }

        /** Whether another setting of those tried is faster than the one it stood at. */
        public boolean isGain() {
            return bestGain >= NOTHING;
        }

        /** Whether another setting of those tried is slower than the one it stood at. */
        public boolean isLoss() {
            return worstGain <= -NOTHING;
        }

        /** Where the sectors were looked at: the best setting, or where nothing is gained the worst. */
        public double shown() {
            return isGain() ? best : worst;
        }

        /** Gain there, below zero if it is a loss. */
        public double shownGain() {
            return isGain() ? bestGain : worstGain;
        }

        /** Whether there is a number of laps that shows it. */
        public boolean isEverSeen() {
            return lapsToSee < Integer.MAX_VALUE;
        }

        /** Cautions that this adjustment calls for. */
        public Set<RemedyCaution> cautions() {
            return RemedyCaution.of(adjustment);
        }

        /** Lap time between the slowest and the fastest setting of the range, s. */
        public double range() {
            return bestGain - worstGain;
        }

        /** The larger of the lap time's changes for one step either way, s, without its sign. */
        public double perStep() {
            double down = Double.isNaN(lowerGain) ? 0 : Math.abs(lowerGain);
            double up = Double.isNaN(higherGain) ? 0 : Math.abs(higherGain);
            return Math.max(down, up);
        }
    }

    /**
     * What two adjustments do together beyond what each does alone.
     *
     * @param first name
     * @param firstSetting the legal setting next to where it stood
     * @param second name
     * @param secondSetting the legal setting next to where it stood
     * @param alone sum of the gains of either step alone, s
     * @param together gain of both steps, s; NaN without a lap
     */
    public record Interaction(
            String first, double firstSetting, String second, double secondSetting, double alone, double together) {
        /** What the two do beyond their sum, s, positive is faster. */
        public double beyond() {
            return together - alone;
        }
    }
}
