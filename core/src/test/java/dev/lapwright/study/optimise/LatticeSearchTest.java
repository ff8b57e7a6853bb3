package dev.lapwright.study.optimise;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.study.StudyRun;
import dev.lapwright.study.optimise.LatticeSearch.Effort;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The search on problems whose answers are known, without a car. */
class LatticeSearchTest {
    private static final int[] COUNTS = {21, 11, 31, 7};
    private static final List<Integer> CENTRE = List.of(13, 2, 25, 5);

    private static LatticeSearch<Double> search(int[] counts, Function<double[], Double> function, int threads) {
        return new LatticeSearch<>(counts, function, StudyRun.onThreads(threads), done -> {});
    }

    private static LatticeSearch.Continuum.Ending ending(double worthGoingOn) {
        return new LatticeSearch.Continuum.Ending(worthGoingOn, 100, 500);
    }

    private static LatticeSearch.Score cost(double value) {
        return new LatticeSearch.Score(0, value);
    }

    private static double loose(double[] place) {
        return quadratic(place, 0.4);
    }

    /** So coupled that from some places no two steps help. */
    private static double stiff(double[] place) {
        return quadratic(place, 4);
    }

    /** A convex quadratic with cross terms: zero at its centre, and positive definite, so above zero elsewhere. */
    private static double quadratic(double[] place, double coupling) {
        double[] d = IntStream.range(0, place.length)
                .mapToDouble(i -> place[i] - CENTRE.get(i))
                .toArray();
        double chain = 0;
        for (int i = 0; i + 1 < d.length; i++) {
            chain += coupling * (d[i] - d[i + 1]) * (d[i] - d[i + 1]);
        }
        double own = 0;
        for (double one : d) {
            own += one * one;
        }
        return own + chain;
    }

    /** Rosenbrock (1960), "An automatic method for finding the greatest or least value of a function": least, 0, at (1, 1). */
    private static double rosenbrock(double[] place) {
        double x = -2 + place[0] / 25;
        double y = -1 + place[1] / 25;
        return 100 * (y - x * x) * (y - x * x) + (1 - x) * (1 - x);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 3, 6})
    void theLatticeSearchFindsTheLeastOfAConvexQuadratic(int last) {
        var search = search(COUNTS, LatticeSearchTest::loose, 2);
        assertThat(search.descend(List.of(0, 10, 0, last), LatticeSearchTest::cost, Effort.PAIRS))
                .isEqualTo(CENTRE);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 3, 6})
    void bothSearchesTogetherFindTheLeastOfAStiffOne(int last) {
        var search = search(COUNTS, LatticeSearchTest::stiff, 2);
        List<double[]> start = List.of(new double[] {0, 10, 0, last});
        double[] between =
                search.between(start, LatticeSearchTest::cost, 1, ending(1e-3)).get(0);
        assertThat(search.descend(search.nearest(between), LatticeSearchTest::cost, Effort.PAIRS))
                .isEqualTo(CENTRE);
    }

    @Test
    void theSearchBetweenTheStepsFindsTheLeastOfRosenbrocksValley() {
        var search = search(new int[] {101, 101}, LatticeSearchTest::rosenbrock, 2);
        double[] start = {10, 90};
        double[] end = search.between(List.of(start), LatticeSearchTest::cost, 1, ending(1e-9))
                .get(0);
        // (1, 1) lies 75 and 50 steps up. A tenth of a step is 0.004: the function is then below 2e-3.
        assertThat(end[0]).isBetween(74.9, 75.1);
        assertThat(end[1]).isBetween(49.9, 50.1);
    }

    @Test
    void oneDirectionAloneIsSearchedToo() {
        var search = search(new int[] {40}, place -> Math.abs(place[0] - 31.25), 1);
        double[] end = search.between(List.of(new double[] {3}), LatticeSearchTest::cost, 1, ending(1e-6))
                .get(0);
        // A hundredth of a step is far less than what could lead to another step.
        assertThat(end[0]).isBetween(31.24, 31.26);
    }

    @Test
    void whatIsDemandedComesBeforeWhatItCosts() {
        // Least cost at 0, but only from 12 on is nothing missed.
        var search = search(new int[] {30}, place -> place[0], 1);
        List<Integer> end = search.descend(
                List.of(2), place -> new LatticeSearch.Score(Math.max(0, 12 - place), place), Effort.LINES);
        assertThat(end).containsExactly(12);
    }

    @Test
    void aWholeLineLeadsOutOfASmallDip() {
        double[] values = {5, 4, 6, 6, 6, 1, 6};
        var search = search(new int[] {values.length}, place -> values[(int) place[0]], 1);
        assertThat(search.descend(List.of(0), LatticeSearchTest::cost, Effort.LINES))
                .containsExactly(5);
    }

    @Test
    void pairsOfStepsLeadAlongANarrowDiagonalValley() {
        Function<double[], Double> valley = place -> 100 * Math.abs(place[0] - place[1]) + place[0];
        var search = search(new int[] {9, 9}, valley, 1);
        assertThat(search.descend(List.of(8, 8), LatticeSearchTest::cost, Effort.LINES))
                .containsExactly(8, 8);
        assertThat(search.descend(List.of(8, 8), LatticeSearchTest::cost, Effort.PAIRS))
                .containsExactly(0, 0);
    }

    @Test
    void noPlaceOfTheLatticeIsLookedAtTwice() {
        var search = search(COUNTS, LatticeSearchTest::stiff, 2);
        search.descend(List.of(0, 0, 0, 0), LatticeSearchTest::cost, Effort.PAIRS);
        int looks = search.looks();
        assertThat(looks).isEqualTo(search.known().size());
        search.descend(List.of(0, 0, 0, 0), LatticeSearchTest::cost, Effort.PAIRS);
        assertThat(search.looks()).isEqualTo(looks);
    }

    @Test
    void anotherSeedTakesAnotherWay() {
        var search = search(COUNTS, LatticeSearchTest::stiff, 1);
        List<double[]> start = List.of(new double[] {0, 0, 0, 0});
        double[] one =
                search.between(start, LatticeSearchTest::cost, 1, ending(1)).get(0);
        double[] again =
                search.between(start, LatticeSearchTest::cost, 1, ending(1)).get(0);
        double[] two =
                search.between(start, LatticeSearchTest::cost, 2, ending(1)).get(0);
        assertThat(again).isEqualTo(one);
        assertThat(two).isNotEqualTo(one);
    }

    @Test
    void ofTwoThatMissTheDemandsTheOneThatMissesLessIsBetter() {
        LatticeSearch.Score near = new LatticeSearch.Score(1, 90);
        LatticeSearch.Score far = new LatticeSearch.Score(2, 10);
        LatticeSearch.Score met = new LatticeSearch.Score(0, 100);
        assertThat(near.beats(far)).isTrue();
        assertThat(far.beats(near)).isFalse();
        assertThat(met.beats(near)).isTrue();
        assertThat(met.ranked()).isLessThan(near.ranked());
        assertThat(near.ranked()).isLessThan(far.ranked());
    }
}
