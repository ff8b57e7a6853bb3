package dev.lapwright.study.sweep;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineFinder;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyMemory;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ObjDoubleConsumer;

/**
 * Sweep of laps over a grid of settings, one lap for each combination of the axes' values. Results are the same, bit for
 * bit, for any number of threads.
 *
 * <pre>{@code
 * SweepResult wing = Sweep.of(car, track, Conditions.STANDARD)
 *         .over(SweepAxis.stepped("rear-wing", 0, 12, 1))
 *         .run();
 * }</pre>
 */
public final class Sweep implements Study<SweepResult> {
    private static final int MOST_LAPS = 5_000_000;

    private final Car car;
    private final Stations stations;
    private final Conditions conditions;
    private final List<SweepAxis> axes;
    private final Optional<SweepResult.LineRefresh> refresh;
    private final StudyMemory memory;
    private final ObjDoubleConsumer<List<Double>> faster;

    private Sweep(
            Car car,
            Stations stations,
            Conditions conditions,
            List<SweepAxis> axes,
            Optional<SweepResult.LineRefresh> refresh,
            StudyMemory memory,
            ObjDoubleConsumer<List<Double>> faster) {
        this.car = car;
        this.stations = stations;
        this.conditions = conditions;
        this.axes = axes;
        this.refresh = refresh;
        this.memory = memory;
        this.faster = faster;
    }

    /** A sweep about a car as it stands, which is the baseline; add axes before running it. */
    public static Sweep of(Car car, Track track, Conditions conditions) {
        return new Sweep(
                car,
                track.stations(StationSpacing.DEFAULT),
                conditions,
                List.of(),
                Optional.empty(),
                StudyMemory.NONE,
                (settings, lapTime) -> {});
    }

    /**
     * A sweep in which each car, the baseline's too, drives the fastest line found for itself from one line along a road. To
     * hold a line fixed instead, sweep on {@link Line#driven()}.
     */
    public static Sweep refreshing(Car car, Line from, LineChoices choices, Conditions conditions) {
        Sweep held = of(car, from.road(), conditions);
        Optional<SweepResult.LineRefresh> refresh =
                Optional.of(new SweepResult.LineRefresh(from, choices, LineFinder.SEARCH));
        return new Sweep(car, held.stations, conditions, held.axes, refresh, StudyMemory.NONE, held.faster);
    }

    /** The same, lines found by somebody who may remember them; where lines are not found anew, no other. */
    public Sweep with(LineFinder finder) {
        return new Sweep(
                car,
                stations,
                conditions,
                axes,
                refresh.map(found -> new SweepResult.LineRefresh(found.from(), found.choices(), finder)),
                memory,
                faster);
    }

    /** The same, going on from what a memory recalls of this very sweep, and keeping there what it drives. */
    public Sweep remembering(StudyMemory laps) {
        return new Sweep(car, stations, conditions, axes, refresh, laps, faster);
    }

    /** The same, telling the settings, in the axes' order, and the lap time (s) of each lap that is faster than all driven before it; never two at once. */
    public Sweep tellingFaster(ObjDoubleConsumer<List<Double>> told) {
        return new Sweep(car, stations, conditions, axes, refresh, memory, told);
    }

    /** The same with one more axis. The last axis added varies fastest. */
    public Sweep over(SweepAxis axis) {
        List<SweepAxis> more = new ArrayList<>(axes);
        for (SweepAxis known : axes) {
            if (known.name().equals(axis.name())) {
                throw new InvalidValueException(axis.name(), "it is swept twice", "give each axis once");
            }
        }
        more.add(axis);
        return new Sweep(car, stations, conditions, List.copyOf(more), refresh, memory, faster);
    }

    /** Number of laps it will drive, without the baseline. */
    public int laps() {
        long count = 1;
        for (SweepAxis axis : axes) {
            count *= axis.count();
            if (count > MOST_LAPS) {
                throw new InvalidValueException(
                        "sweep", "it would drive more than " + MOST_LAPS + " laps", "take fewer values");
            }
        }
        return (int) count;
    }

    /**
     * Runs it. Settings are checked before the first lap, so a mistyped range costs no waiting.
     *
     * @throws LapwrightException if a setting is out of range or the baseline has no lap; a point of the sweep without a lap
     *     is no error but says so in its {@link SweepResult.Point}
     */
    @Override
    public SweepResult run(StudyRun how) {
        if (axes.isEmpty()) {
            throw new InvalidValueException("sweep", "no axis was given", "name at least one thing to vary");
        }
        int total = laps();
        checkSettings();
        LapFigures baseline = figures(new LapSolver(stations), car, conditions, how);
        SweepPoints points = new SweepPoints(axes, total);
        memory.recallCounted(total, points::recall);
        int[] missing = points.missing();
        Fastest fastest = new Fastest();
        how.allInParallel(
                missing.length,
                () -> new LapSolver(stations),
                (solver, i) -> drive(missing[i], points, fastest, solver, how),
                done -> how.report(total - missing.length + done, total));
        return new SweepResult(car, stations.track(), conditions, axes, baseline, points, refresh);
    }

    private LapFigures figures(LapSolver solver, Car driven, Conditions day, StudyRun how) {
        Vehicle vehicle = Vehicle.of(driven, day);
        return refresh.map(line -> line.figures(driven, vehicle, how)).orElseGet(() -> solver.figures(vehicle));
    }

    private void checkSettings() {
        for (SweepAxis axis : axes) {
            for (int i = 0; i < axis.count(); i++) {
                if (Conditions.isMeantBy(axis.name())) {
                    conditions.with(axis.name(), axis.value(i));
                } else {
                    car.with(axis.name(), axis.value(i));
                }
            }
        }
    }

    /** The fastest lap driven so far. */
    private final class Fastest {
        private double lapTime = Double.POSITIVE_INFINITY;

        synchronized void met(List<Double> settings, LapFigures lap) {
            if (lap.lapTime() < lapTime) {
                lapTime = lap.lapTime();
                faster.accept(settings, lapTime);
            }
        }
    }

    private Void drive(int index, SweepPoints points, Fastest fastest, LapSolver solver, StudyRun how) {
        Car changed = car;
        Conditions day = conditions;
        List<Double> settings = points.settings(index);
        LapFigures lap = null;
        String failure = "";
        try {
            for (int k = 0; k < axes.size(); k++) {
                String name = axes.get(k).name();
                if (Conditions.isMeantBy(name)) {
                    day = day.with(name, settings.get(k));
                } else {
                    changed = changed.with(name, settings.get(k));
                }
            }
            lap = figures(solver, changed, day, how);
            fastest.met(settings, lap);
        } catch (NoLapException | InvalidValueException noLap) {
            failure = noLap.getMessage();
        }
        double[] figures = SweepPoints.figures(lap);
        points.put(index, figures, failure);
        memory.keep(Integer.toString(index), figures, failure);
        return null;
    }
}
