package dev.lapwright.lap;

import dev.lapwright.air.Wind;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.Collection;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * Solver of laps on one track, for any number of cars. It owns the workspace that it computes in: each thread needs a solver
 * of its own, and a second thread that enters while a first is inside is refused with an {@link IllegalStateException}.
 *
 * <pre>{@code
 * Lap lap = LapSolver.lap(car, track, Conditions.STANDARD);
 * System.out.println(lap.time() + " s");
 * }</pre>
 */
public final class LapSolver {
    /** Step of a quantity over its value, or over the least value that counts as one. */
    private static final double DERIVATIVE_STEP = 1e-5;

    private static final double LEAST_SIZE = 0.05;

    private final Stations stations;
    private final StationLimits.Maker fuller;
    /** Of the lap before; null before the first. */
    private Wind wind;

    private Kernel kernel;
    /** Whether a thread is inside. */
    private final AtomicBoolean busy = new AtomicBoolean();

    /** A solver for a track sampled at these stations. */
    public LapSolver(Stations stations) {
        this(stations, null);
    }

    private LapSolver(Stations stations, StationLimits.Maker fuller) {
        this.fuller = fuller;
        this.stations = stations;
    }

    /**
     * A solver that asks another model of a car's limits, place by place: the same line, gears, shifts, brakes and integration. Where that
     * model does not know, the lap's own stands in: {@link Lap#isUnchecked}. Linearised laps and derivatives are not to be had.
     */
    public static LapSolver asking(StationLimits.Maker model, Stations stations) {
        return new LapSolver(stations, Objects.requireNonNull(model));
    }

    /** A solver at the default spacing. */
    public static LapSolver on(Track track) {
        return new LapSolver(track.stations(StationSpacing.DEFAULT));
    }

    /** One lap at the default spacing. */
    public static Lap lap(Car car, Track track, Conditions conditions) {
        return on(track).solve(Vehicle.of(car, conditions));
    }

    private void checkOwnModel() {
        if (fuller != null) {
            throw new IllegalStateException("a lap by another model has no derivatives: ask a solver without one");
        }
    }

    void enter() {
        if (!busy.compareAndSet(false, true)) {
            throw new IllegalStateException(
                    "two threads are inside one LapSolver, which would mix up their laps: give each thread its own");
        }
    }

    void leave() {
        busy.set(false);
    }

    private void prepare(Wind newWind) {
        if (!newWind.equals(wind)) {
            wind = newWind;
            kernel = new Kernel(new Road(stations, newWind), fuller);
        }
    }

    private double solved(Vehicle vehicle) {
        prepare(vehicle.wind);
        return kernel.solve(vehicle);
    }

    /**
     * The lap with all its columns.
     *
     * @throws dev.lapwright.fault.NoLapException if this car cannot get round this track
     * @throws IllegalStateException if another thread is inside this solver
     */
    public Lap solve(Vehicle vehicle) {
        enter();
        try {
            double time = solved(vehicle);
            return new LapColumns(vehicle, kernel).lap(time);
        } finally {
            leave();
        }
    }

    /**
     * The lap in short, without its columns.
     *
     * @throws dev.lapwright.fault.NoLapException if this car cannot get round this track
     * @throws IllegalStateException if another thread is inside this solver
     */
    public LapFigures figures(Vehicle vehicle) {
        enter();
        try {
            double time = solved(vehicle);
            return LapFigures.of(
                    stations.corners(), kernel.road.s, speeds(), kernel.time, time, Math.sqrt(2 * kernel.peakEnergy));
        } finally {
            leave();
        }
    }

    private double[] speeds() {
        double[] v = new double[kernel.energy.length];
        for (int i = 0; i < v.length; i++) {
            v[i] = Math.sqrt(2 * kernel.energy[i]);
        }
        return v;
    }

    /**
     * The time of the lap and of its parts, without its columns.
     *
     * @return s: first the lap time, then the time in each timing sector
     * @throws dev.lapwright.fault.NoLapException if this car cannot get round this track
     * @throws IllegalStateException if another thread is inside this solver
     */
    public double[] times(Vehicle vehicle) {
        enter();
        try {
            double lapTime = solved(vehicle);
            double[] t = new double[kernel.energy.length];
            for (int i = 1; i < t.length; i++) {
                t[i] = t[i - 1] + kernel.time[i - 1];
            }
            t[t.length - 1] = lapTime;
            double[] sectors = Lap.sectorTimes(stations.track().sectorEnds(), kernel.road.s, speeds(), t);
            double[] all = new double[1 + sectors.length];
            all[0] = lapTime;
            System.arraycopy(sectors, 0, all, 1, sectors.length);
            return all;
        } finally {
            leave();
        }
    }

    /**
     * The lap time alone, s: the fastest call.
     *
     * @throws dev.lapwright.fault.NoLapException if this car cannot get round this track
     * @throws IllegalStateException if another thread is inside this solver
     */
    public double lapTime(Vehicle vehicle) {
        enter();
        try {
            return solved(vehicle);
        } finally {
            leave();
        }
    }

    /**
     * The lap with what bounds it, linearised.
     *
     * @throws dev.lapwright.fault.NoLapException if this car cannot get round this track
     * @throws IllegalStateException if another thread is inside this solver
     */
    public LinearLap linearised(Vehicle vehicle) {
        checkOwnModel();
        enter();
        try {
            double time = solved(vehicle);
            return new Linearisation(kernel, vehicle).about(time);
        } finally {
            leave();
        }
    }

    /**
     * The lap time with its derivatives by quantities of the car and the day, on both sides each.
     *
     * @param names of {@link Car#settableNames} and {@link Conditions#NAMES}; whole numbers, such as the lowest gear, have none
     * @throws dev.lapwright.fault.NoLapException if this car cannot get round this track
     * @throws dev.lapwright.fault.InvalidValueException if the car has no quantity of a name
     * @throws IllegalStateException if another thread is inside this solver
     */
    public LapDerivatives derivatives(Vehicle vehicle, Collection<String> names) {
        checkOwnModel();
        enter();
        try {
            double time = solved(vehicle);
            LapAdjoint adjoint = new LapAdjoint(kernel, vehicle);
            Map<String, LapDerivatives.Sides> sides = new LinkedHashMap<>();
            for (String name : names) {
                sides.put(name, derivative(adjoint, vehicle, name));
            }
            return new LapDerivatives(time, sides);
        } finally {
            leave();
        }
    }

    /**
     * The lap's speeds with their changes towards other cars.
     *
     * @throws dev.lapwright.fault.NoLapException if this car cannot get round this track
     * @throws IllegalStateException if another thread is inside this solver
     */
    public LapTangents tangents(Vehicle vehicle, List<LapTangents.Step> steps) {
        checkOwnModel();
        enter();
        try {
            double time = solved(vehicle);
            List<LocalSlopes.Hairs> hairs = steps.stream()
                    .map(step -> new LocalSlopes.Hairs(vehicle, hair(vehicle, step.less()), hair(vehicle, step.more())))
                    .toList();
            return LapTangents.of(time, speeds(), new LapCourses(kernel, vehicle), hairs);
        } finally {
            leave();
        }
    }

    /**
     * The speed at each station, m/s, without all the other columns.
     *
     * @throws dev.lapwright.fault.NoLapException if this car cannot get round this track
     * @throws IllegalStateException if another thread is inside this solver
     */
    public double[] speeds(Vehicle vehicle) {
        enter();
        try {
            solved(vehicle);
            return speeds();
        } finally {
            leave();
        }
    }

    /**
     * The lap time's derivatives by what the road is at each station.
     *
     * @throws dev.lapwright.fault.NoLapException if this car cannot get round this track
     * @throws IllegalStateException if another thread is inside this solver
     */
    public RoadDerivatives roadDerivatives(Vehicle vehicle) {
        checkOwnModel();
        enter();
        try {
            double time = solved(vehicle);
            LapAdjoint adjoint = new LapAdjoint(kernel, vehicle);
            Map<RoadDerivatives.Column, double[]> perRow = new EnumMap<>(RoadDerivatives.Column.class);
            for (RoadDerivatives.Column column : RoadDerivatives.Column.values()) {
                LocalSlopes.Hairs hairs = new LocalSlopes.Hairs(
                        vehicle,
                        new LocalSlopes.Hair(vehicle, new Road(stations, vehicle.wind, column, -column.step)),
                        new LocalSlopes.Hair(vehicle, new Road(stations, vehicle.wind, column, column.step)));
                perRow.put(column, adjoint.byRow(hairs, column.step));
            }
            return new RoadDerivatives(time, kernel.road, perRow);
        } finally {
            leave();
        }
    }

    private LapDerivatives.Sides derivative(LapAdjoint adjoint, Vehicle vehicle, String name) {
        boolean ofDay = Conditions.isMeantBy(name);
        double value = ofDay ? vehicle.conditions().value(name) : standing(vehicle.car(), name);
        double step = DERIVATIVE_STEP * Math.max(Math.abs(value), LEAST_SIZE);
        LocalSlopes.Hairs hairs = hairs(vehicle, name, value, step);
        LapDerivatives.Sides found = adjoint.derivative(hairs, step);
        // Nothing may mean that it is not given: then there is no way that leads there.
        return value == 0 ? adjoint.unlessJump(found, hairs, hairs(vehicle, name, value, 0.5 * step)) : found;
    }

    private LocalSlopes.Hairs hairs(Vehicle vehicle, String name, double value, double step) {
        return new LocalSlopes.Hairs(vehicle, hair(vehicle, name, value - step), hair(vehicle, name, value + step));
    }

    /** The car with another value of a quantity, or null if there is none. */
    private LocalSlopes.Hair hair(Vehicle vehicle, String name, double value) {
        try {
            return hair(
                    vehicle,
                    Conditions.isMeantBy(name)
                            ? vehicle.beside(vehicle.car(), vehicle.conditions().with(name, value))
                            : vehicle.beside(vehicle.car().with(name, value), vehicle.conditions()));
        } catch (InvalidValueException endOfRange) {
            return null;
        }
    }

    private LocalSlopes.Hair hair(Vehicle vehicle, Vehicle other) {
        if (other == null) {
            return null;
        }
        return new LocalSlopes.Hair(
                other, other.wind.equals(vehicle.wind) ? kernel.road : new Road(stations, other.wind));
    }

    private static double standing(Car car, String name) {
        boolean adjustment = car.adjustments().stream().anyMatch(a -> a.name().equals(name));
        return adjustment ? car.setting(name) : car.value(name);
    }

    /** The stations it solves at. */
    public Stations stations() {
        return stations;
    }
}
