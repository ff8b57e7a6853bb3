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

/** Lap model as a function of the scaled parameters, one u for each {@link ParameterScale}. Not for sharing between threads. */
final class FitModel {
    /**
     * Step of u in differences. Speeds near a braking point have kinks in u, which the mean over a cell rounds off;
     * solver noise is some 1e-9 m/s. A fiftieth of what is in doubt (0.2 % of grip) is far above the one and far below
     * the curvature.
     */
    private static final double STEP = 0.02;

    private final Car car;
    private final Conditions conditions;
    private final LapSolver solver;
    private final List<ParameterScale> scales;

    FitModel(Car car, Track track, Conditions conditions, List<ParameterScale> scales) {
        this(car, LapSolver.on(track), conditions, scales);
    }

    private FitModel(Car car, LapSolver solver, Conditions conditions, List<ParameterScale> scales) {
        this.car = car;
        this.solver = solver;
        this.conditions = conditions;
        this.scales = List.copyOf(scales);
    }

    /** The same with only these scales free; the others stay at the car's own value. */
    FitModel fitting(List<ParameterScale> free) {
        return new FitModel(car, solver, conditions, free);
    }

    List<ParameterScale> scales() {
        return scales;
    }

    /** The car at u. */
    Car car(double[] u) {
        Map<Quantity, Double> shifts = new EnumMap<>(Quantity.class);
        for (int j = 0; j < u.length; j++) {
            scales.get(j).shifts(car, u[j]).forEach((quantity, shift) -> shifts.merge(quantity, shift, Double::sum));
        }
        return FittedCar.moved(car, shifts);
    }

    /** The corner that each of so many even cells of the track belongs to. */
    int[] corners(int cells) {
        return CornerClusters.of(solver.stations(), cells);
    }

    /** The lap at u. */
    Lap lap(double[] u) {
        return solver.solve(Vehicle.of(car(u), conditions));
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
        ParameterScale scale = scales.get(j);
        double[] low = u.clone();
        double[] high = u.clone();
        low[j] = scale.clamped(u[j] - STEP);
        high[j] = scale.clamped(u[j] + STEP);
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
