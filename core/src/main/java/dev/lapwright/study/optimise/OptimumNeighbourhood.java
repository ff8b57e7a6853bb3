package dev.lapwright.study.optimise;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.function.Function;

/** Neighbourhood of an optimum: setups as good, setups with more top speed, setups with fewer changes. */
final class OptimumNeighbourhood {
    private static final int AT_ONCE = 4;
    private static final int FRONT_STEPS = 8;
    /** A front with less between its points, m/s, says nothing more. */
    private static final double LEAST_SPEED_STEP = 0.05;

    private final LatticeSearch<OptimisationResult.Candidate> search;
    private final OptimisationLimits limits;
    private final Function<OptimisationResult.Candidate, LatticeSearch.Score> goal;

    OptimumNeighbourhood(
            LatticeSearch<OptimisationResult.Candidate> search,
            OptimisationLimits limits,
            Function<OptimisationResult.Candidate, LatticeSearch.Score> goal) {
        this.search = search;
        this.limits = limits;
        this.goal = goal;
    }

    /**
     * Walks by single steps over setups within a cost, the best first.
     *
     * @param most so many setups are driven for it, and a handful more
     * @return whether there was nothing more to walk to
     */
    boolean spread(List<Integer> from, double cost, int most) {
        Comparator<List<Integer>> bestFirst = Comparator.comparingDouble(
                        (List<Integer> place) -> search.at(place).cost())
                .thenComparing(Object::toString);
        PriorityQueue<List<Integer>> open = new PriorityQueue<>(bestFirst);
        Set<List<Integer>> seen = new LinkedHashSet<>();
        open.add(from);
        seen.add(from);
        int start = search.known().size();
        while (!open.isEmpty() && search.known().size() - start < most) {
            Set<List<Integer>> around = new LinkedHashSet<>();
            for (int k = 0; k < AT_ONCE && !open.isEmpty(); k++) {
                around.addAll(search.steps(open.remove()));
            }
            around.removeAll(seen);
            search.visit(List.copyOf(around));
            for (List<Integer> place : around) {
                seen.add(place);
                if (isWithin(search.at(place), cost)) {
                    open.add(place);
                }
            }
        }
        return open.isEmpty();
    }

    private boolean isWithin(OptimisationResult.Candidate point, double cost) {
        LatticeSearch.Score score = goal.apply(point);
        return score.isMet() && score.cost() <= cost;
    }

    /** Looks for setups with more and more top speed that lose as little as possible. */
    void front(List<Integer> from) {
        Function<OptimisationResult.Candidate, LatticeSearch.Score> quick =
                point -> new LatticeSearch.Score(limits.shortfall(point), -point.topSpeed());
        List<Integer> quickest = search.descend(from, quick, LatticeSearch.Effort.LINES);
        double low = search.at(from).topSpeed();
        double high = search.at(quickest).topSpeed();
        List<Integer> here = from;
        for (int k = 1; k <= FRONT_STEPS && high - low > LEAST_SPEED_STEP; k++) {
            double wanted = low + (high - low) * k / FRONT_STEPS;
            here = search.descend(
                    here,
                    point -> {
                        double missing = Math.max(0, wanted - point.topSpeed());
                        return new LatticeSearch.Score(limits.shortfall(point) + missing, point.cost());
                    },
                    LatticeSearch.Effort.LINES);
        }
    }

    /** Of some setups those that no other beats in cost and top speed, the least cost first; none quite like the one before. */
    static List<OptimisationResult.Candidate> unbeaten(List<OptimisationResult.Candidate> byCost) {
        List<OptimisationResult.Candidate> front = new ArrayList<>();
        double highest = Double.NEGATIVE_INFINITY;
        for (OptimisationResult.Candidate point : byCost) {
            if (point.topSpeed() > highest + LEAST_SPEED_STEP) {
                front.add(point);
                highest = point.topSpeed();
            }
        }
        return front;
    }

    /**
     * Puts as many adjustments as possible back where they were, always the one that costs least, while the cost stays within
     * a bound.
     */
    List<Integer> putBack(List<Integer> from, List<Integer> before, double cost) {
        List<Integer> here = from;
        while (true) {
            List<List<Integer>> places = new ArrayList<>();
            for (int i = 0; i < here.size(); i++) {
                if (!here.get(i).equals(before.get(i))) {
                    places.add(LatticeSearch.with(here, i, before.get(i)));
                }
            }
            search.visit(places);
            List<Integer> next = null;
            for (List<Integer> place : places) {
                if (isWithin(search.at(place), cost)
                        && (next == null
                                || search.at(place).cost() < search.at(next).cost())) {
                    next = place;
                }
            }
            if (next == null) {
                return here;
            }
            here = next;
        }
    }

    /** Ranges of all adjustments about the best. */
    List<OptimisationResult.Range> ranges(
            List<OptimisationResult.Axis> axes, List<Integer> best, OptimisationResult.Candidate before, double cost) {
        List<OptimisationResult.Range> ranges = new ArrayList<>();
        for (int i = 0; i < axes.size(); i++) {
            OptimisationResult.Axis axis = axes.get(i);
            List<List<Integer>> line = search.line(best, i);
            search.visit(line);
            int here = best.get(i);
            int least = here;
            while (least > 0 && isWithin(search.at(line.get(least - 1)), cost)) {
                least--;
            }
            int most = here;
            while (most + 1 < line.size() && isWithin(search.at(line.get(most + 1)), cost)) {
                most++;
            }
            int togetherLeast = here;
            int togetherMost = here;
            for (Map.Entry<List<Integer>, OptimisationResult.Candidate> known :
                    search.known().entrySet()) {
                if (isWithin(known.getValue(), cost)) {
                    togetherLeast = Math.min(togetherLeast, known.getKey().get(i));
                    togetherMost = Math.max(togetherMost, known.getKey().get(i));
                }
            }
            double was = before.settings().get(i);
            OptimisationResult.Candidate back = search.at(line.get(axis.nearest(was)));
            boolean met = goal.apply(back).isMet();
            ranges.add(new OptimisationResult.Range(
                    axis.name(),
                    was,
                    axis.settings().get(here),
                    axis.settings().get(least),
                    axis.settings().get(most),
                    axis.settings().get(togetherLeast),
                    axis.settings().get(togetherMost),
                    effect(line),
                    met ? back.cost() - search.at(best).cost() : Double.NaN));
        }
        return ranges;
    }

    private double effect(List<List<Integer>> line) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (List<Integer> place : line) {
            OptimisationResult.Candidate point = search.at(place);
            if (point.hasLap()) {
                least = Math.min(least, point.cost());
                most = Math.max(most, point.cost());
            }
        }
        return most - least;
    }
}
