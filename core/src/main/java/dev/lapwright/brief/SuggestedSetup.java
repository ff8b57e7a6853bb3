package dev.lapwright.brief;

import dev.lapwright.car.Car;
import dev.lapwright.car.Setup;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.optimise.OptimisationResult;
import java.util.List;

/**
 * Setup suggested beside that in which the car stands. It is the one with the fewest changes that is as good as the best
 * found, to {@link dev.lapwright.lap.LapTimeDifference#COUNTS}.
 *
 * @param study the search; its axes are what was turned, its {@code kept} what was not and why
 * @param chosen whether what was turned was chosen by the sensitivity: at most six adjustments, those that make the lap faster by
 *     themselves and then those worth most over their range; false where it was named
 * @param setup all that is set on the suggested car
 * @param car so set up
 * @param changes against the car as it stands, the one worth most first; empty where it is as good as any found
 * @param effect of all changes together: the lap as the car stands first, that of the suggested setup second
 * @param balance of the suggested car; missing on a track without corners
 */
public record SuggestedSetup(
        OptimisationResult study,
        boolean chosen,
        Setup setup,
        Car car,
        List<Change> changes,
        BriefResult.ChangeEffect effect,
        BriefResult.Part<BalanceResult> balance) {
    public SuggestedSetup {
        changes = List.copyOf(changes);
    }

    /** Difference of the best setup found to this one, s, minus where faster. */
    public double leftToBest() {
        return study.difference(study.best()) - effect.difference();
    }

    /**
     * What the changes do together beyond the sum of what each does to the rest, s: minus where one makes up for another, plus
     * where each is worth more for the others. NaN where one cannot be undone alone.
     */
    public double together() {
        double sum = 0;
        for (Change change : changes) {
            sum += change.undone()
                    .value()
                    .map(BriefResult.ChangeEffect::difference)
                    .orElse(Double.NaN);
        }
        return effect.difference() - sum;
    }

    /**
     * Change of one setting in a suggested setup, and its reason.
     *
     * @param change what is turned
     * @param undone what the change does in the suggested setup: the lap with this one alone put back where it was, against the
     *     lap of the suggested setup; missing where there is no lap with it put back
     * @param alone what the change does to the car as it stands, made by itself; missing where there is no lap with it
     */
    public record Change(
            BriefResult.SettingChange change,
            BriefResult.Part<BriefResult.ChangeEffect> undone,
            BriefResult.Part<BriefResult.ChangeEffect> alone) {}
}
