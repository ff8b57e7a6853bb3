package dev.lapwright.study.sensitivity;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Caution;
import dev.lapwright.car.Conditions;
import dev.lapwright.evidence.LapsToSee;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Set;

/**
 * Worth of the adjustments of a car at a circuit.
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
     * Worth of one adjustment on a lap. Gains are in seconds against the car as it stood, positive is faster.
     *
     * @param adjustment which
     * @param setting where it stood
     * @param lower at the legal setting next below
     * @param higher at the legal setting next above
     * @param best at the fastest setting of those tried across the range; its gain is not below zero
     * @param worst at the slowest setting of those tried across the range; its gain is not above zero
     * @param curvature second difference of the lap time about the setting, s for a step each way (where the two differ, for
     *     their geometric mean); positive where the setting lies in a hollow of the lap time; NaN where a side is missing
     * @param sectorGains where the lap gains at the best setting, s for each timing sector; where nothing is gained, at the worst
     * @param lapsToSee laps with each setup it takes to see the best gain on the timing screen, or where the car stands best
     *     already the loss at the worst; {@link Integer#MAX_VALUE} if never
     */
    public record Gain(
            Adjustment adjustment,
            double setting,
            Trial lower,
            Trial higher,
            Trial best,
            Trial worst,
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
            return best.gain() >= NOTHING;
        }

        /** Whether another setting of those tried is slower than the one it stood at. */
        public boolean isLoss() {
            return worst.gain() <= -NOTHING;
        }

        /** Where the sectors were looked at: the best setting, or where nothing is gained the worst. */
        public Trial shown() {
            return isGain() ? best : worst;
        }

        /** Whether there is a number of laps that shows it. */
        public boolean isEverSeen() {
            return lapsToSee < Integer.MAX_VALUE;
        }

        /** Cautions that this adjustment calls for. */
        public Set<Caution> cautions() {
            return adjustment.cautions();
        }

        /** Lap time between the slowest and the fastest setting of the range, s. */
        public double range() {
            return best.gain() - worst.gain();
        }

        /** The larger of the lap time's changes for one step either way, s, without its sign. */
        public double perStep() {
            double down = Double.isNaN(lower.gain()) ? 0 : Math.abs(lower.gain());
            double up = Double.isNaN(higher.gain()) ? 0 : Math.abs(higher.gain());
            return Math.max(down, up);
        }
    }

    /**
     * Setting of an adjustment, and its gain against the car as it stood.
     *
     * @param setting in the adjustment's unit; NaN if there is none
     * @param gain s, positive is faster; NaN without a lap
     */
    public record Trial(double setting, double gain) {}

    /**
     * Effect of two adjustments together beyond what each does alone.
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
