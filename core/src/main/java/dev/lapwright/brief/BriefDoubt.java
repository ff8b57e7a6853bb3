package dev.lapwright.brief;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.study.StudyMemory;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.robust.DrawnCars;
import dev.lapwright.study.robust.DriverWord;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.study.robust.SettledVerdicts;
import dev.lapwright.study.sensitivity.SensitivityResult;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Doubt of a brief's differences: cars drawn about one, the same for all of its questions, so that what steps gain adds up on each of them.
 * For one thread.
 */
final class BriefDoubt {
    /** Twice as far apart as usual: differences are off by 8 ms at the most (docs/performance.md), where nothing below 50 counts. */
    static final StationSpacing SPACING = StationSpacing.DEFAULT.scaled(2);

    /** Settings that a question drives on each drawn car, about: of the demo cars two to four, of which some are known. */
    private static final int LAPS_A_QUESTION = 3;

    private final Car reference;
    private final Track track;
    private final Conditions conditions;
    private final int draws;
    private final List<DriverWord> words;
    private final StudyMemory memory;
    private final StudyRun how;
    /** Questions asked so far. */
    private int asked;
    /** Not drawn before it is asked for. */
    private DrawnCars cars;

    /**
     * @param reference about which cars are drawn
     * @param draws cars drawn for each question; 0 for none
     * @param words what the driver says of that car; where there is something, only cars that go with it count
     * @param memory of what is driven; the same brief asks the same questions in the same order
     */
    BriefDoubt(
            Car reference,
            Track track,
            Conditions conditions,
            int draws,
            List<DriverWord> words,
            StudyMemory memory,
            StudyRun how) {
        this.reference = reference;
        this.track = track;
        this.conditions = conditions;
        this.draws = draws;
        this.words = words;
        this.memory = memory;
        this.how = how;
    }

    /** The same about another car. */
    BriefDoubt about(Car other) {
        return other == reference
                ? this
                : new BriefDoubt(other, track, conditions, draws, words, memory.of("fitted"), how);
    }

    /**
     * What the driver's words leave, and what was said of the whole of a plan before; empty where the driver says nothing, or no cars are drawn.
     *
     * @param after the car after all steps; empty where there is no plan
     */
    Optional<Heard> heard(Optional<Car> after) {
        if (words.isEmpty() || draws == 0) {
            return Optional.empty();
        }
        BriefDoubt deaf = new BriefDoubt(reference, track, conditions, draws, List.of(), memory.of("deaf"), how);
        DrawnCars left = cars();
        return Optional.of(new Heard(left.looked(), left.count(), after.flatMap(car -> deaf.between(reference, car))));
    }

    private DrawnCars cars() {
        if (cars == null) {
            cars = DrawnCars.about(reference, track, SPACING, conditions, draws).heard(words, memory.of("heard"), how);
        }
        return cars;
    }

    /** How a car stands beside another setting of it; empty where none are drawn, or where they cannot be. */
    Optional<RobustnessResult.Standing> between(Car before, Car after) {
        return beside(before, List.of(after))
                .value()
                .map(found -> found.standings().get(0));
    }

    /** What can be said of adjustments but some, as a sensitivity with as many drawn cars says it; missing where none are drawn. */
    BriefResult.Part<SettledVerdicts.Result> verdicts(SensitivityResult found, Set<String> apart) {
        return draws == 0
                ? none()
                : BriefResult.Part.ask(() -> SettledVerdicts.of(found, apart)
                        .hearing(words)
                        .remembering(memory.of("verdicts"))
                        .run(how));
    }

    /** As much work as so many laps of drawn cars, to see how long it takes; each question lays their roads anew. */
    Runnable trial(int laps) {
        return DrawnCars.about(reference, track, SPACING, conditions, draws).trial(laps, LAPS_A_QUESTION);
    }

    private static <T> BriefResult.Part<T> none() {
        return BriefResult.Part.missing("no cars were drawn, so nothing is known of the doubt", "ask for draws");
    }

    /** How cars stand beside another setting of the reference; missing where none are drawn, or where they cannot be. */
    BriefResult.Part<RobustnessResult> beside(Car before, List<Car> others) {
        if (draws == 0) {
            return none();
        }
        return BriefResult.Part.ask(() -> {
            Robustness study = Robustness.of(before, cars()).remembering(memory.of(Integer.toString(++asked)));
            for (Car other : others) {
                study = study.against(other);
            }
            return study.run(how);
        });
    }
}
