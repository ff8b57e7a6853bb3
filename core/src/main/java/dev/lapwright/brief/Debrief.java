package dev.lapwright.brief;

import dev.lapwright.car.Car;
import dev.lapwright.car.Setup;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.fit.DrivenRun;
import dev.lapwright.fit.Fit;
import dev.lapwright.fit.FitResult;
import dev.lapwright.study.StudyMemory;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.Track;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Debrief after driving: what the laps proved of each change, what they tell of the car, and the car that comes of both, for which the
 * next plan is made. Before driving it is the car as it stands.
 *
 * @param given the car as it stood before driving
 * @param proof of each change by lap times, beside what was expected; missing also where no lap times were given
 * @param fit of the car to laps driven with their speeds; missing also where none were given
 * @param kept what the best setup driven sets otherwise than the car stood, by name; empty where it stays as it was, or where the log does
 *     not say what was set; unmodifiable
 * @param car the fitted car with its doubt, or the one given, as it is kept
 */
public record Debrief(
        Car given, BriefResult.Part<Proof> proof, BriefResult.Part<FitResult> fit, Map<String, Double> kept, Car car) {
    public Debrief {
        kept = Collections.unmodifiableMap(new LinkedHashMap<>(kept));
    }

    /** Whether the best setup driven can be carried on: the log says what it sets. */
    public boolean isKeptTold() {
        return proof.value().map(found -> SetupName.isTold(given, found.kept())).orElse(true);
    }

    /**
     * @param rounds memory of a fit
     * @param how under which a fit is run
     */
    static Debrief of(
            BriefLaps laps,
            Track track,
            BriefChoices.Logged logged,
            BriefDoubt doubt,
            StudyMemory rounds,
            StudyRun how) {
        Car given = laps.car();
        BriefResult.Part<Proof> proof = new LapProof(logged, laps, doubt).proof();
        Car kept = proof.value()
                .map(Proof::kept)
                .filter(name -> SetupName.isTold(given, name))
                .map(name -> SetupName.set(given, name))
                .orElse(given);
        Map<String, Double> otherwise = new LinkedHashMap<>();
        kept.settings().forEach((name, value) -> {
            if (value != LapProof.setting(given, name)) {
                otherwise.put(name, value);
            }
        });
        BriefResult.Part<FitResult> fit = logged.runs().isEmpty()
                ? BriefResult.Part.missing(
                        "no laps with their speeds have been logged yet",
                        "log speed over distance or time, a file for each setup, and give them too")
                : BriefResult.Part.ask(() -> usable(fit(track, logged.runs(), rounds, how), kept, laps));
        Car car = fit.value().map(found -> fitted(found, kept)).orElse(kept);
        return new Debrief(given, proof, fit, otherwise, car);
    }

    /** Further runs may be set up otherwise, and on another day. */
    private static FitResult fit(Track track, List<DrivenRun> runs, StudyMemory rounds, StudyRun how) {
        DrivenRun first = runs.get(0);
        Fit fit = Fit.of(first.car(), track, first.conditions()).laps(first.laps());
        for (DrivenRun run : runs.subList(1, runs.size())) {
            fit = fit.also(run);
        }
        return fit.remembering(rounds).run(how);
    }

    /** The fit, if the fitted car can be driven as it is kept. */
    private static FitResult usable(FitResult found, Car kept, BriefLaps laps) {
        try {
            laps.lap(fitted(found, kept));
            return found;
        } catch (LapwrightException noLap) {
            throw new InvalidValueException(
                    "fit",
                    "the fitted car has no lap as it is kept: " + noLap.getMessage(),
                    "see what 'fit' says of the laps; the plan is made for the car as its document has it");
        }
    }

    private static Car fitted(FitResult found, Car kept) {
        Car document = found.document(kept.document().name(), kept.document().description());
        Map<String, Double> settings = new LinkedHashMap<>(kept.settings());
        // A quantity that was set by its own name, and fitted, has its fitted value in the document.
        Set<String> fitted = new HashSet<>(found.car().settings().keySet());
        fitted.removeAll(found.fitted().settings().keySet());
        settings.keySet().removeAll(fitted);
        return settings.isEmpty() ? document : document.with(new Setup("", settings));
    }
}
