package dev.lapwright.fit;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.Track;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** Lap model as a function of the directions in which a car may move, one u for each {@link Direction}. Not for sharing between threads. */
final class FitModel {
    private final Car car;
    private final Conditions conditions;
    private final LapSolver solver;
    private final List<Direction> directions;

    FitModel(Car car, Track track, Conditions conditions, List<Direction> directions) {
        this(car, LapSolver.on(track), conditions, directions);
    }

    private FitModel(Car car, LapSolver solver, Conditions conditions, List<Direction> directions) {
        this.car = car;
        this.solver = solver;
        this.conditions = conditions;
        this.directions = List.copyOf(directions);
    }

    /** The same with only these directions free; the others stay at the car's own value. */
    FitModel fitting(List<Direction> free) {
        return new FitModel(car, solver, conditions, free);
    }

    List<Direction> directions() {
        return directions;
    }

    /** The car at u, as it shows in the laps: what stands in for the line is part of it. */
    private Car onItsLine(double[] u) {
        return moved(u, direction -> true);
    }

    /** The car itself at u. */
    Car car(double[] u) {
        return moved(u, Direction::isOfTheCar);
    }

    private Car moved(double[] u, Predicate<Direction> counts) {
        Map<Quantity, Double> shifts = new EnumMap<>(Quantity.class);
        for (int j = 0; j < u.length; j++) {
            if (counts.test(directions.get(j))) {
                directions
                        .get(j)
                        .shifts(car, u[j])
                        .forEach((quantity, shift) -> shifts.merge(quantity, shift, Double::sum));
            }
        }
        return FittedCar.moved(car, shifts);
    }

    /** The corner that each of so many even cells of the track belongs to. */
    int[] corners(int cells) {
        return CornerClusters.of(solver.stations(), cells);
    }

    /** The lap at u. */
    Lap lap(double[] u) {
        return solver.solve(Vehicle.of(onItsLine(u), conditions));
    }

    /** The speeds at u; none where this is no car, or a car without a lap. */
    Optional<SpeedCurve> tried(double[] u) {
        try {
            return Optional.of(new SpeedCurve(lap(u)));
        } catch (NoLapException | InvalidValueException e) {
            return Optional.empty();
        }
    }

    /** The speeds a step of u below and above, and the distance in u between the two. */
    Pair around(double[] u, int j) {
        Direction direction = directions.get(j);
        double[] low = u.clone();
        double[] high = u.clone();
        low[j] = direction.clamped(u[j] - direction.step());
        high[j] = direction.clamped(u[j] + direction.step());
        Optional<SpeedCurve> below = tried(low);
        Optional<SpeedCurve> above = tried(high);
        if (below.isEmpty()) {
            low[j] = u[j];
            below = tried(low);
        }
        if (above.isEmpty()) {
            high[j] = u[j];
            above = tried(high);
        }
        LapwrightException none = new NoLapException("fit", "no lap beside the fitted car", "fit fewer parameters");
        return new Pair(below.orElseThrow(() -> none), above.orElseThrow(() -> none), high[j] - low[j]);
    }

    /** Two laps and how far apart in u they are. */
    record Pair(SpeedCurve below, SpeedCurve above, double apart) {}
}
