package dev.lapwright.study.robust;

import dev.lapwright.car.Car;
import dev.lapwright.study.optimise.OptimisationLimits;
import dev.lapwright.study.optimise.OptimisationResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Changes of the best setup found that may be recommended: those that are a gain on most of the cars that this one may be ({@link
 * RobustnessResult#isFirmGain}), each held against what is kept without it. The others are left out one at a time, the weakest first, and those
 * that are left judged again: what is no gain beside another may be one in its place. A change that a limit asks for is kept.
 *
 * <pre>{@code
 * FirmChanges firm = FirmChanges.all(found);
 * for (Optional<FirmChanges> fewer = Optional.of(firm); fewer.isPresent(); fewer = firm.without(firm.asked(study).run())) {
 *     firm = fewer.get();
 * }
 * }</pre>
 *
 * @param found the best setup
 * @param kept those that stand so far, in the search's order
 * @param leftOut those that do not, in the order in which they were left out
 */
public record FirmChanges(OptimisationResult found, List<OptimisationResult.Range> kept, List<LeftOut> leftOut) {
    public FirmChanges {
        kept = List.copyOf(kept);
        leftOut = List.copyOf(leftOut);
    }

    /**
     * Change that is left out.
     *
     * @param range from where to where
     * @param standing of what was kept then beside itself without it
     */
    public record LeftOut(OptimisationResult.Range range, RobustnessResult.Standing standing) {}

    /** All changes of the best setup, none of which has been judged. */
    public static FirmChanges all(OptimisationResult found) {
        return new FirmChanges(
                found,
                found.nearOptimal().ranges().stream()
                        .filter(OptimisationResult.Range::isMoved)
                        .toList(),
                List.of());
    }

    /** The study with all that {@link #without} asks of: the car with what is kept first, then that without each of its changes that may go. */
    public Robustness asked(Robustness study) {
        Car car = car();
        Robustness asked = study.against(car).asking(0);
        for (OptimisationResult.Range range : judged()) {
            asked = asked.without(0, car.with(range.name(), range.before()));
        }
        return asked;
    }

    /**
     * The same with the weakest change left out.
     *
     * @param drawn a study that was {@link #asked}
     * @return empty where each that is kept is a gain on most cars, or is asked for by a limit
     */
    public Optional<FirmChanges> without(RobustnessResult drawn) {
        List<OptimisationResult.Range> judged = judged();
        LeftOut weakest = null;
        for (int i = 0; i < judged.size(); i++) {
            RobustnessResult.Standing standing = drawn.standings().get(1 + i);
            boolean firm = drawn.isFirmGain(standing);
            // A setup without a lap on any drawn car has no median: nothing is weaker.
            if (!firm
                    && (weakest == null
                            || standing.laps() == 0
                            || standing.middle() > weakest.standing().middle())) {
                weakest = new LeftOut(judged.get(i), standing);
            }
        }
        if (weakest == null) {
            return Optional.empty();
        }
        List<OptimisationResult.Range> fewer = new ArrayList<>(kept);
        fewer.remove(weakest.range());
        List<LeftOut> more = new ArrayList<>(leftOut);
        more.add(weakest);
        return Optional.of(new FirmChanges(found, fewer, more));
    }

    /** Those that may go: where one put back misses a limit, as far as that has been driven, that limit asks for it. */
    private List<OptimisationResult.Range> judged() {
        return kept.stream()
                .filter(range -> !Double.isNaN(range.putBack()) && keepsLimits(range))
                .toList();
    }

    private boolean keepsLimits(OptimisationResult.Range more) {
        if (found.task().limits().equals(OptimisationLimits.NONE)) {
            return true;
        }
        List<Double> settings = new ArrayList<>(found.best().settings());
        List<OptimisationResult.Range> ranges = found.nearOptimal().ranges();
        leftOut.forEach(
                left -> settings.set(ranges.indexOf(left.range()), left.range().before()));
        settings.set(ranges.indexOf(more), more.before());
        return found.search().met().stream().anyMatch(point -> point.settings().equals(settings));
    }

    /** The car as it stood with what is kept alone. */
    public Car car() {
        Car car = found.task().car();
        for (OptimisationResult.Range range : kept) {
            car = car.with(range.name(), range.best());
        }
        return car;
    }
}
