package dev.lapwright.study.pressures;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.Track;
import dev.lapwright.tyre.TreadTemperatures;
import dev.lapwright.tyre.TyreState;
import dev.lapwright.tyre.Wheel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Study of tyre pressures: from logged pairs of cold and hot to the next cold setting, what weather does to it, and what
 * pressures away from the ideal cost on a lap. Immutable: each method gives a new study.
 *
 * <p>By {@link dev.lapwright.tyre.GasLaw} a pair tells how hot the gas ran. That it will run hotter than the mean of air and
 * track by as much again is common practice, no source; it holds for like runs with like driving.
 */
public final class Pressures implements Study<PressureResult> {
    /** Distances from the ideal that are costed, kPa. */
    private static final double[] AWAY_KPA = {5, 10, 15, 20, 30};
    /** How much warmer or colder a day is looked at, K. */
    private static final double WEATHER_K = 10;

    private final Car car;
    private final Track track;
    private final Conditions conditions;
    private final List<PressurePair> pairs;
    private final Map<Wheel, Double> targets;
    private final Map<Wheel, TreadTemperatures> tread;
    private final PressureDay next;
    private final double coldTempC;

    private Pressures(
            Car car,
            Track track,
            Conditions conditions,
            List<PressurePair> pairs,
            Map<Wheel, Double> targets,
            Map<Wheel, TreadTemperatures> tread,
            PressureDay next,
            double coldTempC) {
        this.car = car;
        this.track = track;
        this.conditions = conditions;
        this.pairs = pairs;
        this.targets = targets;
        this.tread = tread;
        this.next = next;
        this.coldTempC = coldTempC;
    }

    /** A study with the car's ideal pressures as targets, for a day like that of the last pair. */
    public static Pressures of(Car car, Track track, Conditions conditions, List<PressurePair> pairs) {
        if (pairs.isEmpty()) {
            throw new InvalidValueException("pressures", "no pair of cold and hot is given", "give one for each tyre");
        }
        Map<Wheel, Double> targets = new EnumMap<>(Wheel.class);
        for (Wheel wheel : Wheel.values()) {
            targets.put(wheel, ideal(car, wheel));
        }
        PressurePair last = pairs.get(pairs.size() - 1);
        return new Pressures(
                car, track, conditions, List.copyOf(pairs), targets, Map.of(), last.day(), last.coldTempC());
    }

    private static double ideal(Car car, Wheel wheel) {
        return car.value(wheel.isFront() ? Quantity.IDEAL_PRESSURE_FRONT : Quantity.IDEAL_PRESSURE_REAR);
    }

    /** The same with another hot pressure wanted, kPa gauge. */
    public Pressures withTarget(Wheel wheel, double kpa) {
        Map<Wheel, Double> changed = new EnumMap<>(targets);
        changed.put(wheel, PressurePair.checkGauge(wheel.code() + " target", kpa));
        return new Pressures(car, track, conditions, pairs, changed, tread, next, coldTempC);
    }

    /** The same with temperatures across a tread. */
    public Pressures withTread(Wheel wheel, TreadTemperatures temperatures) {
        Map<Wheel, TreadTemperatures> changed = new EnumMap<>(Wheel.class);
        changed.putAll(tread);
        changed.put(wheel, temperatures);
        return new Pressures(car, track, conditions, pairs, targets, changed, next, coldTempC);
    }

    /**
     * The same for another day.
     *
     * @param day to set up for
     * @param newColdTempC temperature of the tyres when they will be set, degC
     */
    public Pressures forDay(PressureDay day, double newColdTempC) {
        Check.inRange("temperature when cold (degC)", newColdTempC, -40, 120);
        return new Pressures(car, track, conditions, pairs, targets, tread, day, newColdTempC);
    }

    /**
     * Runs it: one lap at the ideal pressures and some away from them.
     *
     * @throws InvalidValueException if a hot pressure looks like an absolute one
     */
    @Override
    public PressureResult run(StudyRun how) {
        List<PressureResult.Tyre> tyres = new ArrayList<>();
        for (Wheel wheel : Wheel.values()) {
            List<PressurePair> own =
                    pairs.stream().filter(pair -> pair.wheel() == wheel).toList();
            own.forEach(pair -> pair.refuseAbsolute(targets.get(wheel)));
            if (!own.isEmpty()) {
                tyres.add(new PressureResult.Tyre(wheel, own, targets.get(wheel)));
            }
        }
        LapSolver solver = LapSolver.on(track);
        Lap lap = solver.solve(vehicle(0, 0));
        List<PressureResult.Cost> costs = new ArrayList<>();
        double loss = car.value(Quantity.PRESSURE_LOSS);
        for (double away : AWAY_KPA) {
            how.report(costs.size(), AWAY_KPA.length);
            costs.add(new PressureResult.Cost(
                    away,
                    1 - TyreState.gripFactor(away, 0, loss),
                    solver.lapTime(vehicle(away, 0)) - lap.time(),
                    solver.lapTime(vehicle(0, away)) - lap.time(),
                    solver.lapTime(vehicle(away, away)) - lap.time()));
        }
        Car logged = set(away(tyres, true), away(tyres, false));
        double measured = solver.lapTime(Vehicle.of(logged, conditions)) - lap.time();
        return new PressureResult(
                lap,
                TyreEnergy.of(lap),
                tyres,
                next,
                coldTempC,
                List.of(next.warmer(-WEATHER_K), next.warmer(WEATHER_K)),
                costs,
                logged,
                measured,
                tread);
    }

    /** The distance from the ideal that costs an axle as much grip as its two tyres do in the mean: loss goes by squares. */
    private double away(List<PressureResult.Tyre> tyres, boolean front) {
        double[] away = tyres.stream()
                .filter(tyre -> tyre.wheel().isFront() == front)
                .mapToDouble(tyre -> tyre.last().hotKpa() - ideal(car, tyre.wheel()))
                .toArray();
        double squares = Arrays.stream(away).map(kpa -> kpa * kpa).average().orElse(0);
        return Math.copySign(Math.sqrt(squares), Arrays.stream(away).sum());
    }

    /** The car with its hot pressures so far above the ideal; below costs the same. */
    private Vehicle vehicle(double front, double rear) {
        return Vehicle.of(set(front, rear), conditions);
    }

    private Car set(double front, double rear) {
        return car.with(Quantity.HOT_PRESSURE_FRONT, car.value(Quantity.IDEAL_PRESSURE_FRONT) + front)
                .with(Quantity.HOT_PRESSURE_REAR, car.value(Quantity.IDEAL_PRESSURE_REAR) + rear);
    }
}
