package dev.lapwright.brief;

import dev.lapwright.car.Car;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.study.robust.AdjustmentVerdict;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Adjustments by what can be said of each: each that can be turned is in one list. Those that the plan turns have their gain, interval and
 * chance there. All others are judged turned by themselves, by the one rule of {@link AdjustmentVerdict}.
 *
 * @param planned the plan turns it, as most drawn cars gain from that
 * @param gains its fastest setting is faster
 * @param right none of those settings is faster, and at least one slower: a miss would cost
 * @param alike none of those settings makes a difference that counts
 * @param unseen the model knows too little of it, or nothing
 * @param untold one of those settings is faster on some cars and slower on others
 * @param doubt the drawn cars; missing where none were drawn: then what the car as it is described does is said, and nothing is untold
 */
public record AdjustmentVerdicts(
        List<SensitivityResult.Worth> planned,
        List<SensitivityResult.Worth> gains,
        List<SensitivityResult.Worth> right,
        List<SensitivityResult.Worth> alike,
        List<SensitivityResult.Worth> unseen,
        List<SensitivityResult.Worth> untold,
        BriefResult.Part<RobustnessResult> doubt) {
    public AdjustmentVerdicts {
        planned = List.copyOf(planned);
        gains = List.copyOf(gains);
        right = List.copyOf(right);
        alike = List.copyOf(alike);
        unseen = List.copyOf(unseen);
        untold = List.copyOf(untold);
    }

    /** @param planned names of what the plan turns */
    static AdjustmentVerdicts of(BriefResult.Priorities found, Set<String> planned, BriefDoubt doubt) {
        Sorting sorting = new Sorting(found);
        List<SensitivityResult.Worth> asked = new ArrayList<>();
        List<Car> cars = new ArrayList<>();
        List<List<Integer>> places = new ArrayList<>();
        for (SensitivityResult.Worth worth : found.study().worths()) {
            if (planned.contains(worth.adjustment().name())) {
                sorting.planned.add(worth);
            } else if (LapTimeDifference.isNone(worth.range()) || found.isDelicate(worth.adjustment())) {
                sorting.unseen.add(worth);
            } else if (!LapTimeDifference.counts(worth.range())) {
                sorting.alike.add(worth);
            } else {
                asked.add(worth);
                places.add(sorting.settings(worth, cars));
            }
        }
        BriefResult.Part<RobustnessResult> drawn = cars.isEmpty()
                ? BriefResult.Part.missing("no adjustment beside those of the plan makes a difference that counts", "")
                : doubt.beside(found.study().car(), cars);
        for (int i = 0; i < asked.size(); i++) {
            sorting.sort(asked.get(i), places.get(i), drawn);
        }
        return new AdjustmentVerdicts(
                sorting.planned, sorting.gains, sorting.right, sorting.alike, sorting.unseen, sorting.untold, drawn);
    }

    private static final class Sorting {
        private final BriefResult.Priorities found;
        private final List<SensitivityResult.Worth> planned = new ArrayList<>();
        private final List<SensitivityResult.Worth> gains = new ArrayList<>();
        private final List<SensitivityResult.Worth> right = new ArrayList<>();
        private final List<SensitivityResult.Worth> alike = new ArrayList<>();
        private final List<SensitivityResult.Worth> unseen = new ArrayList<>();
        private final List<SensitivityResult.Worth> untold = new ArrayList<>();

        Sorting(BriefResult.Priorities found) {
            this.found = found;
        }

        /** Adds the cars that stand for an adjustment, and gives their places. */
        private List<Integer> settings(SensitivityResult.Worth worth, List<Car> cars) {
            List<Double> legal = worth.adjustment().legalSettings();
            List<Double> settings = AdjustmentVerdict.settings(
                    worth.setting(),
                    worth.best().setting(),
                    worth.best().difference(),
                    legal.get(0),
                    legal.get(legal.size() - 1));
            List<Integer> places = new ArrayList<>();
            for (double setting : settings) {
                try {
                    cars.add(found.study().car().with(worth.adjustment().name(), setting));
                    places.add(cars.size() - 1);
                } catch (LapwrightException noCar) {
                    // An end that cannot be is no setting to be told of.
                    continue;
                }
            }
            return places;
        }

        private void sort(
                SensitivityResult.Worth worth, List<Integer> places, BriefResult.Part<RobustnessResult> drawn) {
            double difference = worth.best().difference();
            if (drawn.value().isEmpty() || places.isEmpty()) {
                (LapTimeDifference.counts(difference) ? gains : right).add(worth);
                return;
            }
            RobustnessResult found = drawn.value().get();
            AdjustmentVerdict verdict = AdjustmentVerdict.of(
                    difference,
                    places.stream().map(place -> found.standings().get(place)).toList());
            (switch (verdict) {
                        case GAIN -> gains;
                        case RIGHT -> right;
                        case ALIKE -> alike;
                        case UNTOLD -> untold;
                        case UNSEEN -> unseen;
                    })
                    .add(worth);
        }
    }
}
