package dev.lapwright.study.sweep;

import dev.lapwright.car.Conditions;
import dev.lapwright.lap.BenchmarkScene;
import dev.lapwright.study.StudyRun;
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

/** A sweep of wing and final drive round five kilometres, on one thread and on two. */
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 1)
@Measurement(iterations = 2)
@Fork(2)
@State(Scope.Benchmark)
public class SweepBenchmark {
    /** Laps along each side of the grid. */
    @Param({"20", "100"})
    int side;

    @Param({"1", "2"})
    int threads;

    private Sweep sweep;

    /** Lays the grid. */
    @Setup
    public void build() {
        sweep = grid(side);
    }

    /** A sweep of side × side laps. */
    static Sweep grid(int side) {
        return Sweep.of(BenchmarkScene.car(), BenchmarkScene.circuit(), Conditions.STANDARD)
                .over(SweepAxis.stepped("aero.wings.rear.angleDeg", 2, 10, 8.0 / (side - 1)))
                .over(SweepAxis.stepped("gearbox.finalDrive", 3.6, 4.2, 0.6 / (side - 1)));
    }

    /** All its laps. */
    @Benchmark
    public SweepResult sweep() {
        return sweep.run(StudyRun.onThreads(threads));
    }
}
