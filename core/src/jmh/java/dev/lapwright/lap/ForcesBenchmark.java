package dev.lapwright.lap;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The kernel's hottest call, the hardest braking at a place and speed, against the plain second writing of the same
 * equations that the tests hold it to: the same places of a closing bend, at nine tenths of the cornering limit.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 6, time = 1)
@Fork(2)
@State(Scope.Thread)
public class ForcesBenchmark {
    static final int PLACES = 64;

    private final double[] energies = new double[PLACES];
    private final TrackPoint[] points = new TrackPoint[PLACES];
    private Road road;
    private AccelerationLimits fast;
    private ReferenceForces plain;
    private WheelForces wheels;
    private int gear;

    /** Builds car and road, and chooses the speeds. */
    @Setup
    public void build() {
        Car car = BenchmarkScene.car();
        Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
        Track track = BenchmarkScene.circuit();
        Stations stations = track.stations(StationSpacing.DEFAULT);
        road = new Road(stations, vehicle.wind);
        wheels = new WheelForces(vehicle);
        fast = AccelerationLimits.toDriveBy(vehicle, wheels);
        plain = new ReferenceForces(car, Conditions.STANDARD);
        double[] limit = new double[road.cells + 1];
        CornerLimit limits = new CornerLimit(vehicle, wheels);
        limits.begin(road, limit, new double[limit.length]);
        limits.all();
        for (int i = 0; i < PLACES; i++) {
            energies[i] = 0.81 * limit[i * road.cells / PLACES];
            points[i] = track.pointAt(road.s[i * road.cells / PLACES]);
        }
        gear = vehicle.propulsion.gear[vehicle.propulsion.pieces - 1];
    }

    /** By the kernel: a secant search started from the last answer. */
    @Benchmark
    @OperationsPerInvocation(PLACES)
    public double braking() {
        double sum = 0;
        for (int i = 0; i < PLACES; i++) {
            sum += fast.brake(road.rows, 2 * (i * road.cells / PLACES) * Road.STRIDE, energies[i], gear);
        }
        return sum;
    }

    /** By the plain writing: 200 bisections. */
    @Benchmark
    @OperationsPerInvocation(PLACES)
    public double brakingPlainly() {
        double sum = 0;
        for (int i = 0; i < PLACES; i++) {
            sum += plain.brake(points[i], Math.sqrt(2 * energies[i]), gear);
        }
        return sum;
    }

    /** The forces once: loads, peaks and use of four wheels. */
    @Benchmark
    @OperationsPerInvocation(PLACES)
    public double forcesOnce() {
        double sum = 0;
        for (int i = 0; i < PLACES; i++) {
            wheels.at(road.rows, 2 * (i * road.cells / PLACES) * Road.STRIDE, Math.sqrt(2 * energies[i]));
            sum += wheels.utilisation(-8, 1.05);
        }
        return sum;
    }
}
