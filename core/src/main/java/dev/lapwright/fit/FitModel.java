package dev.lapwright.fit;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.LapTangents;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.StudyMemory;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/**
 * Lap model as a function of the directions in which a car may move, one u for each {@link Direction}. The car is set up
 * otherwise in each run; what moves moves its document, in all runs alike but for what a run has of its own. Not for sharing between
 * threads.
 */
final class FitModel {
    /** Share of a direction's step that a tangent is told by: 2e-4 of grip, 2.5e-4 of mass. */
    private static final double NEAR = 0.1;

    private final List<DrivenRun> runs;
    private final LapSolver solver;
    private final List<Direction> directions;
    private final Driven driven;
    private final SpeedCurve.Grid stations;

    /**
     * @param how told of each lap driven
     * @param expected laps that will be, about
     * @param rounds of least squares done before
     */
    FitModel(
            List<DrivenRun> runs,
            Track track,
            List<Direction> directions,
            StudyRun how,
            int expected,
            StudyMemory rounds) {
        this(runs, LapSolver.on(track), directions, new Driven(how, expected, new Rounds(rounds)));
    }

    private FitModel(List<DrivenRun> runs, LapSolver solver, List<Direction> directions, Driven driven) {
        this.runs = List.copyOf(runs);
        this.solver = solver;
        this.directions = List.copyOf(directions);
        this.driven = driven;
        stations = new SpeedCurve.Grid(solver.stations().s());
    }

    /** Laps driven for one fit and its rounds of least squares, all its models together. */
    private static final class Driven {
        private final StudyRun how;
        private final int expected;
        private final Rounds rounds;
        private int laps;

        Driven(StudyRun how, int expected, Rounds rounds) {
            this.how = how;
            this.expected = expected;
            this.rounds = rounds;
        }

        void next() {
            laps++;
            how.report(laps, Math.max(laps + 1, expected));
        }

        void end() {
            how.report(laps, laps);
        }
    }

    /**
     * Rounds of least squares of one fit, one after the other. The same fit does the same rounds: what one that was broken off has done is
     * recalled.
     */
    static final class Rounds {
        private final StudyMemory memory;
        private final Map<String, double[]> recalled = new HashMap<>();
        private int round;

        private Rounds(StudyMemory memory) {
            this.memory = memory;
            memory.recall((name, numbers, words) -> recalled.put(name, numbers));
        }

        /** Number of rounds that are known. */
        int known() {
            return recalled.size();
        }

        /** Begins the next round: what it came to where it was done before, as so many numbers. */
        Optional<double[]> next(int numbers) {
            round++;
            return Optional.ofNullable(recalled.get(Integer.toString(round))).filter(kept -> kept.length == numbers);
        }

        /** Keeps what the round came to. */
        void keep(double[] numbers) {
            memory.keep(Integer.toString(round), numbers, "");
        }
    }

    /** The same with only these directions free; the others stay at the car's own value. */
    FitModel fitting(List<Direction> free) {
        return new FitModel(runs, solver, free, driven);
    }

    /** The same for one other run of the same car, with the directions that show in it. */
    FitModel of(DrivenRun other, List<Direction> shown) {
        return new FitModel(List.of(other), solver, shown, driven);
    }

    List<Direction> directions() {
        return directions;
    }

    Rounds rounds() {
        return driven.rounds;
    }

    List<DrivenRun> runs() {
        return runs;
    }

    /** The car of a run at u, as it shows in the laps: what stands in for the line is part of it. */
    private Car inItsRun(double[] u, int run) {
        return moved(u, runs.get(run).car(), direction -> direction.shows(run));
    }

    /** The car itself at u, set up as in a run. */
    Car car(double[] u, int run) {
        return moved(u, runs.get(run).car(), Direction::isOfTheCar);
    }

    private Car moved(double[] u, Car from, Predicate<Direction> counts) {
        Map<Quantity, Double> shifts = new EnumMap<>(Quantity.class);
        for (int j = 0; j < u.length; j++) {
            if (counts.test(directions.get(j))) {
                directions
                        .get(j)
                        .shifts(runs.get(0).car(), u[j])
                        .forEach((quantity, shift) -> shifts.merge(quantity, shift, Double::sum));
            }
        }
        return FittedCar.moved(from, shifts);
    }

    /** The corner that each of so many even cells of the track belongs to. */
    int[] corners(int cells) {
        return CornerClusters.of(solver.stations(), cells);
    }

    /** The lap at u in a run. */
    Lap lap(double[] u, int run) {
        driven.next();
        return solver.solve(vehicle(u, run));
    }

    private Vehicle vehicle(double[] u, int run) {
        return Vehicle.of(inItsRun(u, run), runs.get(run).conditions());
    }

    private SpeedCurve curve(double[] speeds) {
        return new SpeedCurve(stations, speeds, solver.stations().track().isClosed());
    }

    /** Drives a lap of a run of the car as given that is none of the fit's, as to see how long it takes. */
    void tryLap(int run) {
        solver.solve(Vehicle.of(runs.get(run).car(), runs.get(run).conditions()));
    }

    /** Tells that no more laps will be driven. */
    void end() {
        driven.end();
    }

    /** The speeds at u in a run; none where this is no car, or a car without a lap. */
    Optional<SpeedCurve> tried(double[] u, int run) {
        try {
            driven.next();
            return Optional.of(curve(solver.speeds(vehicle(u, run))));
        } catch (NoLapException | InvalidValueException e) {
            return Optional.empty();
        }
    }

    /** The speeds at u in each run; none where one has none. */
    Optional<List<SpeedCurve>> tried(double[] u) {
        List<SpeedCurve> curves = new ArrayList<>();
        for (int run = 0; run < runs.size(); run++) {
            Optional<SpeedCurve> curve = tried(u, run);
            if (curve.isEmpty()) {
                return Optional.empty();
            }
            curves.add(curve.get());
        }
        return Optional.of(curves);
    }

    /** The speeds of a run a step of u below and above, and the distance in u between the two; null where it does not show there. */
    Pair around(double[] u, int j, int run) {
        Direction direction = directions.get(j);
        if (!direction.shows(run)) {
            return null;
        }
        double[] low = u.clone();
        double[] high = u.clone();
        low[j] = direction.clamped(u[j] - direction.step());
        high[j] = direction.clamped(u[j] + direction.step());
        Optional<SpeedCurve> below = tried(low, run);
        Optional<SpeedCurve> above = tried(high, run);
        if (below.isEmpty()) {
            low[j] = u[j];
            below = tried(low, run);
        }
        if (above.isEmpty()) {
            high[j] = u[j];
            above = tried(high, run);
        }
        LapwrightException none = new NoLapException("fit", "no lap beside the fitted car", "fit fewer parameters");
        return new Pair(below.orElseThrow(() -> none), above.orElseThrow(() -> none), high[j] - low[j]);
    }

    /** The same to first order for all directions, from one lap of the run. */
    Pair[] tangents(double[] u, int run) {
        List<Integer> shown = IntStream.range(0, directions.size())
                .filter(j -> directions.get(j).shows(run))
                .boxed()
                .toList();
        List<LapTangents.Step> steps = shown.stream()
                .map(j -> new LapTangents.Step(beside(u, j, -NEAR, run), beside(u, j, NEAR, run)))
                .toList();
        driven.next();
        LapTangents tangents = solver.tangents(vehicle(u, run), steps);
        Pair[] pairs = new Pair[directions.size()];
        for (int k = 0; k < steps.size(); k++) {
            double[] below = tangents.speeds();
            double[] above = tangents.speeds();
            double[] change = tangents.speedChange(k);
            for (int i = 0; i < change.length; i++) {
                below[i] -= change[i] / NEAR;
                above[i] += change[i] / NEAR;
            }
            int j = shown.get(k);
            pairs[j] =
                    new Pair(curve(below), curve(above), 2 * directions.get(j).step());
        }
        return pairs;
    }

    /** The car of a run a share of a step of u further; null beyond the ends of what is searched. */
    private Vehicle beside(double[] u, int j, double share, int run) {
        double[] moved = u.clone();
        moved[j] += share * directions.get(j).step();
        if (moved[j] != directions.get(j).clamped(moved[j])) {
            return null;
        }
        try {
            return vehicle(moved, run);
        } catch (InvalidValueException endOfRange) {
            return null;
        }
    }

    /** Two laps and how far apart in u they are. */
    record Pair(SpeedCurve below, SpeedCurve above, double apart) {}
}
