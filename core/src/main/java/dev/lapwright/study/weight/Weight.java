package dev.lapwright.study.weight;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Limit;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.compare.Comparison;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Study of weight: what a kilogram is worth at a circuit, in each corner and on each straight, and what its place is worth. By
 * central differences of laps solved anew with a step of mass more and less: at the centre of gravity, over the front axle and
 * over the rear axle.
 *
 * <p>A step d at a place that bears a share f of it on the front axle takes a car of mass m and front share s to m + d and
 *
 * <pre>s' = (m s + f d)/(m + d),  f = s at the centre of gravity, 1 over the front axle, 0 over the rear axle</pre>
 *
 * <p>The height of the centre of gravity, moments of inertia and ride heights stay as they are.
 *
 * <pre>{@code
 * WeightResult weight = Weight.of(car, track, Conditions.STANDARD).run();
 * double secondsPerKg = weight.atCentre().perKg();
 * }</pre>
 */
public final class Weight implements Study<WeightResult> {
    /** Step of mass that is taken if none is given, as a share of the car's. */
    private static final double STEP = 0.01;

    private static final double LEAST_STEP_KG = 1e-3;

    private final Car car;
    private final Stations stations;
    private final Conditions conditions;
    private final double stepKg;

    private Weight(Car car, Stations stations, Conditions conditions, double stepKg) {
        this.car = car;
        this.stations = stations;
        this.conditions = conditions;
        this.stepKg = stepKg;
    }

    /** A study about a car as it stands, fuel on board included, with a step of one percent of its mass. */
    public static Weight of(Car car, Track track, Conditions conditions) {
        return new Weight(car, track.stations(StationSpacing.DEFAULT), conditions, STEP * mass(car));
    }

    /** The same with another step of mass, kg: up to a tenth of the car's. */
    public Weight withStep(double kilograms) {
        Check.inRange("step of mass (kg)", kilograms, LEAST_STEP_KG, 0.1 * mass(car));
        return new Weight(car, stations, conditions, kilograms);
    }

    private static double mass(Car car) {
        return car.value(Quantity.MASS) + car.value(Quantity.FUEL_MASS);
    }

    /** @throws dev.lapwright.fault.LapwrightException if a car of these has no lap, or its setup sets mass or weight share */
    @Override
    public WeightResult run(StudyRun how) {
        double share = car.value(Quantity.FRONT_WEIGHT) / 100;
        List<Car> cars = new ArrayList<>(List.of(car));
        for (double place : new double[] {share, 1, 0}) {
            cars.add(loaded(-stepKg, place));
            cars.add(loaded(stepKg, place));
        }
        List<Lap> laps = how.inParallel(
                cars.size(),
                () -> new LapSolver(stations),
                (solver, i) -> solver.solve(Vehicle.of(cars.get(i), conditions)),
                done -> how.report(done, cars.size()));
        Lap lap = laps.get(0);
        return new WeightResult(
                lap,
                mass(car),
                worth(lap, laps.get(1), laps.get(2)),
                worth(lap, laps.get(3), laps.get(4)),
                worth(lap, laps.get(5), laps.get(6)),
                places(lap, laps.get(1), laps.get(2)),
                causes(laps.get(1), laps.get(2)));
    }

    private Map<Limit, Double> causes(Lap lighter, Lap heavier) {
        Map<Limit, Double> causes = Comparison.of(lighter, heavier).byCause();
        causes.replaceAll((limit, seconds) -> seconds / (2 * stepKg));
        return causes;
    }

    /** The car with more or less mass at a place that bears a share of it on the front axle. */
    private Car loaded(double kilograms, double place) {
        double mass = mass(car);
        double share = car.value(Quantity.FRONT_WEIGHT) / 100;
        double moved = (mass * share + kilograms * place) / (mass + kilograms);
        Car heavier = set(car, Quantity.MASS, car.value(Quantity.MASS) + kilograms);
        // At the centre of gravity the share stays, to the last bit.
        return place == share ? heavier : set(heavier, Quantity.FRONT_WEIGHT, 100 * moved);
    }

    private static Car set(Car car, Quantity quantity, double value) {
        Car changed = car.with(quantity, value);
        if (changed.value(quantity) != value) {
            throw new InvalidValueException(
                    quantity.path(),
                    "the setup sets it by an adjustment as well",
                    "leave one of the two out of the setup");
        }
        return changed;
    }

    private WeightResult.Worth worth(Lap lap, Lap lighter, Lap heavier) {
        return new WeightResult.Worth(stepKg, lighter.time() - lap.time(), heavier.time() - lap.time());
    }

    private List<WeightResult.Place> places(Lap lap, Lap lighter, Lap heavier) {
        List<Comparison.Part> times = Comparison.of(lap, lap).parts();
        List<Comparison.Part> differences = Comparison.of(lighter, heavier).parts();
        List<WeightResult.Place> places = new ArrayList<>();
        for (int i = 0; i < times.size(); i++) {
            Comparison.Part part = times.get(i);
            places.add(new WeightResult.Place(
                    part.label(),
                    part.corner(),
                    part.from(),
                    part.to(),
                    part.first().time(),
                    differences.get(i).difference() / (2 * stepKg)));
        }
        return places;
    }
}
