package dev.lapwright.study.robust;

import dev.lapwright.doubt.Unknown;
import dev.lapwright.doubt.UnknownShare;
import dev.lapwright.lap.LapTimeDifference;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Standing of settings of a car on all the cars that it may be. Differences are a setting's lap time less that of the car as it stands, both
 * on the same drawn car and day: minus where the setting is faster.
 *
 * @param draws cars drawn
 * @param lapped those of them that count: on which the car as it stands had a lap, and which go with what the driver says
 * @param seed of the draws
 * @param unknowns what was drawn
 * @param standings one for each setting, in the order given
 * @param present that of the car as it stands: its differences are 0
 * @param asked place of the setting of whose difference the shares are; negative where they are of which setting is the best, or of nothing
 * @param shares what the answer hangs on, the greatest first: unknowns whose share is more than chance
 * @param leastShare a share below this may be chance
 * @param before the same of all drawn cars, where only those count that go with what the driver says; empty where all count
 */
public record RobustnessResult(
        int draws,
        int lapped,
        long seed,
        List<Unknown> unknowns,
        List<Standing> standings,
        Standing present,
        int asked,
        List<UnknownShare> shares,
        double leastShare,
        Optional<RobustnessResult> before) {
    /** Half of an interval of 90 % of the normal distribution over its standard deviation (its tables). */
    private static final double NORMAL_90 = 1.645;
    /** Share of the drawn cars that must gain from what is recommended. */
    private static final double FIRM = 2.0 / 3;

    public RobustnessResult {
        unknowns = List.copyOf(unknowns);
        standings = List.copyOf(standings);
        shares = List.copyOf(shares);
    }

    /**
     * Standing of one setting.
     *
     * @param laps drawn cars on which it had a lap, of those that count
     * @param low end of the interval of 90 % of the difference, s; NaN without a lap
     * @param middle median of the difference, s; NaN without a lap
     * @param high other end of the interval, s; NaN without a lap
     * @param gains drawn cars on which it is faster than the car as it stands
     * @param best drawn cars on which no setting, nor the car as it stands, is faster; the first of equals
     * @param cost mean time that it loses to the best of each drawn car, s; NaN without a lap
     */
    public record Standing(int laps, double low, double middle, double high, int gains, int best, double cost) {
        /** Half the interval's width, s. */
        public double halfWidth() {
            return 0.5 * (high - low);
        }

        /** Standard deviation of the normal distribution that has the interval, s. */
        public double deviation() {
            return halfWidth() / NORMAL_90;
        }

        /** What can be said of it. */
        public Verdict verdict() {
            return Verdict.of(low, high);
        }
    }

    /** What can be said of a setting beside the car as it stands, by the interval of 90 % alone. */
    public enum Verdict {
        /** None of it counts. */
        ALIKE("no difference that counts"),
        /** All of it is faster. */
        FASTER("faster"),
        /** All of it is slower. */
        SLOWER("slower"),
        /** It may be one or the other, by an amount that counts; or there was no lap. */
        UNTOLD("cannot be told");

        private final String label;

        Verdict(String label) {
            this.label = label;
        }

        /** Of an interval of 90 % of a difference, s. */
        static Verdict of(double low, double high) {
            if (low > -LapTimeDifference.COUNTS && high < LapTimeDifference.COUNTS) {
                return ALIKE;
            }
            if (LapTimeDifference.isFaster(high)) {
                return FASTER;
            }
            return LapTimeDifference.isSlower(low) ? SLOWER : UNTOLD;
        }

        /** In a few words. */
        public String label() {
            return label;
        }
    }

    /** Share of the drawn cars on which a setting is faster than the car as it stands; NaN if none counts. */
    public double chanceOfGain(Standing standing) {
        return (double) standing.gains() / lapped;
    }

    /**
     * Whether a setting may stand in a plan or be recommended, one rule for all that do: two in three of the drawn cars gain from it, and their
     * median gains what counts. Of 40 cars that gain and lose evenly so many agree by chance once in fifty times (binomial distribution).
     */
    public boolean isFirmGain(Standing standing) {
        return standing.gains() >= FIRM * lapped && standing.middle() <= -LapTimeDifference.COUNTS;
    }

    /** Share of the drawn cars on which a setting is the best; NaN if none counts. */
    public double chanceOfBest(Standing standing) {
        return (double) standing.best() / lapped;
    }

    /** Place of the setting that is the best on most of the drawn cars; empty if none ever is. */
    public Optional<Integer> mostOftenBest() {
        return firstBy(Comparator.comparingInt(i -> -standings.get(i).best()))
                .filter(i -> standings.get(i).best() > 0);
    }

    /** Place of the setting that loses least on average, of those that lapped on every car that counts; empty if none did. */
    public Optional<Integer> least() {
        return firstBy(Comparator.comparingDouble(i -> standings.get(i).cost()));
    }

    private Optional<Integer> firstBy(Comparator<Integer> order) {
        Integer first = null;
        for (int i = 0; i < standings.size(); i++) {
            if (standings.get(i).laps() == lapped && lapped > 0 && (first == null || order.compare(i, first) < 0)) {
                first = i;
            }
        }
        return Optional.ofNullable(first);
    }

    /** How many unknowns are assumed by their class. */
    public int assumed() {
        return (int) unknowns.stream().filter(Unknown::isAssumed).count();
    }
}
