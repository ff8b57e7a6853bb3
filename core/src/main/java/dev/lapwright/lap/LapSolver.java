package dev.lapwright.lap;

import dev.lapwright.air.Wind;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;

/**
 * Solves laps on one track. Owns its workspace: use one solver for each thread, and the same solver for many cars.
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

    private void prepare(Wind newWind) {
        if (!newWind.equals(wind)) {
            wind = newWind;
            kernel = new Kernel(new Road(stations, newWind));
        }
    }

    /**
     * The lap with all its columns.
     *
     * @throws dev.lapwright.fault.NoLapException if this car cannot get round this track
     */
    public Lap solve(Vehicle vehicle) {
        prepare(vehicle.wind);
        double time = kernel.solve(vehicle);
        return new LapColumns(vehicle, kernel).lap(time);
    }

    /**
     * The lap in short, without its columns.
     *
     * @throws dev.lapwright.fault.NoLapException if this car cannot get round this track
     */
    public LapFigures figures(Vehicle vehicle) {
        double time = lapTime(vehicle);
        double[] v = new double[kernel.energy.length];
        for (int i = 0; i < v.length; i++) {
            v[i] = Math.sqrt(2 * kernel.energy[i]);
        }
        return LapFigures.of(stations.corners(), kernel.road.s, v, kernel.time, time, Math.sqrt(2 * kernel.peakEnergy));
    }

    /**
     * The lap time alone, s: the fastest call.
     *
     * @throws dev.lapwright.fault.NoLapException if this car cannot get round this track
     */
    public double lapTime(Vehicle vehicle) {
        prepare(vehicle.wind);
        return kernel.solve(vehicle);
    }

    /**
     * The lap with what bounds it, linearised.
     *
     * @throws dev.lapwright.fault.NoLapException if this car cannot get round this track
     */
    public LinearLap linearised(Vehicle vehicle) {
        double time = lapTime(vehicle);
        return new Linearisation(kernel, vehicle).about(time);
    }

    /** The stations it solves at. */
    public Stations stations() {
        return stations;
    }
}
