package dev.lapwright.brief;

import dev.lapwright.car.Car;
import dev.lapwright.car.Setup;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import dev.lapwright.study.Progress;
import dev.lapwright.study.balance.Balance;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.optimise.OptimisationResult;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** From the adjustments worth changing to a setup, and from that to the reason for each of its changes. */
final class SuggestionSearch {
    /** So many adjustments are turned where none is named: more would take too long. */
    private static final int MOST_CHOSEN = 6;

    private static final String NAME = "suggested";

    private final Brief brief;
    private final BriefLaps laps;

    SuggestionSearch(Brief brief, BriefLaps laps) {
        this.brief = brief;
        this.laps = laps;
    }

    BriefPart<SuggestedSetup> suggestion(BriefPart<BriefSensitivity> sensitivity, Progress progress) {
        boolean chosen = brief.choices.vary().isEmpty();
        if (chosen && !sensitivity.isThere()) {
            return sensitivity.missingToo();
        }
        return BriefPart.ask(() -> {
            List<String> names = chosen ? chosen(sensitivity.value().orElseThrow()) : brief.choices.vary();
            OptimisationResult study = Optimisation.of(brief.car, brief.track, brief.conditions)
                    .over(names)
                    .onThreads(brief.threads)
                    .run(progress);
            return suggested(study, chosen);
        });
    }

    /** Some gain only with others: what is left of the number is filled with those worth most over their range. */
    private static List<String> chosen(BriefSensitivity sensitivity) {
        Stream<SensitivityResult.Gain> byThemselves = sensitivity.worthChanging().stream()
                .sorted(Comparator.comparingDouble(SensitivityResult.Gain::bestGain)
                        .reversed());
        Stream<SensitivityResult.Gain> withOthers = sensitivity.notWorthChanging().stream()
                .filter(gain -> gain.range() >= BriefSensitivity.WORTH_S && !sensitivity.isDelicate(gain.adjustment()));
        List<String> names = Stream.concat(byThemselves, withOthers)
                .limit(MOST_CHOSEN)
                .map(gain -> gain.adjustment().name())
                .toList();
        if (names.isEmpty()) {
            throw new InvalidValueException(
                    "",
                    "no adjustment about which a lap time may decide is worth " + Check.text(BriefSensitivity.WORTH_S)
                            + " s over its range, so the setup stays as it is",
                    "name others to turn, if there are any");
        }
        return names;
    }

    private SuggestedSetup suggested(OptimisationResult study, boolean chosen) {
        List<SettingChange> turned = turned(study);
        Map<String, Double> settings = new LinkedHashMap<>(brief.car.settings());
        turned.forEach(change -> settings.put(change.adjustment().name(), change.to()));
        Car car = laps.changed(turned);
        Lap lap = laps.lap(car);
        List<SuggestedChange> changes = new ArrayList<>();
        for (SettingChange change : turned) {
            List<SettingChange> others = new ArrayList<>(turned);
            others.remove(change);
            changes.add(new SuggestedChange(
                    change,
                    BriefPart.ask(() -> BriefLaps.effect(laps.lap(laps.changed(others)), lap)),
                    laps.effect(() -> laps.changed(List.of(change)))));
        }
        changes.sort(Comparator.comparingDouble((SuggestedChange change) ->
                        change.undone().value().map(ChangeEffect::gain).orElse(Double.NEGATIVE_INFINITY))
                .reversed());
        return new SuggestedSetup(
                study,
                chosen,
                new Setup(NAME, settings),
                car,
                changes,
                BriefLaps.effect(laps.asItStands(), lap),
                BriefPart.ask(() -> Balance.of(lap)));
    }

    /** A setting between the legal steps counts as the nearest of them: going there is no change. */
    private List<SettingChange> turned(OptimisationResult study) {
        List<SettingChange> turned = new ArrayList<>();
        for (int i = 0; i < study.axes().size(); i++) {
            OptimisationResult.Axis axis = study.axes().get(i);
            double from = brief.car.setting(axis.name());
            double to = study.fewest().settings().get(i);
            double here = axis.settings().stream()
                    .min(Comparator.comparingDouble(legal -> Math.abs(legal - from)))
                    .orElseThrow();
            if (to != here) {
                turned.add(new SettingChange(brief.car.adjustment(axis.name()), from, to));
            }
        }
        return turned;
    }
}
