package dev.lapwright.line;

import dev.lapwright.car.Conditions;
import dev.lapwright.lap.BenchmarkScene;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.Track;
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

/** Lines round five kilometres with nodes 2 m apart, on one warm thread, beside one lap of the same circuit. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 4)
@Measurement(iterations = 5, time = 4)
@Fork(1)
public class LineBenchmark {
    /** The car and the circuit. */
    @State(Scope.Thread)
    public static class Scene {
        Vehicle vehicle;
        LapSolver solver;
        LineSearch search;

        /** Builds them. */
        @Setup
        public void build() {
            Track track = BenchmarkScene.circuit();
            vehicle = Vehicle.of(BenchmarkScene.car(), Conditions.STANDARD);
            solver = LapSolver.on(track);
            search = LineSearch.of(track, BenchmarkScene.car(), LineChoices.DEFAULT);
        }
    }

    /** The yardstick. */
    @Benchmark
    public double lap(Scene scene) {
        return scene.solver.lapTime(scene.vehicle);
    }

    /** The smoothest line. */
    @Benchmark
    public Line smoothest(Scene scene) {
        return scene.search.smoothest();
    }

    /** The fastest line, the smoothest included. */
    @Benchmark
    public Line fastest(Scene scene) {
        return scene.search.fastest(scene.vehicle);
    }
}
