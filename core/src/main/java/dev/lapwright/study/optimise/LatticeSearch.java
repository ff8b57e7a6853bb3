package dev.lapwright.study.optimise;

import dev.lapwright.study.StudyRun;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.function.IntConsumer;
import java.util.function.IntFunction;
import org.apache.commons.math3.exception.TooManyEvaluationsException;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.SimpleBounds;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.CMAESOptimizer;
import org.apache.commons.math3.random.MersenneTwister;

/**
 * Search for the best place on a lattice of steps, by descent over neighbours, lines and pairs of steps. It knows nothing
 * of cars: a place is a number of steps in each direction, what lies there is looked up once and scored as often as wanted.
 * The same for any number of threads, bit for bit.
 *
 * @param <P> what lies at a place
 */
final class LatticeSearch<P> {
    /** Effort of a descent. */
    enum Effort {
        /** Single steps and whole lines. */
        LINES,
        /** Also steps in two directions at once. */
        PAIRS
    }

    private final int[] counts;
    private final Function<double[], P> look;
    private final StudyRun how;
    private final IntConsumer progress;
    private final Map<List<Integer>, P> known = new LinkedHashMap<>();
    private final AtomicInteger looks = new AtomicInteger();
    private final Object reporting = new Object();

    /**
     * @param counts numbers of steps in each direction, at least 2
     * @param look what lies at a place; called on several threads at once
     * @param progress told, never twice at the same time, how many places have been looked at
     */
    LatticeSearch(int[] counts, Function<double[], P> look, StudyRun how, IntConsumer progress) {
        this.counts = counts.clone();
        this.look = look;
        this.how = how;
        this.progress = progress;
    }

    private P lookAt(double[] place) {
        how.stopIfWanted();
        P found = look.apply(place);
        synchronized (reporting) {
            progress.accept(looks.incrementAndGet());
        }
        return found;
    }

    /** How many places have been looked at. */
    int looks() {
        return looks.get();
    }

    /** All places of the lattice that have been looked at, in the order of looking. */
    Map<List<Integer>, P> known() {
        return Collections.unmodifiableMap(known);
    }

    /** What lies at a place of the lattice. */
    P at(List<Integer> place) {
        visit(List.of(place));
        return known.get(place);
    }

    /** Looks at those of the places that are not known yet, all at once. */
    void visit(List<List<Integer>> places) {
        List<List<Integer>> unknown = places.stream()
                .filter(place -> !known.containsKey(place))
                .distinct()
                .toList();
        List<P> found = inParallel(
                unknown.size(),
                k -> lookAt(unknown.get(k).stream().mapToDouble(i -> i).toArray()));
        for (int k = 0; k < found.size(); k++) {
            known.put(unknown.get(k), found.get(k));
        }
    }

    private <R> List<R> inParallel(int parts, IntFunction<R> part) {
        return how.inParallel(parts, () -> part, IntFunction::apply, done -> {});
    }

    /** Searches between the steps, from each start with a seed of its own; the best place of each. */
    List<double[]> between(List<double[]> starts, Function<P, Score> goal, long seed, Continuum.Ending ending) {
        Function<double[], Score> scores = place -> goal.apply(lookAt(place));
        return inParallel(starts.size(), k -> new Continuum(counts, scores, ending).search(starts.get(k), seed + k));
    }

    /** The place of the lattice nearest to one between. */
    List<Integer> nearest(double[] place) {
        List<Integer> nearest = new ArrayList<>(place.length);
        for (double coordinate : place) {
            nearest.add((int) Math.rint(coordinate));
        }
        return List.copyOf(nearest);
    }

    /**
     * From a place always to the best of its neighbours, until none is better: first among single steps, then along whole
     * lines, then among pairs of steps.
     */
    List<Integer> descend(List<Integer> start, Function<P, Score> goal, Effort effort) {
        List<Integer> here = start;
        while (true) {
            List<Integer> better = bestOf(steps(here), here, goal);
            if (better == null) {
                better = bestOf(lines(here), here, goal);
            }
            if (better == null && effort == Effort.PAIRS) {
                better = bestOf(pairs(here), here, goal);
            }
            if (better == null) {
                return here;
            }
            here = better;
        }
    }

    /**
     * From a place to one near the best, by steps of a quarter of each range, an eighth and so on, as long as they are more than one, in several
     * directions at once where that is better: the way of single steps along a long range looks at every direction again for each of them.
     */
    List<Integer> stride(List<Integer> start, Function<P, Score> goal) {
        List<Integer> here = start;
        for (int part = 4; part < Arrays.stream(counts).max().orElseThrow(); part *= 2) {
            List<Integer> better = here;
            while (better != null) {
                here = better;
                better = bestTogether(strides(here, part), here, goal);
            }
        }
        return here;
    }

    /** Places so large a part of each range away, or at its end. */
    private List<List<Integer>> strides(List<Integer> here, int part) {
        List<List<Integer>> strides = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            int by = Math.max(1, (counts[i] - 1) / part);
            for (int there : new int[] {here.get(i) - by, here.get(i) + by}) {
                int within = Math.max(0, Math.min(counts[i] - 1, there));
                if (within != here.get(i)) {
                    strides.add(with(here, i, within));
                }
            }
        }
        return strides;
    }

    /** The best of places that differ in one direction each, or what comes of the best in every direction at once where that is better still. */
    private List<Integer> bestTogether(List<List<Integer>> places, List<Integer> here, Function<P, Score> goal) {
        List<Integer> best = bestOf(places, here, goal);
        if (best == null) {
            return null;
        }
        List<Integer> all = here;
        for (int i = 0; i < counts.length; i++) {
            int direction = i;
            List<List<Integer>> along = places.stream()
                    .filter(place -> !place.get(direction).equals(here.get(direction)))
                    .toList();
            List<Integer> one = bestOf(along, here, goal);
            all = one == null ? all : with(all, direction, one.get(direction));
        }
        List<Integer> better = bestOf(List.of(all), best, goal);
        return better == null ? best : better;
    }

    private List<Integer> bestOf(List<List<Integer>> places, List<Integer> here, Function<P, Score> goal) {
        visit(places);
        Score least = goal.apply(at(here));
        List<Integer> best = null;
        for (List<Integer> place : places) {
            Score score = goal.apply(known.get(place));
            if (score.beats(least)) {
                least = score;
                best = place;
            }
        }
        return best;
    }

    /** Places one step away. */
    List<List<Integer>> steps(List<Integer> here) {
        List<List<Integer>> steps = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            for (int by = -1; by <= 1; by += 2) {
                add(steps, moved(here, i, by));
            }
        }
        return steps;
    }

    /** Places that differ in one direction, by any number of steps. */
    private List<List<Integer>> lines(List<Integer> here) {
        List<List<Integer>> lines = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            lines.addAll(line(here, i));
        }
        return lines;
    }

    /** Places that differ from one in one direction only, itself among them, in order. */
    List<List<Integer>> line(List<Integer> here, int direction) {
        List<List<Integer>> line = new ArrayList<>();
        for (int k = 0; k < counts[direction]; k++) {
            line.add(with(here, direction, k));
        }
        return line;
    }

    /** Places one step away in each of two directions. */
    private List<List<Integer>> pairs(List<Integer> here) {
        List<List<Integer>> pairs = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            for (int j = i + 1; j < counts.length; j++) {
                for (int a = -1; a <= 1; a += 2) {
                    for (int b = -1; b <= 1; b += 2) {
                        List<Integer> one = moved(here, i, a);
                        if (one != null) {
                            add(pairs, moved(one, j, b));
                        }
                    }
                }
            }
        }
        return pairs;
    }

    private static void add(List<List<Integer>> places, List<Integer> place) {
        if (place != null) {
            places.add(place);
        }
    }

    /** The place so many steps away, or null where there is none. */
    private List<Integer> moved(List<Integer> here, int direction, int by) {
        int there = here.get(direction) + by;
        return there < 0 || there >= counts[direction] ? null : with(here, direction, there);
    }

    /** The same place with another coordinate in one direction. */
    static List<Integer> with(List<Integer> here, int direction, int coordinate) {
        List<Integer> changed = new ArrayList<>(here);
        changed.set(direction, coordinate);
        return List.copyOf(changed);
    }

    /**
     * Score of a place: first by how far it misses what is demanded, then by what it costs. Rule of Deb, "An efficient
     * constraint handling method for genetic algorithms", Comput. Methods Appl. Mech. Eng. 186 (2000): of two points that
     * meet the demands the cheaper is better, one that meets them beats one that does not, of two that do not the one that
     * misses less is better.
     *
     * @param shortfall 0 where all demands are met, else above 0
     * @param cost the less the better; NaN only where there is none, with a shortfall
     */
    record Score(double shortfall, double cost) {
        /** Less than this is noise of the last digits, in seconds or in the unit of a shortfall. */
        private static final double NOISE = 1e-9;

        /** Adds to a cost that cannot be had, so that every cost that can is below. */
        private static final double OUT_OF_REACH = 1e6;

        boolean isMet() {
            return shortfall <= 0;
        }

        /** Whether this is better than another by more than noise. */
        boolean beats(Score other) {
            if (isMet() != other.isMet()) {
                return isMet();
            }
            return isMet() ? cost < other.cost - NOISE : shortfall < other.shortfall - NOISE;
        }

        /** One number in the same order, for a search that knows no demands. */
        double ranked() {
            return isMet() ? cost : OUT_OF_REACH + shortfall;
        }
    }

    /**
     * Search between the steps: covariance matrix adaptation of an evolution strategy (Hansen and Ostermeier 2001, Evol.
     * Comput. 9(2)) as Commons Math has it, from one start, with random numbers of its own. It looks only at the order of
     * the scores, so the rule of {@link Score} serves as it is.
     */
    static final class Continuum {
        /** First spread of the search, as a share of each range. */
        private static final double SPREAD = 0.25;

        /**
         * End of a search between the steps.
         *
         * @param worthGoingOn a gain below this, in the unit of the cost, is not waited for
         * @param patience so many generations without such a gain end it
         * @param generations at most
         */
        record Ending(double worthGoingOn, int patience, int generations) {}

        private final int[] counts;
        private final Function<double[], Score> scores;
        private final Ending ending;

        private Score bestScore;
        private double[] best;
        private double milestone = Double.POSITIVE_INFINITY;
        private int sinceMilestone;

        /**
         * @param counts numbers of steps, at least 2 each; a place has coordinates from 0 to the count less one
         * @param scores of places
         */
        Continuum(int[] counts, Function<double[], Score> scores, Ending ending) {
            this.counts = counts.clone();
            this.scores = scores;
            this.ending = ending;
        }

        /** The size of a generation for so many dimensions: what Hansen and Ostermeier advise. */
        static int population(int dimensions) {
            return 4 + (int) (3 * Math.log(dimensions));
        }

        /** The best place found from a start. */
        double[] search(double[] start, long seed) {
            int n = counts.length;
            double[] guess = new double[n];
            for (int i = 0; i < n; i++) {
                guess[i] = start[i] / (counts[i] - 1);
            }
            double[] low = new double[n];
            double[] high = new double[n];
            double[] spread = new double[n];
            Arrays.fill(high, 1);
            Arrays.fill(spread, SPREAD);
            int patience = population(n) * ending.patience();
            CMAESOptimizer optimiser =
                    new CMAESOptimizer(ending.generations(), 0, true, 0, 0, new MersenneTwister(seed), false, null);
            optimiser.optimize(
                    MaxEval.unlimited(),
                    new ObjectiveFunction(share -> value(share, patience)),
                    GoalType.MINIMIZE,
                    new InitialGuess(guess),
                    new SimpleBounds(low, high),
                    new CMAESOptimizer.Sigma(spread),
                    new CMAESOptimizer.PopulationSize(population(n)));
            return best.clone();
        }

        private double value(double[] share, int patience) {
            double[] place = new double[share.length];
            for (int i = 0; i < place.length; i++) {
                place[i] = Math.max(0, Math.min(1, share[i])) * (counts[i] - 1);
            }
            Score score = scores.apply(place);
            if (best == null || score.beats(bestScore)) {
                best = place;
                bestScore = score;
            }
            if (bestScore.ranked() < milestone - ending.worthGoingOn()) {
                milestone = bestScore.ranked();
                sinceMilestone = 0;
            } else if (++sinceMilestone > patience) {
                // The optimiser takes this as its end.
                throw new TooManyEvaluationsException(patience);
            }
            return score.ranked();
        }
    }
}
