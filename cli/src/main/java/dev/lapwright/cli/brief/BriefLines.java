package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.brief.ChangePlan;
import dev.lapwright.car.Car;
import dev.lapwright.report.Report;
import dev.lapwright.results.GearingReport;
import dev.lapwright.results.LineCheck;
import dev.lapwright.results.Subject;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.lines.OwnLinesResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Recommendations of a brief, with the fastest line found anew for each car.
 *
 * @param lapTime of the car as it stands on its own line, s
 * @param setup the car after all changes of the plan; empty where it changes nothing
 * @param gearing the gearings to fit
 */
public record BriefLines(double lapTime, Optional<LineCheck> setup, List<LineCheck> gearing) {
    public BriefLines {
        gearing = List.copyOf(gearing);
    }

    /** The lines of a brief, found by somebody who is given the cars that it recommends. */
    static Optional<BriefLines> of(
            Subject subject, BriefResult brief, Function<List<Car>, Optional<OwnLinesResult>> search) {
        List<Car> cars = new ArrayList<>();
        Optional<ChangePlan> suggested =
                brief.plan().value().filter(found -> !found.steps().isEmpty());
        suggested.ifPresent(found -> cars.add(found.car()));
        Optional<GearingReport> gearing =
                brief.gearing().value().map(found -> new GearingReport(subject, BriefGearing.BEFORE_BRAKING_S, found));
        List<GearingResult.Candidate> toFit = gearing.map(GearingReport::toFit).orElse(List.of());
        toFit.forEach(choice -> cars.add(choice.car()));
        return search.apply(cars).map(found -> {
            int first = suggested.isPresent() ? 1 : 0;
            List<LineCheck> fitted = new ArrayList<>();
            for (int i = 0; i < toFit.size(); i++) {
                GearingResult.Candidate choice = toFit.get(i);
                double held = gearing.orElseThrow().result().asGiven().difference(choice);
                fitted.add(LineCheck.of(gearing.orElseThrow().said(choice), held, found, first + i));
            }
            return new BriefLines(
                    found.first().lapTime(),
                    suggested.map(one ->
                            LineCheck.of("the plan of changes", one.effect().difference(), found, 0)),
                    fitted);
        });
    }

    /** For machines. */
    Map<String, Object> tree() {
        return new LinkedHashMap<>(new Report()
                .field("lapTimeS", lapTime)
                .field("plan", setup.map(LineCheck::tree).orElse(null))
                .field("gearing", gearing.stream().map(LineCheck::tree).toList())
                .fields());
    }
}
