package dev.lapwright.study.optimise;

import dev.lapwright.study.Work;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.function.IntConsumer;
import java.util.function.IntFunction;

/**
 * Search for the best place on a lattice of steps. It knows nothing of cars: a place is a number of steps in each direction,
 * what lies there is looked up once and scored as often as wanted. The same for any number of threads, bit for bit.
 *
 * @param <P> what lies at a place
 */
final class OptimisationSearch<P> {
    /** How hard a descent tries before it stops. */
    enum Effort {
        /** Single steps and whole lines. */
        LINES,
        /** Also steps in two directions at once. */
        PAIRS
    }

    private final int[] counts;
    private final Function<double[], P> look;
    private final int threads;
    private final IntConsumer progress;
    private final Map<List<Integer>, P> known = new LinkedHashMap<>();
    private final AtomicInteger looks = new AtomicInteger();
    private final Object reporting = new Object();

    /**
     * @param counts numbers of steps in each direction, at least 2
     * @param look what lies at a place; called on several threads at once
     * @param progress told, never twice at the same time, how many places have been looked at
     */
    OptimisationSearch(int[] counts, Function<double[], P> look, int threads, IntConsumer progress) {
        this.counts = counts.clone();
        this.look = look;
        this.threads = threads;
        this.progress = progress;
    }

    private P lookAt(double[] place) {
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
        return Work.all(threads, parts, () -> part, IntFunction::apply, done -> {});
    }

    /** Searches between the steps, from each start with a seed of its own; the best place of each. */
    List<double[]> between(
            List<double[]> starts,
            Function<P, OptimisationScore> goal,
            long seed,
            OptimisationContinuum.Ending ending) {
        Function<double[], OptimisationScore> scores = place -> goal.apply(lookAt(place));
        return inParallel(
                starts.size(), k -> new OptimisationContinuum(counts, scores, ending).search(starts.get(k), seed + k));
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
    List<Integer> descend(List<Integer> start, Function<P, OptimisationScore> goal, Effort effort) {
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

    private List<Integer> bestOf(List<List<Integer>> places, List<Integer> here, Function<P, OptimisationScore> goal) {
        visit(places);
        OptimisationScore least = goal.apply(at(here));
        List<Integer> best = null;
        for (List<Integer> place : places) {
            OptimisationScore score = goal.apply(known.get(place));
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
}
