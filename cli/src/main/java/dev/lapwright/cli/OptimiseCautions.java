package dev.lapwright.cli;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Setup;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.results.Cautions;
import dev.lapwright.study.optimise.OptimisationResult;
import java.util.ArrayList;
import java.util.List;

/** What nobody should take over from an optimisation without thinking of it. */
final class OptimiseCautions {
    private static final String DEFER = " Keep to the maker's limits and the rules of the event, change one thing at a"
            + " time, and try it with a margin where there is room.";

    private OptimiseCautions() {}

    static List<String> of(OptimiseOutcome outcome) {
        OptimisationResult result = outcome.result();
        List<String> cautions = new ArrayList<>();
        moved(cautions, result, "rideHeightMm", " ride heights: bumps, kerbs and pitching are not in the model.");
        moved(
                cautions,
                result,
                "brakes.frontSharePercent",
                " brake balance: the model never locks a wheel, a"
                        + " driver does; rear wheels that lock first spin the car.");
        moved(
                cautions,
                result,
                "hotPressureKpa",
                " tyre pressures: the model knows no heat build-up and no wear;"
                        + " never go below the tyre maker's least pressure.");
        Setup best = result.setup("best", result.best());
        Car car = outcome.subject().bare().with(best);
        cautions.addAll(Cautions.of(LapSolver.lap(
                car, outcome.subject().track(), result.task().days().get(0))));
        return cautions;
    }

    private static void moved(List<String> cautions, OptimisationResult result, String quantity, String danger) {
        List<String> names = new ArrayList<>();
        for (OptimisationResult.Range range : result.nearOptimal().ranges()) {
            if (range.isMoved() && moves(result.task().car().adjustment(range.name()), quantity)) {
                names.add(range.name());
            }
        }
        if (!names.isEmpty()) {
            cautions.add(String.join(" and ", names) + (names.size() > 1 ? " move" : " moves") + danger + DEFER);
        }
    }

    private static boolean moves(Adjustment adjustment, String quantity) {
        return adjustment.effects().stream().map(Effect::quantity).anyMatch(name -> name.endsWith(quantity));
    }
}
