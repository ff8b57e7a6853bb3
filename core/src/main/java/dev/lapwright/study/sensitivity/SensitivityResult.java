package dev.lapwright.study.sensitivity;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Caution;
import dev.lapwright.car.Conditions;
import dev.lapwright.evidence.LapsToSee;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.LapTimeDifference;
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
 * @param worths one for each adjustment that can be turned, the one worth most over its range first
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
        List<Worth> worths,
        List<Adjustment> fixed,
        List<Interaction> interactions) {
    public SensitivityResult {
        worths = List.copyOf(worths);
        fixed = List.copyOf(fixed);
        interactions = List.copyOf(interactions);
    }

    /** Whether the laps there are can show what this adjustment is worth. */
    public boolean canBeSeen(Worth worth) {
        return worth.lapsToSee() <= lapsWithEach();
    }

    /** Laps with each of two setups. */
    public int lapsWithEach() {
        return laps / 2;
    }

    /** The least difference that the laps there are can show, s, without a sign. */
    public double visible() {
        return LapsToSee.visible(lapsWithEach(), scatter);
    }

    /**
     * Worth of one adjustment on a lap. Differences are in seconds against the car as it stood, minus where faster.
     *
     * @param adjustment which
     * @param setting where it stood
     * @param lower at the legal setting next below
     * @param higher at the legal setting next above
     * @param best at the fastest setting of those tried across the range; its difference is not above zero
     * @param worst at the slowest setting of those tried across the range; its difference is not below zero
     * @param curvature second difference of the lap time about the setting, s for a step each way (where the two differ, for
     *     their geometric mean); positive where the setting lies in a hollow of the lap time; NaN where a side is missing
     * @param bySector differences at the best setting, s for each timing sector; where none is faster, at the worst
     * @param lapsToSee laps with each setup it takes to see the best setting on the timing screen, or where the car stands
     *     best already the worst; {@link Integer#MAX_VALUE} if never
     */
    public record Worth(
            Adjustment adjustment,
            double setting,
            Trial lower,
            Trial higher,
            Trial best,
            Trial worst,
            double curvature,
            List<Double> bySector,
            int lapsToSee) {
        public Worth {
            bySector = List.copyOf(bySector);
        }

        /** Whether another setting of those tried is faster than the one it stood at. */
        public boolean hasFaster() {
            return LapTimeDifference.isFaster(best.difference());
        }

        /** Whether another setting of those tried is slower than the one it stood at. */
        public boolean hasSlower() {
            return LapTimeDifference.isSlower(worst.difference());
        }

        /** Where the sectors were looked at: the best setting, or where none is faster the worst. */
        public Trial shown() {
            return hasFaster() ? best : worst;
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
            return worst.difference() - best.difference();
        }

        /** The larger of the lap time's changes for one step either way, s, without its sign. */
        public double perStep() {
            double down = Double.isNaN(lower.difference()) ? 0 : Math.abs(lower.difference());
            double up = Double.isNaN(higher.difference()) ? 0 : Math.abs(higher.difference());
            return Math.max(down, up);
        }
    }

    /**
     * Setting of an adjustment, and its difference of lap time against the car as it stood.
     *
     * @param setting in the adjustment's unit; NaN if there is none
     * @param difference s, minus where faster; NaN without a lap
     */
    public record Trial(double setting, double difference) {}

    /**
     * Effect of two adjustments together beyond what each does alone.
     *
     * @param first name
     * @param firstSetting the legal setting next to where it stood
     * @param second name
     * @param secondSetting the legal setting next to where it stood
     * @param alone sum of the differences of either step alone, s, minus where faster
     * @param together difference of both steps, s; NaN without a lap
     */
    public record Interaction(
            String first, double firstSetting, String second, double secondSetting, double alone, double together) {
        /** What the two do beyond their sum, s, minus where faster. */
        public double beyond() {
            return together - alone;
        }
    }
}
