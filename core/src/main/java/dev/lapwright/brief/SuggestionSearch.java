package dev.lapwright.brief;

import dev.lapwright.car.Car;
import dev.lapwright.car.Setup;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.study.StudyRun;
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

/** Search for a setup among the adjustments worth changing, and for the reason of each of its changes. */
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

    BriefResult.Part<SuggestedSetup> suggestion(BriefResult.Part<BriefResult.Priorities> sensitivity, StudyRun how) {
        boolean chosen = brief.choices.vary().isEmpty();
        if (chosen && !sensitivity.isThere()) {
            return sensitivity.missingToo();
        }
        return BriefResult.Part.ask(() -> {
            List<String> names = chosen ? chosen(sensitivity.value().orElseThrow()) : brief.choices.vary();
            OptimisationResult study = Optimisation.of(laps.car(), brief.track, brief.conditions)
                    .over(names)
                    .roughly()
                    .remembering(brief.memory.of("setups"))
                    .run(how);
            return suggested(study, chosen);
        });
    }

    /** Some are worth something only with others: what is left of the number is filled with those worth most over their range. */
    private static List<String> chosen(BriefResult.Priorities sensitivity) {
        Stream<SensitivityResult.Worth> byThemselves = sensitivity.worthChanging().stream()
                .sorted(Comparator.comparingDouble(
                        (SensitivityResult.Worth worth) -> worth.best().difference()));
        Stream<SensitivityResult.Worth> withOthers = sensitivity.notWorthChanging().stream()
                .filter(worth ->
                        LapTimeDifference.counts(worth.range()) && !sensitivity.isDelicate(worth.adjustment()));
        List<String> names = Stream.concat(byThemselves, withOthers)
                .limit(MOST_CHOSEN)
                .map(worth -> worth.adjustment().name())
                .toList();
        if (names.isEmpty()) {
            throw new InvalidValueException(
                    "",
                    "no adjustment about which a lap time may decide is worth "
                            + Check.text(LapTimeDifference.COUNTS)
                            + " s over its range, so the setup stays as it is",
                    "name others to turn, if there are any");
        }
        return names;
    }

    private SuggestedSetup suggested(OptimisationResult study, boolean chosen) {
        List<BriefResult.SettingChange> turned = turned(study);
        Map<String, Double> settings = new LinkedHashMap<>(laps.car().settings());
        turned.forEach(change -> settings.put(change.adjustment().name(), change.to()));
        Car car = laps.changed(turned);
        Lap lap = laps.lap(car);
        List<SuggestedSetup.Change> changes = new ArrayList<>();
        for (BriefResult.SettingChange change : turned) {
            List<BriefResult.SettingChange> others = new ArrayList<>(turned);
            others.remove(change);
            changes.add(new SuggestedSetup.Change(
                    change,
                    BriefResult.Part.ask(() -> BriefLaps.effect(laps.lap(laps.changed(others)), lap)),
                    laps.effect(() -> laps.changed(List.of(change)))));
        }
        changes.sort(Comparator.comparingDouble((SuggestedSetup.Change change) -> change.undone()
                .value()
                .map(BriefResult.ChangeEffect::difference)
                .orElse(Double.POSITIVE_INFINITY)));
        return new SuggestedSetup(
                study,
                chosen,
                new Setup(NAME, settings),
                car,
                changes,
                BriefLaps.effect(laps.asItStands(), lap),
                BriefResult.Part.ask(() -> Balance.of(lap).run()));
    }

    /** A setting between the legal steps counts as the nearest of them: going there is no change. */
    private List<BriefResult.SettingChange> turned(OptimisationResult study) {
        List<BriefResult.SettingChange> turned = new ArrayList<>();
        for (int i = 0; i < study.search().axes().size(); i++) {
            OptimisationResult.Axis axis = study.search().axes().get(i);
            double from = laps.car().setting(axis.name());
            double to = study.nearOptimal().fewest().settings().get(i);
            double here = axis.settings().stream()
                    .min(Comparator.comparingDouble(legal -> Math.abs(legal - from)))
                    .orElseThrow();
            if (to != here) {
                turned.add(new BriefResult.SettingChange(laps.car().adjustment(axis.name()), from, to));
            }
        }
        return turned;
    }
}
