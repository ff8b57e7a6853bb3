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
 * Adjustments of a sensitivity with the settings by which drawn cars judge each: see {@link AdjustmentVerdict}, the one rule. Whoever asks draws
 * the cars, all at once.
 *
 * @param sensitivity what each is worth on the car as it is described
 * @param cars the car in each of the settings asked of, of all adjustments in turn
 * @param asked for each adjustment, in the sensitivity's order, what is asked of it
 */
public record JudgedAdjustments(SensitivityResult sensitivity, List<Car> cars, List<Asked> asked) {
    public JudgedAdjustments {
        cars = List.copyOf(cars);
        asked = List.copyOf(asked);
    }

    /**
     * What is asked of one adjustment.
     *
     * @param undrawn what is said of it without drawn cars; empty where they decide
     * @param first place of its first setting among the cars
     * @param count of its settings; an end that cannot be is none
     */
    public record Asked(Optional<AdjustmentVerdict> undrawn, int first, int count) {}

    /** All adjustments of a sensitivity. */
    public static JudgedAdjustments of(SensitivityResult sensitivity) {
        return of(sensitivity, Set.of());
    }

    /** All but those named, of which nothing is asked: their verdict is that they cannot be told. */
    public static JudgedAdjustments of(SensitivityResult sensitivity, Set<String> apart) {
        Set<String> delicate = Optimisation.leftAlone(sensitivity.car()).stream()
                .map(OptimisationResult.LeftAlone::name)
                .collect(Collectors.toSet());
        List<Car> cars = new ArrayList<>();
        List<Asked> asked = new ArrayList<>();
        for (SensitivityResult.Worth worth : sensitivity.worths()) {
            String name = worth.adjustment().name();
            Optional<AdjustmentVerdict> undrawn = apart.contains(name)
                    ? Optional.of(AdjustmentVerdict.UNTOLD)
                    : AdjustmentVerdict.undrawn(worth.range(), delicate.contains(name));
            int first = cars.size();
            if (undrawn.isEmpty()) {
                AdjustmentVerdict.settings(worth)
                        .forEach(setting -> in(sensitivity.car(), name, setting).ifPresent(cars::add));
            }
            asked.add(new Asked(undrawn, first, cars.size() - first));
        }
        return new JudgedAdjustments(sensitivity, cars, asked);
    }

    private static Optional<Car> in(Car car, String name, double setting) {
        try {
            return Optional.of(car.with(name, setting));
        } catch (LapwrightException noCar) {
            return Optional.empty();
        }
    }

    /**
     * The verdicts, in the sensitivity's order.
     *
     * @param standings of the {@link #cars}, in their order; none where no cars were drawn: then the car as it is described decides, and
     *     nothing is untold
     */
    public List<AdjustmentVerdict> verdicts(List<RobustnessResult.Standing> standings) {
        List<AdjustmentVerdict> verdicts = new ArrayList<>();
        for (int i = 0; i < asked.size(); i++) {
            Asked one = asked.get(i);
            double difference = sensitivity.worths().get(i).best().difference();
            verdicts.add(one.undrawn()
                    .orElseGet(() -> standings.isEmpty()
                            ? LapTimeDifference.counts(difference) ? AdjustmentVerdict.GAIN : AdjustmentVerdict.RIGHT
                            : AdjustmentVerdict.of(
                                    difference, standings.subList(one.first(), one.first() + one.count()))));
        }
        return verdicts;
    }
}
