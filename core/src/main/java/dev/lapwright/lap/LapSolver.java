package dev.lapwright.lap;

import dev.lapwright.air.Wind;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
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
    private final Stations stations;
    private Wind wind;
    private Kernel kernel;
    /** Whether a thread is inside. */
    private final AtomicBoolean busy = new AtomicBoolean();

    /** A solver for a track sampled at these stations. */
    public LapSolver(Stations stations) {
        this.stations = stations;
        prepare(Wind.CALM);
    }

    /** A solver at the default spacing. */
    public static LapSolver on(Track track) {
        return new LapSolver(track.stations(StationSpacing.DEFAULT));
    }

    /** One lap at the default spacing. */
    public static Lap lap(Car car, Track track, Conditions conditions) {
        return on(track).solve(Vehicle.of(car, conditions));
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
            kernel = new Kernel(new Road(stations, newWind));
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
            double[] v = new double[kernel.energy.length];
            for (int i = 0; i < v.length; i++) {
                v[i] = Math.sqrt(2 * kernel.energy[i]);
            }
            return LapFigures.of(
                    stations.corners(), kernel.road.s, v, kernel.time, time, Math.sqrt(2 * kernel.peakEnergy));
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
        enter();
        try {
            double time = solved(vehicle);
            return new Linearisation(kernel, vehicle).about(time);
        } finally {
            leave();
        }
    }

    /** The stations it solves at. */
    public Stations stations() {
        return stations;
    }
}
