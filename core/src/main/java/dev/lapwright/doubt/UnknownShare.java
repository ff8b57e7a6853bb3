package dev.lapwright.doubt;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Share of an unknown, or of a group of likes, in the variance of an answer, alone; see {@link VarianceShares}.
 *
 * @param unknown a group has its name as the title
 * @param share 0 to 1
 */
public record UnknownShare(Unknown unknown, double share) {
    /** One of a group whose own share is more than this part of the group's is told in its place. */
    private static final double MOST_OF_A_GROUP = 0.5;

    /**
     * Shares that are more than chance, the greatest first.
     *
     * @param drawn draws by unknowns; not modified
     * @param answers one for each draw; not modified
     */
    public static List<UnknownShare> told(List<Unknown> unknowns, double[][] drawn, double[] answers) {
        double least = least(unknowns, answers.length);
        double[] shares = VarianceShares.firstOrder(drawn, answers);
        List<UnknownShare> told = new ArrayList<>();
        for (int k = 0; k < shares.length; k++) {
            if (shares[k] > least && unknowns.get(k).group().isEmpty()) {
                told.add(new UnknownShare(unknowns.get(k), Math.min(1, shares[k])));
            }
        }
        for (String group : groups(unknowns)) {
            together(group, unknowns, drawn, answers, shares).ifPresent(told::add);
        }
        told.sort(Comparator.comparingDouble(UnknownShare::share).reversed());
        return told;
    }

    /** A share of a single unknown below this may be chance, with so many draws. */
    public static double least(List<Unknown> unknowns, int draws) {
        return VarianceShares.chance(draws, looked(unknowns));
    }

    private static List<String> groups(List<Unknown> unknowns) {
        return unknowns.stream()
                .map(Unknown::group)
                .filter(group -> !group.isEmpty())
                .distinct()
                .toList();
    }

    /** How many unknowns and groups are looked through for the greatest share. */
    private static int looked(List<Unknown> unknowns) {
        return (int) unknowns.stream().filter(u -> u.group().isEmpty()).count()
                + groups(unknowns).size();
    }

    /** The share of a group, where it is more than chance; that of one of it alone where that is most of it. */
    private static Optional<UnknownShare> together(
            String group, List<Unknown> unknowns, double[][] drawn, double[] answers, double[] shares) {
        int[] of = IntStream.range(0, unknowns.size())
                .filter(k -> unknowns.get(k).group().equals(group))
                .toArray();
        double[][] columns = Arrays.stream(drawn)
                .map(draw -> Arrays.stream(of).mapToDouble(k -> draw[k]).toArray())
                .toArray(double[][]::new);
        double share = VarianceShares.together(columns, answers);
        if (!(share > VarianceShares.chanceTogether(answers.length, of.length, looked(unknowns)))) {
            return Optional.empty();
        }
        int most = of[0];
        for (int k : of) {
            most = shares[k] > shares[most] ? k : most;
        }
        if (shares[most] > least(unknowns, answers.length) && shares[most] > MOST_OF_A_GROUP * share) {
            return Optional.of(new UnknownShare(unknowns.get(most), Math.min(1, shares[most])));
        }
        Unknown one = unknowns.get(of[0]);
        Unknown all = new Unknown(group, one.size(), one.unit(), one.limit(), one.source(), one.measure(), group);
        return Optional.of(new UnknownShare(all, Math.min(1, share)));
    }
}
