package dev.lapwright.study.optimise;

import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.study.StudyRun;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;

/** Run of an {@link Optimisation}: between the steps, on the steps, and about the optimum. */
final class OptimisationRun {
    /** A gain, s, for which the search between the steps does not go on. */
    private static final double WORTH_GOING_ON_S = 0.001;

    /** Searches between the steps, which take most of the time, each on a thread of its own. */
    private static final int SEARCHES = 2;

    /** Setups driven to see how flat the optimum is. */
    private static final int FLAT_SETUPS = 800;

    /** The walk over the flat part may come upon a better optimum; so often it is taken up. */
    private static final int MOST_OPTIMA = 4;

    private final Optimisation study;
    private final SearchedAdjustments choice;
    private final SetupLaps laps;
    private final int[] counts;
    private final int expected;
    private final StudyRun how;
    /** The best setup so far, between steps or on them. */
    private OptimisationResult.Candidate best;

    OptimisationRun(Optimisation study, SearchedAdjustments choice, StudyRun how) {
        this.study = study;
        this.choice = choice;
        this.how = how;
        laps = new SetupLaps(
                study.car,
                choice.axes(),
                study.circuits,
                study.days(),
                study.limits.needCorners(),
                study.worst,
                study.search.memory());
        counts = choice.axes().stream().mapToInt(axis -> axis.settings().size()).toArray();
        int n = counts.length;
        expected = (study.search.rough()
                        ? 0
                        : SEARCHES
                                        * LatticeSearch.Continuum.population(n)
                                        * ending(n).generations()
                                + FLAT_SETUPS)
                + 100 * n
                + 4 * n * n;
    }

    /** Enough to come within the steps of the best; the steps are searched anyway. */
    private static LatticeSearch.Continuum.Ending ending(int dimensions) {
        return new LatticeSearch.Continuum.Ending(WORTH_GOING_ON_S, 8 + dimensions, 40 + 5 * dimensions);
    }

    OptimisationResult run() {
        how.begin(Math.max(1, expected - laps.recalled()), SEARCHES, laps::again);
        return run(new LatticeSearch<>(counts, this::looked, how, this::report));
    }

    private OptimisationResult.Candidate looked(double[] place) {
        OptimisationResult.Candidate found = laps.at(place);
        tell(found);
        return found;
    }

    private synchronized void tell(OptimisationResult.Candidate found) {
        if (best == null ? found.hasLap() : score(found).beats(score(best))) {
            best = found;
            study.search.better().accept(laps.setup(found.settings()), found.lapTime());
        }
    }

    private void report(int done) {
        how.report(done, Math.max(done + 1, expected));
    }

    private LatticeSearch.Score score(OptimisationResult.Candidate point) {
        return new LatticeSearch.Score(study.limits.shortfall(point), point.cost());
    }

    private OptimisationResult run(LatticeSearch<OptimisationResult.Candidate> search) {
        List<Integer> before = new ArrayList<>();
        double[] centre = new double[counts.length];
        for (int i = 0; i < counts.length; i++) {
            before.add(choice.axes().get(i).nearest(laps.before().settings().get(i)));
            centre[i] = 0.5 * (counts[i] - 1);
        }
        double[] start = before.stream().mapToDouble(i -> i).toArray();
        List<double[]> between = study.search.rough()
                ? List.of(centre)
                : search.between(List.of(start, centre), this::score, study.search.seed(), ending(counts.length));
        List<List<Integer>> starts = new ArrayList<>(List.of(List.copyOf(before)));
        OptimisationResult.Candidate bestBetween = null;
        for (double[] place : between) {
            OptimisationResult.Candidate point = laps.at(place);
            if (bestBetween == null || score(point).beats(score(bestBetween))) {
                bestBetween = point;
            }
            starts.add(search.nearest(place));
        }
        List<Integer> optimum = null;
        for (List<Integer> one : starts) {
            List<Integer> near = study.search.rough() ? search.stride(one, this::score) : one;
            List<Integer> end = search.descend(near, this::score, LatticeSearch.Effort.LINES);
            optimum = optimum == null ? end : better(search, optimum, end);
        }
        optimum = search.descend(optimum, this::score, LatticeSearch.Effort.PAIRS);
        return score(search.at(optimum)).isMet()
                ? met(search, bestBetween, optimum, before)
                : missed(search, bestBetween, optimum);
    }

    private List<Integer> better(
            LatticeSearch<OptimisationResult.Candidate> search, List<Integer> one, List<Integer> other) {
        return score(search.at(other)).beats(score(search.at(one))) ? other : one;
    }

    private OptimisationResult met(
            LatticeSearch<OptimisationResult.Candidate> search,
            OptimisationResult.Candidate between,
            List<Integer> first,
            List<Integer> before) {
        OptimumNeighbourhood around = new OptimumNeighbourhood(search, study.limits, this::score);
        List<Integer> optimum = first;
        boolean complete = false;
        for (int k = 0; k < (study.search.rough() ? 0 : MOST_OPTIMA); k++) {
            double cost = search.at(optimum).cost();
            complete = around.spread(optimum, cost + LapTimeDifference.COUNTS, FLAT_SETUPS);
            around.front(optimum);
            List<Integer> next = optimum;
            for (List<Integer> place : search.known().keySet()) {
                next = better(search, next, place);
            }
            if (next.equals(optimum)) {
                break;
            }
            optimum = search.descend(next, this::score, LatticeSearch.Effort.PAIRS);
        }
        double cost = search.at(optimum).cost();
        // What is worth nothing stays where it was.
        List<Integer> best = around.putBack(optimum, before, cost + LapTimeDifference.NONE);
        double flat = search.at(best).cost() + LapTimeDifference.COUNTS;
        List<Integer> fewest = around.putBack(best, before, flat);
        List<OptimisationResult.Range> ranges = around.ranges(choice.axes(), best, laps.before(), flat);
        List<OptimisationResult.Candidate> kept = search.known().values().stream()
                .filter(point -> score(point).isMet())
                .sorted(Comparator.comparingDouble(OptimisationResult.Candidate::cost))
                .toList();
        List<OptimisationResult.Candidate> good =
                kept.stream().filter(point -> point.cost() <= flat).toList();
        return result(
                search,
                between,
                search.at(best),
                List.of(),
                new OptimisationResult.NearOptimal(
                        good, complete, ranges, search.at(fewest), OptimumNeighbourhood.unbeaten(kept)),
                kept);
    }

    private OptimisationResult missed(
            LatticeSearch<OptimisationResult.Candidate> search,
            OptimisationResult.Candidate between,
            List<Integer> least) {
        OptimisationResult.Candidate nearest = search.at(least);
        List<OptimisationResult.Miss> misses = new ArrayList<>();
        for (OptimisationResult.Miss miss : study.limits.misses(nearest)) {
            Function<OptimisationResult.Candidate, LatticeSearch.Score> alone = point -> alone(point, miss.limit());
            OptimisationResult.Candidate best = search.at(search.descend(least, alone, LatticeSearch.Effort.LINES));
            misses.add(miss.alone(OptimisationResult.Miss.figure(miss.limit(), best)));
        }
        OptimisationResult.NearOptimal none =
                new OptimisationResult.NearOptimal(List.of(), false, List.of(), nearest, List.of());
        return result(search, between, nearest, misses, none, List.of());
    }

    /** Misses nothing but a lap; costs less the farther one figure lies on the right side. */
    private static LatticeSearch.Score alone(OptimisationResult.Candidate point, OptimisationResult.Miss.Limit limit) {
        double figure = OptimisationResult.Miss.figure(limit, point);
        return new LatticeSearch.Score(point.hasLap() ? 0 : 1, limit.isAtLeast() ? -figure : figure);
    }

    private OptimisationResult result(
            LatticeSearch<OptimisationResult.Candidate> search,
            OptimisationResult.Candidate between,
            OptimisationResult.Candidate best,
            List<OptimisationResult.Miss> misses,
            OptimisationResult.NearOptimal nearOptimal,
            List<OptimisationResult.Candidate> kept) {
        List<OptimisationResult.SectorTimes> sectors = new ArrayList<>();
        if (best.hasLap()) {
            List<List<Double>> was = laps.sectorTimes(study.car);
            List<List<Double>> is = laps.sectorTimes(laps.with(best.settings()));
            for (int c = 0; c < was.size(); c++) {
                sectors.add(
                        new OptimisationResult.SectorTimes(study.circuits.get(c).track(), was.get(c), is.get(c)));
            }
        }
        return new OptimisationResult(
                new OptimisationResult.Task(
                        study.car, study.circuits, study.days(), study.worst, study.limits, study.search.seed()),
                new OptimisationResult.Search(choice.axes(), choice.leftAlone(), between, kept, search.looks()),
                laps.before(),
                best,
                misses,
                nearOptimal,
                sectors);
    }
}
