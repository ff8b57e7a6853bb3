package dev.lapwright.study.gearing;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * Study of gearing: final drives and single ratios, each varied by itself, and what the lap makes of them; also behind
 * another car, and against a wind.
 *
 * <pre>{@code
 * GearingResult result = Gearing.of(car, track, Conditions.STANDARD).withTow(0.15).run();
 * }</pre>
 */
public final class Gearing implements Study<GearingResult> {
    /** Steps of the rev limit over the car's own by which it is raised until it is never held, and how often at most. */
    private static final double RAISED_BY = 0.1;

    private static final int MOST_STEPS = 10;

    /** Greatest share of drag that a tow may take away. */
    private static final double GREATEST_TOW = 0.6;

    private static final double STRONGEST_WIND = 40;

    private final Car car;
    private final Stations stations;
    private final Conditions conditions;
    private final List<SweepAxis> axes;
    private final double tow;
    private final double headWind;

    private Gearing(
            Car car, Stations stations, Conditions conditions, List<SweepAxis> axes, double tow, double headWind) {
        this.car = car;
        this.stations = stations;
        this.conditions = conditions;
        this.axes = axes;
        this.tow = tow;
        this.headWind = headWind;
    }

    /** A study about a car as it stands. Without axes it tries {@link GearingAxes#of(Car)}. */
    public static Gearing of(Car car, Track track, Conditions conditions) {
        return new Gearing(car, track.stations(StationSpacing.DEFAULT), conditions, List.of(), 0, 0);
    }

    /**
     * The same with one more thing to vary, by itself: {@code gearbox.finalDrive}, a ratio ({@code gearbox.ratios.6}), or
     * an adjustment that moves such a thing.
     */
    public Gearing over(SweepAxis axis) {
        for (SweepAxis known : axes) {
            if (known.name().equals(axis.name())) {
                throw new InvalidValueException(axis.name(), "it is varied twice", "give each once");
            }
        }
        if (!GearingAxes.isGearing(car, axis.name())) {
            throw new InvalidValueException(
                    axis.name(),
                    "it moves no gear of this car",
                    "name one of " + String.join(", ", GearingAxes.names(car)));
        }
        List<SweepAxis> more = new ArrayList<>(axes);
        more.add(axis);
        return new Gearing(car, stations, conditions, List.copyOf(more), tow, headWind);
    }

    /** The same also in the wake of another car that takes away this share of the drag, 0 to 0.6, all the way round. */
    public Gearing withTow(double shareOfDrag) {
        Check.inRange("tow (share of drag)", shareOfDrag, 0, GREATEST_TOW);
        return new Gearing(car, stations, conditions, axes, shareOfDrag, headWind);
    }

    /** The same also with a steady wind (m/s) that meets the car head on where it is fastest; negative from behind. */
    public Gearing withHeadWind(double speed) {
        Check.inRange("head wind (m/s)", speed, -STRONGEST_WIND, STRONGEST_WIND);
        return new Gearing(car, stations, conditions, axes, tow, speed);
    }

    /**
     * Drives all laps. Settings are checked before the first.
     *
     * @throws dev.lapwright.fault.LapwrightException if a setting is out of range or a baseline has no lap
     */
    @Override
    public GearingResult run(StudyRun how) {
        List<SweepAxis> varied = axes.isEmpty() ? GearingAxes.of(car) : axes;
        for (SweepAxis axis : varied) {
            for (double value : axis.values()) {
                GearingAxes.geared(car, axis.name(), value);
            }
        }
        LapSolver solver = new LapSolver(stations);
        Vehicle vehicle = Vehicle.of(car, conditions);
        Lap lap = solver.solve(vehicle);
        GearingResult.GearedLap asGiven = read(solver, lap);
        List<Situation> situations = new ArrayList<>();
        situations.add(new Situation(GearingResult.Scenario.Kind.AS_GIVEN, 0, car, conditions, asGiven));
        if (tow != 0) {
            Car towed = towed(lap);
            GearingResult.GearedLap behind = read(solver, solver.solve(Vehicle.of(towed, conditions)));
            situations.add(new Situation(GearingResult.Scenario.Kind.TOW, tow, towed, conditions, behind));
        }
        if (headWind != 0) {
            Conditions day = windy(asGiven.top().at());
            GearingResult.GearedLap against = read(solver, solver.solve(Vehicle.of(car, day)));
            situations.add(new Situation(GearingResult.Scenario.Kind.HEAD_WIND, headWind, car, day, against));
        }
        return new GearingResult(
                car,
                stations.track(),
                conditions,
                varied,
                GearingResult.Gear.of(vehicle),
                GearingResult.Traction.of(vehicle),
                scenarios(situations, varied, how));
    }

    /** Scenario of which only the baseline has been driven yet. */
    private record Situation(
            GearingResult.Scenario.Kind kind,
            double amount,
            Car car,
            Conditions day,
            GearingResult.GearedLap baseline) {}

    private List<GearingResult.Scenario> scenarios(List<Situation> situations, List<SweepAxis> varied, StudyRun how) {
        int each = varied.stream().mapToInt(SweepAxis::count).sum();
        int total = situations.size() * each;
        List<GearingResult.Candidate> all = how.inParallel(
                total,
                () -> new LapSolver(stations),
                (solver, i) -> candidate(solver, situations.get(i / each), varied, i % each),
                done -> how.report(done, total));
        List<GearingResult.Scenario> scenarios = new ArrayList<>();
        for (int i = 0; i < situations.size(); i++) {
            Situation one = situations.get(i);
            scenarios.add(new GearingResult.Scenario(
                    one.kind(),
                    one.amount(),
                    one.car(),
                    one.day(),
                    one.baseline(),
                    all.subList(i * each, (i + 1) * each)));
        }
        return scenarios;
    }

    /** The candidate at a place in the list of all axes' values, one axis after the other. */
    private static GearingResult.Candidate candidate(
            LapSolver solver, Situation situation, List<SweepAxis> varied, int index) {
        int left = index;
        int k = 0;
        while (left >= varied.get(k).count()) {
            left -= varied.get(k++).count();
        }
        String axis = varied.get(k).name();
        double value = varied.get(k).value(left);
        Car geared = GearingAxes.geared(situation.car(), axis, value);
        try {
            GearingResult.GearedLap lap = read(solver, solver.solve(Vehicle.of(geared, situation.day())));
            return new GearingResult.Candidate(axis, value, geared, Optional.of(lap), "");
        } catch (NoLapException noLap) {
            return new GearingResult.Candidate(axis, value, geared, Optional.empty(), noLap.getMessage());
        }
    }

    private static GearingResult.GearedLap read(LapSolver solver, Lap lap) {
        Car limited = lap.vehicle().car();
        Lap free = lap;
        for (int step = 1; step <= MOST_STEPS && GearingReader.limiterTime(free) > 0; step++) {
            double raised = limited.value(Quantity.REV_LIMIT) * (1 + RAISED_BY * step);
            Car freed = limited.with(Quantity.REV_LIMIT, Math.min(raised, Quantity.REV_LIMIT.max()));
            free = solver.solve(Vehicle.of(freed, lap.vehicle().conditions()));
        }
        return GearingReader.read(
                lap, free.time() - lap.time(), free.vehicle().car().value(Quantity.REV_LIMIT));
    }

    /** The share is taken of the whole drag at top speed, from the area of the body. */
    private Car towed(Lap lap) {
        double area = lap.vehicle().platformAt(lap.figures().topSpeed()).areas().drag();
        double left = car.value(Quantity.DRAG_AREA) - tow * area;
        if (!(left >= 0)) {
            throw new InvalidValueException(
                    "tow (share of drag)",
                    Check.text(tow) + " would take away more than the drag of the car without its wings",
                    "allowed here: up to " + Check.text(car.value(Quantity.DRAG_AREA) / area));
        }
        return car.with(Quantity.DRAG_AREA, left);
    }

    private Conditions windy(double topSpeedAt) {
        double[] s = stations.s();
        double[] heading = stations.heading();
        double at = heading[0];
        for (int i = 0; i < s.length && s[i] <= topSpeedAt; i++) {
            at = heading[i];
        }
        double from = headWind >= 0 ? at : at + Math.PI;
        return conditions
                .with("conditions.windSpeedMps", Math.abs(headWind))
                .with("conditions.windFromDeg", (90 - Math.toDegrees(from)) % 360);
    }

    /** Values about one, each this many times the one in the middle. */
    static SweepAxis about(String name, double middle, double... factors) {
        return new SweepAxis(name, DoubleStream.of(factors).map(f -> f * middle).toArray());
    }
}
