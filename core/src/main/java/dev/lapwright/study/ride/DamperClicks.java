package dev.lapwright.study.ride;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.ride.AxleEnd;
import dev.lapwright.ride.PassSolver;
import dev.lapwright.ride.QuarterCar;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.ride.RidePass;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Passes of one axle at every setting that the car's own adjustments of its dampers allow: what can be turned, inside the range
 * of the adjuster. All adjustments together while that is few passes, else one at a time.
 *
 * @param options in the order they were driven; empty where the car has no adjustment of these dampers
 */
public record DamperClicks(List<Option> options) {
    /** Passes of a millisecond each: more would keep a person waiting. */
    private static final int MOST = 600;
    /** Less than this, in the measure's unit, is nothing. */
    public static final double SAME = 0.05;

    public DamperClicks {
        options = List.copyOf(options);
    }

    /**
     * Settings of the dampers, and the pass with them.
     *
     * @param settings by adjustment, in its unit
     * @param turned adjustments that differ from the car's present settings
     * @param distance sum over them of steps turned
     * @param pass with them
     */
    public record Option(Map<String, Double> settings, Set<String> turned, int distance, RidePass pass) {
        public Option {
            settings = new LinkedHashMap<>(settings);
            turned = Set.copyOf(turned);
        }
    }

    /** Passes of an axle over a road, with its wheel's share of the downforce (N). */
    static DamperClicks of(Car car, AxleEnd end, double downforce, PassSolver road) {
        Set<String> dampers = end.dampers().stream().map(Quantity::path).collect(Collectors.toSet());
        List<Adjustment> turnable = car.adjustments().stream()
                .filter(adjustment ->
                        adjustment.effects().stream().allMatch(effect -> dampers.contains(effect.quantity())))
                .toList();
        long together = turnable.stream()
                .mapToLong(adjustment -> adjustment.legalSettings().size())
                .reduce(1, Math::multiplyExact);
        List<Map<String, Double>> all = new ArrayList<>();
        if (!turnable.isEmpty() && together <= MOST) {
            all.add(Map.of());
            for (Adjustment adjustment : turnable) {
                List<Map<String, Double>> more = new ArrayList<>();
                for (Map<String, Double> chosen : all) {
                    for (double setting : adjustment.legalSettings()) {
                        Map<String, Double> with = new LinkedHashMap<>(chosen);
                        with.put(adjustment.name(), setting);
                        more.add(with);
                    }
                }
                all = more;
            }
        } else {
            for (Adjustment adjustment : turnable) {
                for (double setting : adjustment.legalSettings()) {
                    all.add(Map.of(adjustment.name(), setting));
                }
            }
        }
        List<Option> options = new ArrayList<>();
        for (Map<String, Double> settings : all) {
            Car set = car;
            Set<String> turned = new LinkedHashSet<>();
            int distance = 0;
            for (Adjustment adjustment : turnable) {
                Double setting = settings.get(adjustment.name());
                if (setting != null) {
                    int steps = steps(adjustment, now(car, adjustment), setting);
                    distance += steps;
                    if (steps > 0) {
                        turned.add(adjustment.name());
                        set = set.with(adjustment.name(), setting);
                    }
                }
            }
            QuarterCar wheel = end.of(set, downforce);
            options.add(new Option(settings, turned, distance, road.drive(wheel)));
        }
        return new DamperClicks(options);
    }

    /** Where an adjustment of a car stands, in its unit. */
    public static double now(Car car, Adjustment adjustment) {
        return car.settings().getOrDefault(adjustment.name(), adjustment.standard());
    }

    private static int steps(Adjustment adjustment, double from, double to) {
        List<Double> legal = adjustment.legalSettings();
        return Math.abs(nearest(legal, from) - nearest(legal, to));
    }

    private static int nearest(List<Double> settings, double wanted) {
        int best = 0;
        for (int i = 1; i < settings.size(); i++) {
            if (Math.abs(settings.get(i) - wanted) < Math.abs(settings.get(best) - wanted)) {
                best = i;
            }
        }
        return best;
    }

    /** The settings with the least of a measure; of those that are as good the ones with the fewest steps turned. */
    public Optional<Option> best(RideMeasure measure) {
        Option best = null;
        for (Option option : options) {
            double gain = best == null ? 0 : measure.of(best.pass()) - measure.of(option.pass());
            if (best == null || gain > SAME || (Math.abs(gain) <= SAME && option.distance() < best.distance())) {
                best = option;
            }
        }
        return Optional.ofNullable(best);
    }
}
