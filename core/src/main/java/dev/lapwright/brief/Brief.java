package dev.lapwright.brief;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.evidence.Evidence;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.Lap;
import dev.lapwright.powertrain.FuelConsumption;
import dev.lapwright.study.Progress;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.balance.Balance;
import dev.lapwright.study.gearing.Gearing;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.study.sensitivity.Sensitivity;
import dev.lapwright.study.sensitivity.SensitivityResult;
import dev.lapwright.study.stint.Compound;
import dev.lapwright.study.stint.RaceLength;
import dev.lapwright.study.stint.Stint;
import dev.lapwright.study.stint.StintResult;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Optional;

/**
 * Brief of one car at one circuit on one day: the answers of all studies, and the tests that would show them. Immutable:
 * each method gives a new question. A part that cannot be answered says why and leaves the others alone.
 *
 * <pre>{@code
 * BriefResult brief = Brief.of(car, track, Conditions.STANDARD).withLaps(20).run();
 * brief.suggestion().value().ifPresent(suggested -> System.out.println(suggested.effect().difference() + " s"));
 * }</pre>
 */
public final class Brief implements Study<BriefResult> {
    /** About what each takes of the time of the whole. */
    private static final int SENSITIVITY_PERCENT = 40;

    private static final int SUGGESTION_PERCENT = 45;
    private static final int REST_PERCENT = 15;

    final Car car;
    final Track track;
    final Conditions conditions;
    final BriefChoices choices;

    private Brief(Car car, Track track, Conditions conditions, BriefChoices choices) {
        this.car = car;
        this.track = track;
        this.conditions = conditions;
        this.choices = choices;
    }

    /** A brief for a car as it stands, with {@link BriefChoices#DEFAULT}. */
    public static Brief of(Car car, Track track, Conditions conditions) {
        return new Brief(car, track, conditions, BriefChoices.DEFAULT);
    }

    /** The same with other choices. */
    public Brief with(BriefChoices other) {
        return new Brief(car, track, conditions, other);
    }

    /** The same for laps that scatter by this standard deviation, s. */
    public Brief withScatter(double seconds) {
        return with(new BriefChoices(
                seconds,
                choices.laps(),
                choices.race(),
                choices.consumption(),
                choices.compound(),
                choices.vary(),
                choices.pairs(),
                choices.draws(),
                choices.log(),
                choices.evidence()));
    }

    /** The same with this many clean laps to test with, all setups together. */
    public Brief withLaps(int count) {
        return with(new BriefChoices(
                choices.scatter(),
                count,
                choices.race(),
                choices.consumption(),
                choices.compound(),
                choices.vary(),
                choices.pairs(),
                choices.draws(),
                choices.log(),
                choices.evidence()));
    }

    /** The same for another race. */
    public Brief withRace(RaceLength race) {
        return withRace(race, choices.consumption(), choices.compound());
    }

    /** The same for another race, engine and tyre. */
    public Brief withRace(RaceLength race, FuelConsumption consumption, Compound compound) {
        return with(new BriefChoices(
                choices.scatter(),
                choices.laps(),
                race,
                consumption,
                compound,
                choices.vary(),
                choices.pairs(),
                choices.draws(),
                choices.log(),
                choices.evidence()));
    }

    /**
     * The same with these adjustments for the suggestion to turn. Without this call the sensitivity chooses: see
     * {@link SuggestedSetup#chosen}.
     */
    public Brief turning(List<String> adjustments) {
        adjustments.forEach(car::adjustment);
        return with(new BriefChoices(
                choices.scatter(),
                choices.laps(),
                choices.race(),
                choices.consumption(),
                choices.compound(),
                adjustments,
                choices.pairs(),
                choices.draws(),
                choices.log(),
                choices.evidence()));
    }

    /** The same with logged pairs of cold and hot pressures, oldest first. */
    public Brief withPressures(List<PressurePair> pairs) {
        return with(new BriefChoices(
                choices.scatter(),
                choices.laps(),
                choices.race(),
                choices.consumption(),
                choices.compound(),
                choices.vary(),
                pairs,
                choices.draws(),
                choices.log(),
                choices.evidence()));
    }

    /** The same with this many cars drawn for each question, to say how far a difference is to be trusted; 0 for none. */
    public Brief withDraws(int count) {
        return with(new BriefChoices(
                choices.scatter(),
                choices.laps(),
                choices.race(),
                choices.consumption(),
                choices.compound(),
                choices.vary(),
                choices.pairs(),
                count,
                choices.log(),
                choices.evidence()));
    }

    /** The same after driving. */
    public Brief after(TimingLog log) {
        return after(log, choices.evidence());
    }

    /** The same after driving, the log looked at in another way; the two setups and the prediction are not looked at. */
    public Brief after(TimingLog log, Evidence how) {
        return with(new BriefChoices(
                choices.scatter(),
                choices.laps(),
                choices.race(),
                choices.consumption(),
                choices.compound(),
                choices.vary(),
                choices.pairs(),
                choices.draws(),
                Optional.of(log),
                how));
    }

    /**
     * Asks all studies.
     *
     * @param how its progress is told in percent of the whole
     * @throws NoLapException if the car as it stands has no lap; nothing else stops a brief
     */
    @Override
    public BriefResult run(StudyRun how) {
        WholeProgress whole = new WholeProgress(how);
        BriefLaps laps = new BriefLaps(car, track, conditions);
        Lap lap = laps.asItStands();
        StudyRun looking = whole.next(SENSITIVITY_PERCENT);
        BriefResult.Part<BriefResult.Priorities> sensitivity =
                BriefResult.Part.ask(() -> BriefResult.Priorities.of(sensitivity(looking)));
        StudyRun searching = whole.next(SUGGESTION_PERCENT);
        BriefResult.Part<SuggestedSetup> suggestion =
                new SuggestionSearch(this, laps).suggestion(sensitivity, searching);
        StudyRun rest = whole.next(REST_PERCENT);
        BriefDoubt doubt = new BriefDoubt(track, conditions, choices.draws(), rest.reporting(Progress.NONE));
        BriefResult.Part<ChangePlan> plan = suggestion.isThere()
                ? BriefResult.Part.ask(() ->
                        new ChangePlanner(laps, doubt).plan(suggestion.value().orElseThrow()))
                : suggestion.missingToo();
        WingTrades wings = new WingTrades(laps);
        BriefResult result = new BriefResult(
                choices,
                lap,
                BriefResult.PlaceShare.of(lap),
                sensitivity,
                sensitivity.isThere()
                        ? BriefResult.Part.ask(
                                () -> AdjustmentVerdicts.of(sensitivity.value().orElseThrow(), doubt.halved()))
                        : sensitivity.missingToo(),
                suggestion,
                plan,
                BriefResult.Part.ask(wings::trades),
                BriefResult.Part.ask(wings::exchange),
                BriefResult.Part.ask(() -> Gearing.of(car, track, conditions).run(rest.reporting(Progress.NONE))),
                BriefResult.Part.ask(() -> Balance.of(lap).run(rest)),
                BriefResult.Part.ask(() -> new PressureStart(car, track, conditions).of(choices.pairs())),
                BriefResult.Part.ask(() -> stint(rest.reporting(Progress.NONE))),
                new TestPlanner(choices, doubt).plan(plan),
                new LapProof(choices, laps).proof());
        whole.end();
        return result;
    }

    private SensitivityResult sensitivity(StudyRun how) {
        return Sensitivity.of(car, track, conditions)
                .withScatter(choices.scatter())
                .withLaps(choices.laps())
                .run(how);
    }

    private StintResult stint(StudyRun how) {
        return Stint.of(car, track, conditions, choices.race())
                .withConsumption(choices.consumption())
                .onCompounds(List.of(choices.compound()))
                .run(how);
    }

    /** Progress of the whole brief, whose parts each take about so many percent of it. */
    private static final class WholeProgress {
        private static final int WHOLE = 100;

        private final StudyRun told;
        private int behind;

        WholeProgress(StudyRun told) {
            this.told = told;
        }

        /** The progress of the next part, which ends where the part after it begins. */
        StudyRun next(int percent) {
            int from = behind;
            behind += percent;
            told.report(from, WHOLE);
            return told.reporting((done, total) ->
                    told.report(from + (int) ((long) percent * Math.min(done, total) / Math.max(1, total)), WHOLE));
        }

        void end() {
            told.report(WHOLE, WHOLE);
        }
    }
}
