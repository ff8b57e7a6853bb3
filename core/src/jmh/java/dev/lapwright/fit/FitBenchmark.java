package dev.lapwright.fit;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.lap.BenchmarkScene;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A fit of all five parameters to one noisy lap of five kilometres, on one warm thread, beside one lap of the same
 * circuit.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 4)
@Measurement(iterations = 5, time = 4)
@Fork(1)
public class FitBenchmark {
    /** The car, the circuit, and a lap of another car that drifts by 0.3 m/s over 30 m. */
    @State(Scope.Thread)
    public static class Scene {
        Car car;
        Track track;
        LapSolver solver;
        Vehicle vehicle;
        List<DrivenLap> laps;

        /** Builds them. */
        @Setup
        public void build() {
            car = BenchmarkScene.car();
            track = BenchmarkScene.circuit();
            solver = LapSolver.on(track);
            vehicle = Vehicle.of(car, Conditions.STANDARD);
            Car driven = car.with(Quantity.COMPOUND_GRIP, 0.96)
                    .with(Quantity.DRAG_AREA, 1.1 * car.value(Quantity.DRAG_AREA))
                    .with(Quantity.POWER_SCALE, 1.03);
            Lap lap = solver.solve(Vehicle.of(driven, Conditions.STANDARD));
            laps = List.of(Recorder.at(20).noisy(0.3, 30, new Random(1)).of("lap", lap));
        }
    }

    /** The yardstick. */
    @Benchmark
    public double lap(Scene scene) {
        return scene.solver.lapTime(scene.vehicle);
    }

    /** From laps to result. */
    @Benchmark
    public FitResult fit(Scene scene) {
        return Fit.of(scene.car, scene.track, Conditions.STANDARD)
                .laps(scene.laps)
                .run();
    }
}
