package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import org.apache.commons.math3.stat.ranking.NaturalRanking;
import org.apache.commons.math3.util.CombinatoricsUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;

/** The rank-sum test against printed results and by counting every way. */
class RankSumTest {
    /** M. Hollander and D. Wolfe, Nonparametric Statistical Methods (1973), p. 69, in R's documentation of wilcox.test. */
    private static final double[] AT_TERM = {0.80, 0.83, 1.89, 1.04, 1.45, 1.38, 1.91, 1.64, 0.73, 1.46};

    private static final double[] EARLY = {1.15, 0.88, 0.90, 0.74, 1.21};

    private static final double[] FIRST_DRUG = {0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0};
    private static final double[] SECOND_DRUG = {1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};

    private static double[] ranks(double... values) {
        return new NaturalRanking().rank(values);
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("rank-sum.csv")
    void ranksSumAsInR(CheckRow row) {
        boolean permeability = row.text("data").equals("permeability");
        double[] all = new double[15];
        System.arraycopy(EARLY, 0, all, 0, 5);
        System.arraycopy(AT_TERM, 0, all, 5, 10);
        row.verify(
                switch (row.quantity()) {
                    case "W" -> (permeability ? RankSum.of(EARLY, AT_TERM) : RankSum.of(SECOND_DRUG, FIRST_DRUG)).u();
                    case "p, one side, exact" -> RankSum.tail(ranks(all), 10, 35, true);
                    case "p, both sides, exact" -> RankSum.of(EARLY, AT_TERM).p();
                    case "p, both sides, normal with corrections for ties and continuity" ->
                        RankSum.normal(FIRST_DRUG, SECOND_DRUG);
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    @Test
    void fewLapsAreCountedExactly() {
        RankSum test = RankSum.of(EARLY, AT_TERM);
        assertThat(test.exact()).isTrue();
        assertThat(test.pairs()).isEqualTo(50);
    }

    @Test
    void withTiesEveryWayToDealTheRanksIsCounted() {
        // By definition: of all ways to choose 4 of 9 laps, those whose ranks sum to no more.
        double[] times = {90.1, 90.2, 90.2, 90.3, 90.3, 90.3, 90.4, 90.6, 90.6};
        double[] ranks = ranks(times);
        double u = 5.5;
        int few = 0;
        int all = 0;
        for (var ways = CombinatoricsUtils.combinationsIterator(9, 4); ways.hasNext(); ) {
            double sum = -10;
            for (int i : ways.next()) {
                sum += ranks[i];
            }
            few += sum <= u ? 1 : 0;
            all++;
        }
        // Quotients of whole numbers.
        assertThat(RankSum.tail(ranks, 4, u, false)).isCloseTo((double) few / all, within(1e-15));
    }

    @Test
    void threeAgainstThreeFullyApartIsOneWayOfTwentyOnEitherSide() {
        // 6! / (3! 3!) = 20 ways: p = 2/20, the least that three laps each can show.
        assertThat(RankSum.of(new double[] {1, 2, 3}, new double[] {4, 5, 6}).p())
                .isCloseTo(0.1, within(1e-15));
    }

    @Test
    void manyLapsAreJudgedByTheNormalDistribution() {
        double[] first = new double[40];
        double[] second = new double[40];
        for (int i = 0; i < 40; i++) {
            first[i] = 90 + 0.01 * i;
            second[i] = 90.005 + 0.01 * i;
        }
        assertThat(RankSum.of(first, second).exact()).isFalse();
    }

    @Test
    void normalAndExactAgreeWhereLapsAreMany() {
        double[] first = new double[30];
        double[] second = new double[30];
        for (int i = 0; i < 30; i++) {
            first[i] = 90 + 0.01 * i;
            second[i] = 90.053 + 0.01 * i;
        }
        // With 30 of each and p near 0.05 the normal distribution is good to some ten-thousandths (common practice, no
        // source).
        assertThat(RankSum.of(first, second).p()).isCloseTo(RankSum.normal(first, second), within(1e-3));
    }
}
