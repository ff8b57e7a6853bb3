package dev.lapwright.study.stint;

import dev.lapwright.doubt.NineInTen;
import dev.lapwright.doubt.Unknown;
import dev.lapwright.doubt.UnknownShare;
import java.util.Arrays;
import java.util.List;

/**
 * Doubt of a stint by the cars that a car may be.
 *
 * @param draws cars drawn
 * @param lapped those of them that had a lap
 * @param seed of the draws
 * @param unknowns what was drawn
 * @param runs one for each compound, in the order given
 * @param fuelShares what the fuel that the first compound needs hangs on, the greatest first: unknowns whose share is more than chance
 * @param timeShares the same of the last compound's time over the first; empty with one
 * @param leastShare a share below this may be chance
 */
public record StintDoubtResult(
        int draws,
        int lapped,
        long seed,
        List<Unknown> unknowns,
        List<OnCompound> runs,
        List<UnknownShare> fuelShares,
        List<UnknownShare> timeShares,
        double leastShare) {
    public StintDoubtResult {
        unknowns = List.copyOf(unknowns);
        runs = List.copyOf(runs);
        fuelShares = List.copyOf(fuelShares);
        timeShares = List.copyOf(timeShares);
    }

    /**
     * Interval of 90 %.
     *
     * @param low its 5 % point; NaN of nothing
     * @param middle median
     * @param high 95 % point
     */
    public record Interval(double low, double middle, double high) {
        static Interval of(double[] values) {
            if (values.length == 0) {
                return new Interval(Double.NaN, Double.NaN, Double.NaN);
            }
            return new Interval(NineInTen.low(values), NineInTen.middle(values), NineInTen.high(values));
        }

        /** Half its width. */
        public double halfWidth() {
            return 0.5 * (high - low);
        }
    }

    /**
     * Stint on one compound.
     *
     * @param fuelNeeded kg before the formation lap
     * @param reaching drawn cars on which the fuel that is set lasts to the flag
     * @param difference time over that of the first compound, over the laps that both drive, s
     * @param ahead drawn cars on which it is ahead of the first then
     */
    public record OnCompound(Interval fuelNeeded, int reaching, Interval difference, int ahead) {
        static OnCompound of(double[] fuel, double[] lapsShort, double[] difference) {
            return new OnCompound(
                    Interval.of(fuel),
                    (int) Arrays.stream(lapsShort).filter(laps -> laps <= 0).count(),
                    Interval.of(difference),
                    (int) Arrays.stream(difference).filter(time -> time < 0).count());
        }
    }

    /** How many unknowns are assumed by their class. */
    public int assumed() {
        return (int) unknowns.stream().filter(Unknown::isAssumed).count();
    }
}
