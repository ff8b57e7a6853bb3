package dev.lapwright.results.plan;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Unit;
import dev.lapwright.documents.Documents;
import dev.lapwright.documents.LineKind;
import dev.lapwright.documents.PlanDocument;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.results.ChosenLine;
import dev.lapwright.results.Subject;
import dev.lapwright.results.Vary;
import dev.lapwright.study.plan.LapPlan;
import dev.lapwright.study.plan.PlanDesign;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.StationSpacing;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/** Cases of a plan's document: its cars, circuits and days read, each car on its line. */
public final class PlannedCases {
    private final PlanDocument document;
    private final UnaryOperator<String> places;

    private PlannedCases(PlanDocument document, UnaryOperator<String> places) {
        this.document = document;
        this.places = places;
    }

    /**
     * The plan that a document holds.
     *
     * @param places where the document of a name is read: the name itself, or a copy's place on another machine
     * @param remark told what there is to say of lines
     * @throws dev.lapwright.fault.LapwrightException if a document cannot be read, or a car or day cannot have one of the values
     */
    public static LapPlan plan(PlanDocument document, UnaryOperator<String> places, Consumer<String> remark) {
        return new PlannedCases(document, places).plan(remark);
    }

    private LapPlan plan(Consumer<String> remark) {
        Map<String, Conditions> days = new LinkedHashMap<>();
        if (document.conditions().isEmpty()) {
            days.put("standard day", Conditions.STANDARD);
        }
        document.conditions().forEach(day -> days.put(day, Documents.conditions(places.apply(day))));
        List<LapPlan.Case> cases = new ArrayList<>();
        List<SweepAxis> axes = new ArrayList<>();
        for (String car : document.cars()) {
            for (String circuit : document.circuits()) {
                Subject stands =
                        Subject.of(places.apply(car), places.apply(circuit), null, List.of(), Conditions.STANDARD);
                if (axes.isEmpty()) {
                    document.vary()
                            .forEach((name, values) ->
                                    axes.add(Vary.parse(values.isEmpty() ? name : name + "=" + values, stands)
                                            .axis()));
                }
                axes.forEach(axis -> checkUnit(axis.name(), car, stands.bare()));
                Subject driven = document.line().equals(LineKind.MIDDLE.word())
                        ? stands
                        : stands.on(ChosenLine.standard(stands.track(), stands.car(), remark));
                days.forEach((name, day) -> cases.add(new LapPlan.Case(
                        car + " at " + circuit + ", " + name,
                        driven.car(),
                        driven.driven().stations(StationSpacing.DEFAULT),
                        day)));
            }
        }
        LapPlan plan = LapPlan.of(design(axes));
        for (LapPlan.Case one : cases) {
            plan = plan.with(one);
        }
        return plan;
    }

    /** A number that is degrees on one car and a position on another is no one axis. */
    private void checkUnit(String name, String car, Car bare) {
        String first = document.cars().get(0);
        Unit unit = Subject.unitOf(bare, name);
        Unit firstUnit = Subject.unitOf(Documents.car(places.apply(first)), name);
        if (unit != firstUnit) {
            throw new InvalidValueException(
                    name,
                    "its unit is '" + firstUnit.symbol() + "' on " + first + " and '" + unit.symbol() + "' on " + car,
                    "plan these cars each by itself");
        }
    }

    private PlanDesign design(List<SweepAxis> axes) {
        return switch (document.design()) {
            case PlanDocument.LATIN_HYPERCUBE -> PlanDesign.latinHypercube(axes, document.points(), document.seed());
            case PlanDocument.SOBOL -> PlanDesign.sobol(axes, document.points());
            default -> PlanDesign.grid(axes);
        };
    }
}
