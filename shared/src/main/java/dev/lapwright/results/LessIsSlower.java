package dev.lapwright.results;

import dev.lapwright.car.Quantity;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.lap.Limit;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.report.Numbers;
import dev.lapwright.study.compare.Comparison;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Why a car with less mass or drag is slower, which few expect: by what limits it where it loses. */
final class LessIsSlower {
    private static final String DRAG =
            "Drag also slows a car into corners; and the drive that holds its speed against drag turns it in where a locking"
                    + " differential sends more of it to the outer wheel, so that with less drag the front gives up sooner.";
    private static final String MASS =
            "Weight presses the tyres to the road: a car that the air holds back more than it presses it down grips by its weight, and"
                    + " downhill it is pulled by it.";

    private LessIsSlower() {}

    /** Of a second car beside a first; empty where it is not slower, or has no less of either. */
    static Optional<String> told(Comparison comparison, int digits) {
        boolean mass =
                hasLessMass(comparison.first().vehicle(), comparison.second().vehicle());
        boolean drag =
                hasLessDrag(comparison.first().vehicle(), comparison.second().vehicle());
        if (!(mass || drag) || !LapTimeDifference.isSlower(comparison.difference())) {
            return Optional.empty();
        }
        String what = mass && drag ? "Less mass and drag are" : mass ? "Less mass is" : "Less drag is";
        return Optional.of(what + " slower here by what limits the car, "
                + byLimit(comparison.byCause(), 1, digits, "s") + "."
                + (drag ? " " + DRAG : "") + (mass ? " " + MASS : ""));
    }

    private static boolean hasLessMass(Vehicle first, Vehicle second) {
        return second.mass() < first.mass();
    }

    private static boolean hasLessDrag(Vehicle first, Vehicle second) {
        return second.car().value(Quantity.DRAG_AREA) < first.car().value(Quantity.DRAG_AREA);
    }

    /**
     * Of each adjustment that has been turned to less of either and was slower, or to more and was faster; one sentence each.
     *
     * @param digits of differences
     */
    static List<String> told(SensitivityResult result, int digits) {
        Vehicle stood = Vehicle.of(result.car(), result.conditions());
        List<String> said = new ArrayList<>();
        for (SensitivityResult.Worth worth : result.worths()) {
            String name = worth.adjustment().name();
            for (SensitivityResult.Trial trial : List.of(worth.worst(), worth.best())) {
                if (!LapTimeDifference.counts(trial.difference())) {
                    continue;
                }
                Vehicle turned = Vehicle.of(result.car().with(name, trial.setting()), result.conditions());
                boolean slower = LapTimeDifference.isSlower(trial.difference());
                Vehicle more = slower ? stood : turned;
                Vehicle less = slower ? turned : stood;
                if (hasLessMass(more, less) || hasLessDrag(more, less)) {
                    LapSolver solver = LapSolver.on(result.track());
                    told(Comparison.of(solver.solve(more), solver.solve(less)), digits)
                            .ifPresent(why -> said.add(Subject.said(
                                            less.car(), name, less.car().setting(name)) + " beside "
                                    + Subject.said(more.car(), name, more.car().setting(name)) + ": " + why));
                }
            }
        }
        return said;
    }

    /** Of weight alone. */
    static String ofMass(Map<Limit, Double> perKg, int digits) {
        return "It helps by what limits the car, a kilogram " + byLimit(perKg, 1000, digits, "ms") + ". " + MASS;
    }

    private static String byLimit(Map<Limit, Double> byCause, double scale, int digits, String unit) {
        List<Map.Entry<Limit, Double>> most = byCause.entrySet().stream()
                .sorted(Comparator.comparingDouble(cause -> -Math.abs(cause.getValue())))
                .toList();
        return most.stream()
                .map(cause -> Numbers.signed(scale * cause.getValue(), digits) + " " + unit + " at its "
                        + cause.getKey().label())
                .collect(Collectors.joining(", "));
    }
}
