package dev.lapwright.evidence;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.ranking.NaturalRanking;
import org.apache.commons.math3.stat.ranking.TiesStrategy;

/**
 * Rank-sum test of H. Mann and D. Whitney, <i>Annals of Mathematical Statistics</i> 18 (1947), and F. Wilcoxon (1945):
 * whether the laps with one setup tend to be faster, whatever their distribution. Of few laps all ways to deal the ranks,
 * ties included, are counted; of many the normal distribution is taken, with corrections for ties and continuity.
 *
 * @param u in how many pairs of laps the second is slower, ties counting half
 * @param pairs how many pairs there are
 * @param p chance of a sum so far from the middle, on either side, if both were alike
 * @param exact whether all ways were counted
 */
public record RankSum(double u, int pairs, double p, boolean exact) {
    /** With more laps than this the normal distribution does. */
    private static final int MOST_EXACT = 60;

    static RankSum of(double[] first, double[] second) {
        double[] ranks = ranks(first, second);
        double u = u(ranks, first.length);
        int pairs = first.length * second.length;
        if (ranks.length > MOST_EXACT) {
            return new RankSum(u, pairs, normal(first, second), false);
        }
        double lower = tail(ranks, second.length, u, false);
        double upper = tail(ranks, second.length, u, true);
        return new RankSum(u, pairs, Math.min(1, 2 * Math.min(lower, upper)), true);
    }

    private static double[] ranks(double[] first, double[] second) {
        double[] all =
                DoubleStream.concat(Arrays.stream(first), Arrays.stream(second)).toArray();
        return new NaturalRanking(TiesStrategy.AVERAGE).rank(all);
    }

    private static double u(double[] ranks, int firstCount) {
        double sum = 0;
        for (int i = firstCount; i < ranks.length; i++) {
            sum += ranks[i];
        }
        int count = ranks.length - firstCount;
        return sum - count * (count + 1) / 2.0;
    }

    /** Chance, all ways to choose {@code count} of the ranks being alike, of a U not below or not above this one. */
    static double tail(double[] ranks, int count, double u, boolean upper) {
        // Ranks with ties are halves: doubled they are whole.
        int[] doubled =
                Arrays.stream(ranks).mapToInt(rank -> (int) Math.rint(2 * rank)).toArray();
        int most = Arrays.stream(doubled).sum();
        double[][] ways = new double[count + 1][most + 1];
        ways[0][0] = 1;
        for (int rank : doubled) {
            for (int chosen = count; chosen > 0; chosen--) {
                for (int sum = most; sum >= rank; sum--) {
                    ways[chosen][sum] += ways[chosen - 1][sum - rank];
                }
            }
        }
        int seen = (int) Math.rint(2 * u + count * (count + 1));
        double tail = 0;
        double all = 0;
        for (int sum = 0; sum <= most; sum++) {
            all += ways[count][sum];
            if (upper ? sum >= seen : sum <= seen) {
                tail += ways[count][sum];
            }
        }
        return tail / all;
    }

    /** The two-sided chance by the normal distribution. */
    static double normal(double[] first, double[] second) {
        double[] ranks = ranks(first, second);
        double n = ranks.length;
        double pairs = (double) first.length * second.length;
        double ties = 0;
        for (double rank : Arrays.stream(ranks).distinct().toArray()) {
            double same = Arrays.stream(ranks).filter(r -> r == rank).count();
            ties += same * same * same - same;
        }
        double variance = pairs / 12 * (n + 1 - ties / (n * (n - 1)));
        if (!(variance > 0)) {
            return 1;
        }
        double off = Math.max(0, Math.abs(u(ranks, first.length) - pairs / 2) - 0.5);
        return 2 * new NormalDistribution(null, 0, 1).cumulativeProbability(-off / Math.sqrt(variance));
    }
}
