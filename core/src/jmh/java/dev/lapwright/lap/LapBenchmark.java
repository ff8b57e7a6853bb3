package dev.lapwright.lap;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** One lap of five kilometres and what goes before and after it, on one warm thread, beside a yardstick. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 6, time = 1)
@Fork(2)
public class LapBenchmark {
    /** The car and the circuit at the default spacing. */
    @State(Scope.Thread)
    public static class Scene {
        Car car;
        Vehicle vehicle;
        Track track;
        Stations stations;
        LapSolver solver;

        /** Builds them. */
        @Setup
        public void build() {
            car = BenchmarkScene.car();
            vehicle = Vehicle.of(car, Conditions.STANDARD);
            track = BenchmarkScene.circuit();
            stations = track.stations(StationSpacing.DEFAULT);
            solver = new LapSolver(stations);
        }
    }

    /** The same at other spacings, as a factor on the default. */
    @State(Scope.Thread)
    public static class Spaced {
        @Param({"1", "0.5", "0.25"})
        double spacing;

        Vehicle vehicle;
        LapSolver solver;

        /** Builds them. */
        @Setup
        public void build() {
            vehicle = Vehicle.of(BenchmarkScene.car(), Conditions.STANDARD);
            solver = new LapSolver(BenchmarkScene.circuit().stations(StationSpacing.DEFAULT.scaled(spacing)));
        }
    }

    /** The lap time alone. */
    @Benchmark
    public double lapTime(Spaced scene) {
        return scene.solver.lapTime(scene.vehicle);
    }

    /** Lap time and the speeds in the corners: what a sweep asks for. */
    @Benchmark
    public LapFigures lapInShort(Scene scene) {
        return scene.solver.figures(scene.vehicle);
    }

    /** The lap with all its columns. */
    @Benchmark
    public Lap lapWithColumns(Scene scene) {
        return scene.solver.solve(scene.vehicle);
    }

    /** What a change of setup costs before the lap. */
    @Benchmark
    public Vehicle vehicle(Scene scene) {
        return Vehicle.of(scene.car, Conditions.STANDARD);
    }

    /** Laying stations on the circuit, once for all cars. */
    @Benchmark
    public Stations stations(Scene scene) {
        return scene.track.stations(StationSpacing.DEFAULT);
    }

    /** The solver's workspace, once for all cars. */
    @Benchmark
    public LapSolver workspace(Scene scene) {
        return new LapSolver(scene.stations);
    }

    /**
     * The yardstick: the least that anything called a lap could cost. A point mass under constant power and drag over the
     * same distance, in steps of 1 m by the classical Runge-Kutta rule, with no limits, tyres or gears.
     */
    @Benchmark
    public double yardstick(Scene scene) {
        int steps = (int) scene.track.length();
        double energy = 200;
        double time = 0;
        for (int i = 0; i < steps; i++) {
            double k1 = slope(energy);
            double k2 = slope(energy + 0.5 * k1);
            double k3 = slope(energy + 0.5 * k2);
            double k4 = slope(energy + k3);
            double next = energy + (k1 + 2 * k2 + 2 * k3 + k4) / 6;
            time += 2 / (Math.sqrt(2 * energy) + Math.sqrt(2 * next));
            energy = next;
        }
        return time;
    }

    /** d(v²/2)/ds of 1300 kg with 350 kW and 0.6 kg/m of drag. */
    private static double slope(double energy) {
        return (350_000 / Math.sqrt(2 * energy) - 1.2 * energy) / 1300;
    }
}
