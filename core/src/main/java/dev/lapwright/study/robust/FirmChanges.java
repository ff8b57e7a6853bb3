package dev.lapwright.study.robust;

import dev.lapwright.car.Car;
import dev.lapwright.study.optimise.OptimisationLimits;
import dev.lapwright.study.optimise.OptimisationResult;
import java.util.ArrayList;
import java.util.List;

/**
 * Changes of the best setup found that may be recommended: those that are a gain on most of the cars that this one may be ({@link
 * RobustnessResult#isFirmGain}), each held against that setup without it. All others are left out, unless a limit asks for them.
 *
 * @param kept those that stand, in the search's order
 * @param leftOut those that do not
 */
public record FirmChanges(List<OptimisationResult.Range> kept, List<LeftOut> leftOut) {
    public FirmChanges {
        kept = List.copyOf(kept);
        leftOut = List.copyOf(leftOut);
    }

    /**
     * Change that is left out.
     *
     * @param range from where to where
     * @param standing of the best setup beside itself without it
     */
    public record LeftOut(OptimisationResult.Range range, RobustnessResult.Standing standing) {}

    /** The study with all that {@link #of} asks of: the best setup first, then itself without each of its changes that no limit needs. */
    public static Robustness asked(Robustness study, OptimisationResult found) {
        Car car = found.task().car();
        Car best = car.with(found.setup("best", found.best()));
        Robustness asked = study.against(best).asking(0);
        for (OptimisationResult.Range range : judged(found)) {
            asked = asked.without(0, best.with(range.name(), range.before()));
        }
        return asked;
    }

    /** What stands of a study that was {@link #asked}. */
    public static FirmChanges of(OptimisationResult found, RobustnessResult drawn) {
        List<OptimisationResult.Range> judged = judged(found);
        List<OptimisationResult.Range> kept = new ArrayList<>();
        List<LeftOut> leftOut = new ArrayList<>();
        for (OptimisationResult.Range range : found.nearOptimal().ranges()) {
            int place = judged.indexOf(range);
            if (place < 0) {
                if (range.isMoved()) {
                    kept.add(range);
                }
                continue;
            }
            RobustnessResult.Standing standing = drawn.standings().get(1 + place);
            if (drawn.isFirmGain(standing) || !keepsLimits(found, leftOut, range)) {
                kept.add(range);
            } else {
                leftOut.add(new LeftOut(range, standing));
            }
        }
        return new FirmChanges(kept, leftOut);
    }

    /** Those that move; where one put back misses a limit, that limit asks for it. */
    private static List<OptimisationResult.Range> judged(OptimisationResult found) {
        return found.nearOptimal().ranges().stream()
                .filter(range -> range.isMoved() && !Double.isNaN(range.putBack()))
                .toList();
    }

    /** Whether what is left keeps the limits, as far as it has been driven; without limits it does. */
    private static boolean keepsLimits(OptimisationResult found, List<LeftOut> leftOut, OptimisationResult.Range more) {
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
    public Car car(OptimisationResult found) {
        Car car = found.task().car();
        for (OptimisationResult.Range range : kept) {
            car = car.with(range.name(), range.best());
        }
        return car;
    }
}
