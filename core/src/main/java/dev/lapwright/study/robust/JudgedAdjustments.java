package dev.lapwright.study.robust;

import dev.lapwright.car.Car;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.optimise.OptimisationResult;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Adjustments with the settings by which drawn cars judge each: see {@link AdjustmentVerdict}, the one rule. Whoever asks draws the cars, all
 * at once or in turn ({@link SettledVerdicts}).
 *
 * @param cars the car in each of the settings asked of, of all adjustments in turn
 * @param asked for each adjustment, in the order given, what is asked of it
 */
public record JudgedAdjustments(List<Car> cars, List<Asked> asked) {
    public JudgedAdjustments {
        cars = List.copyOf(cars);
        asked = List.copyOf(asked);
    }

    /**
     * What is known of one adjustment on the car as it is described.
     *
     * @param name of the adjustment
     * @param undrawn what is said of it without drawn cars; empty where they decide
     * @param range lap time at its slowest setting over that at its fastest, s
     * @param difference lap time at its fastest setting over that of the car as it stands, s
     * @param settings that are held against it: {@link AdjustmentVerdict#settings}
     */
    public record Known(
            String name, Optional<AdjustmentVerdict> undrawn, double range, double difference, List<Double> settings) {
        public Known {
            settings = List.copyOf(settings);
        }
    }

    /**
     * What is asked of one adjustment.
     *
     * @param undrawn what is said of it without drawn cars; empty where they decide
     * @param range lap time at its slowest setting over that at its fastest, s
     * @param difference lap time at its fastest setting over that of the car as it stands, s
     * @param first place of its first setting among the cars
     * @param count of its settings; an end that cannot be is none
     */
    public record Asked(Optional<AdjustmentVerdict> undrawn, double range, double difference, int first, int count) {
        /** What the car as it is described decides. */
        private AdjustmentVerdict asDescribed() {
            if (!LapTimeDifference.counts(range)) {
                return AdjustmentVerdict.ALIKE;
            }
            return LapTimeDifference.counts(difference) ? AdjustmentVerdict.GAIN : AdjustmentVerdict.RIGHT;
        }
    }

    /** Adjustments of a car by what is known of each. */
    public static JudgedAdjustments of(Car car, List<Known> all) {
        List<Car> cars = new ArrayList<>();
        List<Asked> asked = new ArrayList<>();
        for (Known one : all) {
            int first = cars.size();
            if (one.undrawn().isEmpty()) {
                one.settings().forEach(setting -> in(car, one.name(), setting).ifPresent(cars::add));
            }
            asked.add(new Asked(one.undrawn(), one.range(), one.difference(), first, cars.size() - first));
        }
        return new JudgedAdjustments(cars, asked);
    }

    /** All adjustments of a sensitivity, in its order. */
    public static JudgedAdjustments of(SensitivityResult sensitivity) {
        return of(sensitivity, Set.of());
    }

    /** The same, but nothing is asked of those named: their verdict is that they cannot be told. */
    public static JudgedAdjustments of(SensitivityResult sensitivity, Set<String> apart) {
        Set<String> delicate = Optimisation.leftAlone(sensitivity.car()).stream()
                .map(OptimisationResult.LeftAlone::name)
                .collect(Collectors.toSet());
        return of(
                sensitivity.car(),
                sensitivity.worths().stream()
                        .map(worth -> {
                            String name = worth.adjustment().name();
                            return new Known(
                                    name,
                                    apart.contains(name)
                                            ? Optional.of(AdjustmentVerdict.UNTOLD)
                                            : AdjustmentVerdict.undrawn(worth.range(), delicate.contains(name)),
                                    worth.range(),
                                    worth.best().difference(),
                                    AdjustmentVerdict.settings(worth));
                        })
                        .toList());
    }

    private static Optional<Car> in(Car car, String name, double setting) {
        try {
            return Optional.of(car.with(name, setting));
        } catch (LapwrightException noCar) {
            return Optional.empty();
        }
    }

    /**
     * The verdicts, in the order given.
     *
     * @param standings of the {@link #cars}, in their order; none where no cars were drawn: then the car as it is described decides, and
     *     nothing is untold
     */
    public List<AdjustmentVerdict> verdicts(List<RobustnessResult.Standing> standings) {
        return asked.stream()
                .map(one -> one.undrawn()
                        .orElseGet(() -> standings.isEmpty()
                                ? one.asDescribed()
                                : AdjustmentVerdict.of(
                                        one.difference(), standings.subList(one.first(), one.first() + one.count()))))
                .toList();
    }
}
