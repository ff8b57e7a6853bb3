package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.brief.SuggestedSetup;
import dev.lapwright.car.Caution;
import dev.lapwright.lap.Lap;
import dev.lapwright.results.Cautions;
import dev.lapwright.results.PressuresReport;
import dev.lapwright.results.StintReport;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Cautions at the head of a brief: limits of the model and of safety. */
public final class BriefCautions {
    private static final String DEFER =
            "Nothing here replaces the limits of the car's and the tyres' makers, the rules of"
                    + " the event, or practice under licence on a closed circuit. Change one thing at a time, check clearances at"
                    + " rest, and try it with a margin where there is room.";

    private BriefCautions() {}

    public static List<String> of(BriefReport brief) {
        BriefResult result = brief.result();
        Set<String> cautions = new LinkedHashSet<>();
        cautions.add(DEFER);
        cautions.addAll(Cautions.of(result.lap()));
        result.suggestion()
                .value()
                .filter(suggested -> !suggested.changes().isEmpty())
                .ifPresent(suggested -> withSuggested(cautions, suggested, result.lap()));
        turned(result).forEach(caution -> cautions.add(caution.text()));
        if (result.pressures().isThere()) {
            cautions.add(PressuresReport.CAUTION);
        }
        if (result.stint().isThere()) {
            cautions.add(StintReport.CAUTION);
        }
        return new ArrayList<>(cautions);
    }

    /** The same in short, of what the plan turns alone: for the first sheet. */
    static List<String> shortly(BriefReport brief) {
        List<String> cautions = new ArrayList<>();
        cautions.add(
                "The makers' limits, the rules of the event and practice under licence on a closed circuit come before"
                        + " anything here. Change one thing at a time, check clearances at rest, try it with a margin where there is"
                        + " room.");
        Set<Caution> turned = EnumSet.noneOf(Caution.class);
        brief.result()
                .plan()
                .value()
                .ifPresent(plan -> plan.steps().stream()
                        .flatMap(step -> step.changes().stream())
                        .map(BriefResult.SettingChange::cautions)
                        .forEach(turned::addAll));
        turned.forEach(caution -> cautions.add(caution.text()));
        if (brief.result().pressures().isThere() && !turned.contains(Caution.PRESSURE)) {
            cautions.add(Caution.PRESSURE.text());
        }
        if (brief.result().stint().isThere()) {
            cautions.add("A car that runs dry stops where it is: check its use of fuel yourself.");
        }
        if (!Cautions.of(brief.result().lap()).isEmpty()) {
            cautions.add(Cautions.of(brief.result().lap()).get(0));
        }
        return cautions;
    }

    private static void withSuggested(Set<String> cautions, SuggestedSetup suggested, Lap now) {
        List<String> already = Cautions.of(now);
        Lap lap = suggested.effect().comparison().second();
        Cautions.of(lap).stream()
                .filter(caution -> !already.contains(caution))
                .forEach(caution -> cautions.add("With the suggested setup: " + caution));
    }

    /** Of everything that the page proposes to turn. */
    private static Set<Caution> turned(BriefResult result) {
        Set<Caution> cautions = EnumSet.noneOf(Caution.class);
        result.sensitivity()
                .value()
                .ifPresent(found -> found.worthChanging().stream()
                        .map(SensitivityResult.Worth::cautions)
                        .forEach(cautions::addAll));
        result.suggestion()
                .value()
                .ifPresent(found -> found.changes().stream()
                        .map(change -> change.change().cautions())
                        .forEach(cautions::addAll));
        result.tests()
                .value()
                .ifPresent(found -> found.toDrive().stream()
                        .flatMap(run -> run.changes().stream())
                        .map(BriefResult.SettingChange::cautions)
                        .forEach(cautions::addAll));
        return cautions;
    }
}
