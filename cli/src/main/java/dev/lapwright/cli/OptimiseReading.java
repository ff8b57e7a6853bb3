package dev.lapwright.cli;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.Subject;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.optimise.OptimisationResult;
import java.util.ArrayList;
import java.util.List;

/** Says in sentences what an optimisation found. */
final class OptimiseReading {
    private static final double NOTHING_S = 0.0005;

    private OptimiseReading() {}

    /** The circuits by name. */
    static String circuits(OptimisationResult result) {
        List<String> names = new ArrayList<>();
        result.task().circuits().forEach(circuit -> names.add(circuit.track().name()));
        return String.join(" and ", names);
    }

    static String of(OptimisationResult result) {
        return best(result) + " " + fewest(result) + " " + flat(result) + ends(result) + unseen(result);
    }

    private static String best(OptimisationResult result) {
        double gain = result.gain(result.best());
        List<String> changes = new ArrayList<>();
        for (OptimisationResult.Range range : result.nearOptimal().ranges()) {
            if (range.isMoved()) {
                changes.add(Subject.said(result.task().car(), range.name(), range.best()));
            }
        }
        if (changes.isEmpty()) {
            return "No other legal setup found is faster than the one you have.";
        }
        String found = "The best legal setup found has " + String.join(", ", changes) + " and is ";
        return Math.abs(gain) < NOTHING_S
                ? found + "as fast as yours."
                : found + Numbers.fixed(Math.abs(gain), 3) + " s a lap " + (gain > 0 ? "faster" : "slower")
                        + " than yours" + (gain < 0 ? ": yours misses a limit, or stands between legal steps." : ".");
    }

    private static String fewest(OptimisationResult result) {
        if (result.nearOptimal().fewest().equals(result.best())) {
            return "Fewer changes would cost more than " + Numbers.plain(Optimisation.FLAT_S) + " s.";
        }
        String changes = changes(result, result.nearOptimal().fewest());
        String loss = Numbers.fixed(
                result.nearOptimal().fewest().cost() - result.best().cost(), 3);
        return changes.isEmpty()
                ? "But all of it is worth " + loss + " s only: the setup you have is as good."
                : "With fewer changes, " + changes + ", it is " + loss + " s slower than that.";
    }

    /** What a setup has elsewhere than it was. */
    static String changes(OptimisationResult result, OptimisationResult.Candidate point) {
        List<String> changes = new ArrayList<>();
        for (int i = 0; i < result.search().axes().size(); i++) {
            double was = result.before().settings().get(i);
            double is = point.settings().get(i);
            if (Math.abs(is - was) > 1e-9 * Math.max(1, Math.abs(was))) {
                changes.add(Subject.said(
                        result.task().car(), result.search().axes().get(i).name(), is));
            }
        }
        return String.join(", ", changes);
    }

    private static String flat(OptimisationResult result) {
        int count = result.nearOptimal().setups().size();
        return (result.nearOptimal().complete() ? "" : "At least ") + count
                + (count == 1 ? " legal setup is" : " legal setups are")
                + " within " + Numbers.plain(Optimisation.FLAT_S) + " s of the best"
                + (count == 1 ? ", itself" : ": choose among them by feel") + ".";
    }

    private static String ends(OptimisationResult result) {
        List<String> ends = new ArrayList<>();
        for (int i = 0; i < result.search().axes().size(); i++) {
            List<Double> settings = result.search().axes().get(i).settings();
            double best = result.best().settings().get(i);
            if (result.nearOptimal().ranges().get(i).matters()
                    && (best == settings.get(0) || best == settings.get(settings.size() - 1))) {
                ends.add(result.search().axes().get(i).name());
            }
        }
        return ends.isEmpty()
                ? ""
                : " At the end of what the car allows: " + String.join(", ", ends)
                        + "; the model would go on, and what stops it in truth may not be in the model.";
    }

    private static String unseen(OptimisationResult result) {
        List<String> unseen = new ArrayList<>();
        for (OptimisationResult.Range range : result.nearOptimal().ranges()) {
            if (!range.matters()) {
                unseen.add(range.name());
            }
        }
        return unseen.isEmpty()
                ? ""
                : " It makes no difference to the lap time where these stand: " + String.join(", ", unseen) + ".";
    }

    /** What is wrong where no setup keeps the limits. */
    static InvalidValueException missed(OptimisationResult result) {
        List<String> said = new ArrayList<>();
        for (OptimisationResult.Miss miss : result.misses()) {
            if (miss.limit() == OptimisationResult.Miss.Limit.LAP) {
                said.add("no lap: " + result.best().failure());
                continue;
            }
            String unit = miss.unit().isEmpty() ? "" : " " + miss.unit();
            boolean count = miss.limit() == OptimisationResult.Miss.Limit.UPSHIFTS;
            int digits = count ? 0 : 1;
            String alone = miss.isKeptAlone()
                    ? "which can be kept, but not with the other limits"
                    : "alone " + Numbers.fixed(miss.bestAlone(), digits) + unit + " was the best found";
            said.add(miss.limit().label() + " " + Numbers.fixed(miss.reached(), digits) + unit + " for "
                    + Numbers.plain(miss.wanted()) + unit + ", off by "
                    + Numbers.fixed(miss.shortfall(), count ? 0 : 2) + unit + " (" + alone + ")");
        }
        String names = settings(result);
        return new InvalidValueException(
                "limits",
                "none of the " + result.search().driven() + " setups driven keeps them all; the nearest, " + names
                        + ", misses " + String.join(", ", said),
                "loosen what is missed, or search more adjustments");
    }

    private static String settings(OptimisationResult result) {
        List<String> said = new ArrayList<>();
        for (int i = 0; i < result.search().axes().size(); i++) {
            said.add(Subject.said(
                    result.task().car(),
                    result.search().axes().get(i).name(),
                    result.best().settings().get(i)));
        }
        return String.join(", ", said);
    }
}
