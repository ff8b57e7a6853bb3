package dev.lapwright.study.gearing;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Search among all combinations of the ratios that there are in the box, on one circuit or several: the best for each number of things changed,
 * with the time that the work takes. Every combination is driven; none is inferred from single changes.
 */
public final class RatioBox implements Study<RatioBoxResult> {
    private static final int MOST = 2000;
    private static final double LONGEST_WORK = 1440;

    private final Car car;
    private final Conditions conditions;
    private final List<Place> places;
    private final List<SweepAxis> axes;
    private final Map<String, Double> minutes;

    private record Place(Stations stations, double weight) {}

    private RatioBox(
            Car car, Conditions conditions, List<Place> places, List<SweepAxis> axes, Map<String, Double> minutes) {
        this.car = car;
        this.conditions = conditions;
        this.places = places;
        this.axes = axes;
        this.minutes = minutes;
    }

    /**
     * About a car as it stands, on one circuit.
     *
     * @param axes what there is for each thing that can be changed: see {@link GearingAxes}
     * @throws InvalidValueException if an axis moves no gear, or there are too many combinations
     */
    public static RatioBox of(Car car, Track track, Conditions conditions, List<SweepAxis> axes) {
        long count = 1;
        for (SweepAxis axis : axes) {
            if (!GearingAxes.isGearing(car, axis.name())) {
                throw new InvalidValueException(
                        axis.name(),
                        "it moves no gear of this car",
                        "name one of " + String.join(", ", GearingAxes.names(car)));
            }
            count *= axis.count() + 1;
        }
        if (count > MOST) {
            throw new InvalidValueException(
                    "ratios", count + " combinations are too many", "leave some out: at most " + MOST);
        }
        return new RatioBox(car, conditions, List.of(place(track, 1)), List.copyOf(axes), Map.of());
    }

    private static Place place(Track track, double weight) {
        return new Place(track.stations(StationSpacing.DEFAULT), weight);
    }

    /** The same for one more circuit, with how much a lap of it counts beside one of the first, above 0. */
    public RatioBox alsoAt(Track track, double weight) {
        Check.positive("weight of " + track.name(), weight);
        List<Place> more = new ArrayList<>(places);
        more.add(place(track, weight));
        return new RatioBox(car, conditions, List.copyOf(more), axes, minutes);
    }

    /** The same with the time that changing each thing takes, minutes, by the names of the axes. */
    public RatioBox withMinutes(Map<String, Double> work) {
        work.forEach((name, time) -> Check.inRange("work on " + name + " (minutes)", time, 0, LONGEST_WORK));
        return new RatioBox(car, conditions, places, axes, Map.copyOf(work));
    }

    @Override
    public RatioBoxResult run(StudyRun how) {
        List<Map<String, Double>> combinations = combinations();
        List<RatioBoxResult.Choice> driven = how.allInParallel(
                combinations.size(),
                () -> places.stream()
                        .map(place -> new LapSolver(place.stations()))
                        .toList(),
                (solvers, i) -> choice(solvers, combinations.get(i)),
                done -> how.report(done, combinations.size()));
        List<RatioBoxResult.Choice> best = new ArrayList<>();
        RatioBoxResult.Choice asItStands = driven.get(0);
        for (int changes = 0; changes <= axes.size(); changes++) {
            int wanted = changes;
            driven.stream()
                    .filter(choice -> choice.changed().size() == wanted && Double.isFinite(choice.mean()))
                    .min(Comparator.comparingDouble(RatioBoxResult.Choice::mean))
                    .ifPresent(choice -> best.add(choice.beside(asItStands)));
        }
        if (!Double.isFinite(asItStands.mean())) {
            throw new InvalidValueException("car", "it has no lap as it stands", "see 'lapwright lap'");
        }
        return new RatioBoxResult(
                places.stream().map(place -> place.stations().track().name()).toList(),
                asItStands.lapTimes(),
                best,
                combinations.size());
    }

    /** What is changed in each combination, nothing first; what is fitted is no change. */
    private List<Map<String, Double>> combinations() {
        List<Map<String, Double>> all = new ArrayList<>();
        all.add(Map.of());
        for (SweepAxis axis : axes) {
            double fitted = fitted(axis.name());
            List<Map<String, Double>> more = new ArrayList<>(all);
            for (double value : axis.values()) {
                if (value != fitted) {
                    for (Map<String, Double> before : all) {
                        Map<String, Double> changed = new LinkedHashMap<>(before);
                        changed.put(axis.name(), value);
                        more.add(changed);
                    }
                }
            }
            all = more;
        }
        return all;
    }

    private double fitted(String name) {
        boolean adjustment = car.adjustments().stream().anyMatch(a -> a.name().equals(name));
        return adjustment ? car.setting(name) : car.value(name);
    }

    /** A combination's laps; NaN where it cannot be fitted, as a gear longer than the next, or has no lap. */
    private RatioBoxResult.Choice choice(List<LapSolver> solvers, Map<String, Double> changed) {
        List<Double> times = new ArrayList<>();
        double sum = 0;
        double weights = 0;
        for (int i = 0; i < solvers.size(); i++) {
            double time = Double.NaN;
            try {
                Car fitted = car;
                for (Map.Entry<String, Double> one : changed.entrySet()) {
                    fitted = fitted.with(one.getKey(), one.getValue());
                }
                time = solvers.get(i).lapTime(Vehicle.of(fitted, conditions));
            } catch (NoLapException | InvalidValueException cannot) {
                // It is no choice.
            }
            times.add(time);
            sum += places.get(i).weight() * time;
            weights += places.get(i).weight();
        }
        double work = changed.keySet().stream()
                .mapToDouble(name -> minutes.getOrDefault(name, 0.0))
                .sum();
        return new RatioBoxResult.Choice(changed, work, times, sum / weights);
    }
}
