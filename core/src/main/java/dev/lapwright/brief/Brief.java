package dev.lapwright.brief;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.evidence.Evidence;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.fit.DrivenRun;
import dev.lapwright.powertrain.FuelConsumption;
import dev.lapwright.study.Progress;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyMemory;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.balance.Balance;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.gearing.Gearing;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.study.robust.DriverWord;
import dev.lapwright.study.sensitivity.Sensitivity;
import dev.lapwright.study.sensitivity.SensitivityResult;
import dev.lapwright.study.stint.Compound;
import dev.lapwright.study.stint.RaceLength;
import dev.lapwright.study.stint.Stint;
import dev.lapwright.study.stint.StintResult;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

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
    /** A fit to laps driven, of the whole with it. */
    private static final int FIT_PERCENT = 50;

    /** Laps beside those of drawn cars, and of each drawn car, about: three demo cars take 8 to 14 of each. */
    private static final int LAPS = 1000;

    private static final int LAPS_A_DRAW = 10;

    final Car car;
    final Track track;
    final Conditions conditions;
    final BriefChoices choices;
    final StudyMemory memory;

    private Brief(Car car, Track track, Conditions conditions, BriefChoices choices, StudyMemory memory) {
        this.car = car;
        this.track = track;
        this.conditions = conditions;
        this.choices = choices;
        this.memory = memory;
    }

    /** A brief for a car as it stands, with {@link BriefChoices#DEFAULT}. */
    public static Brief of(Car car, Track track, Conditions conditions) {
        return new Brief(car, track, conditions, BriefChoices.DEFAULT, StudyMemory.NONE);
    }

    /** The same with other choices. */
    public Brief with(BriefChoices other) {
        return new Brief(car, track, conditions, other, memory);
    }

    /** The same, going on from what a memory recalls of this very brief's fit, setups and drawn cars, and keeping there what it drives. */
    public Brief remembering(StudyMemory drives) {
        return new Brief(car, track, conditions, choices, drives);
    }

    /** The same for laps that scatter by this standard deviation, s. */
    public Brief withScatter(double seconds) {
        return with(choices.with(new BriefChoices.Testing(
                OptionalDouble.of(seconds), choices.testing().laps())));
    }

    /** The same with this many clean laps to test with, all setups together. */
    public Brief withLaps(int count) {
        return with(choices.with(new BriefChoices.Testing(choices.testing().scatter(), count)));
    }

    /** The same for another race. */
    public Brief withRace(RaceLength race) {
        return withRace(race, choices.racing().consumption(), choices.racing().compound());
    }

    /** The same for another race, engine and tyre. */
    public Brief withRace(RaceLength race, FuelConsumption consumption, Compound compound) {
        return with(choices.with(new BriefChoices.Racing(race, consumption, compound)));
    }

    /**
     * The same with these adjustments for the suggestion to turn. Without this call the sensitivity chooses: see
     * {@link SuggestedSetup#chosen}.
     */
    public Brief turning(List<String> adjustments) {
        adjustments.forEach(car::adjustment);
        return with(choices.turning(adjustments));
    }

    /** The same with this many cars drawn for each question, to say how far a difference is to be trusted; 0 for none. */
    public Brief withDraws(int count) {
        return with(choices.withDraws(count));
    }

    /** The same with what the driver says of the car as it stands, as the measurement that it is: only drawn cars that go with it count. */
    public Brief hearing(List<DriverWord> said) {
        return with(choices.hearing(said));
    }

    /** The same with logged pairs of cold and hot pressures, oldest first. */
    public Brief withPressures(List<PressurePair> pairs) {
        BriefChoices.Logged logged = choices.logged();
        return with(choices.with(new BriefChoices.Logged(pairs, logged.times(), logged.evidence(), logged.runs())));
    }

    /** The same after driving. */
    public Brief after(TimingLog log) {
        return after(log, choices.logged().evidence());
    }

    /** The same after driving, the log looked at in another way; the two setups and the prediction are not looked at. */
    public Brief after(TimingLog log, Evidence how) {
        BriefChoices.Logged logged = choices.logged();
        return with(choices.with(new BriefChoices.Logged(logged.pressures(), Optional.of(log), how, logged.runs())));
    }

    /** The same with laps driven with their speeds, a run for each setup: the car is fitted to them, and the plan made for that car. */
    public Brief fitting(List<DrivenRun> runs) {
        BriefChoices.Logged logged = choices.logged();
        return with(choices.with(new BriefChoices.Logged(logged.pressures(), logged.times(), logged.evidence(), runs)));
    }

    /**
     * Asks all studies. After driving they are asked of the car that comes of it: {@link Debrief}.
     *
     * @param how its progress is told in percent of the whole
     * @throws NoLapException if the car as it stands has no lap; nothing else stops a brief but a driver's words
     * @throws InvalidValueException if the driver speaks of a corner that is not there, if next to no drawn car goes with the words, or after driving,
     *     where laps say more
     */
    @Override
    public BriefResult run(StudyRun how) {
        WholeProgress whole = new WholeProgress(how);
        BriefLaps given = new BriefLaps(car, track, conditions);
        boolean fits = !choices.logged().runs().isEmpty();
        StudyRun fitting = whole.next(fits ? FIT_PERCENT : 0);
        int rest = 100 - (fits ? FIT_PERCENT : 0);
        BriefDoubt before = new BriefDoubt(
                car,
                track,
                conditions,
                choices.draws(),
                choices.words(),
                memory.of("draws"),
                fitting.reporting(Progress.NONE));
        checkWords(before);
        if (choices.draws() > BriefChoices.DRAWS) {
            // More than usual takes long.
            how.begin(WholeProgress.WHOLE, Integer.MAX_VALUE, before.trial(laps() / WholeProgress.WHOLE));
        }
        Debrief debrief = Debrief.of(given, track, choices.logged(), before, memory.of("rounds"), fitting);
        // From here on it is about the car that comes of what was driven.
        BriefLaps laps = debrief.car() == car ? given : new BriefLaps(debrief.car(), track, conditions);
        BriefDoubt doubt = before.about(laps.car());
        double scatter = scatter(debrief);
        StudyRun looking = whole.next(SENSITIVITY_PERCENT * rest / 100);
        BriefResult.Part<BriefResult.Priorities> sensitivity =
                BriefResult.Part.ask(() -> BriefResult.Priorities.of(sensitivity(laps.car(), scatter, looking)));
        BriefResult.Part<SuggestedSetup> suggestion =
                new SuggestionSearch(this, laps).suggestion(sensitivity, whole.next(SUGGESTION_PERCENT * rest / 100));
        StudyRun last = whole.next(0);
        RunValue value = new RunValue(scatter, choices.testing().laps());
        BriefResult.Part<ChangePlan> plan = suggestion.isThere()
                ? BriefResult.Part.ask(() -> new ChangePlanner(laps, doubt, value)
                        .plan(suggestion.value().orElseThrow()))
                : suggestion.missingToo();
        Apart apart = new Apart(laps, plan, last);
        BriefResult result = new BriefResult(
                choices,
                laps.asItStands(),
                BriefResult.PlaceShare.of(laps.asItStands()),
                sensitivity,
                sensitivity.isThere()
                        ? BriefResult.Part.ask(
                                () -> AdjustmentVerdicts.of(sensitivity.value().orElseThrow(), planned(plan), doubt))
                        : sensitivity.missingToo(),
                suggestion,
                apart.plan,
                apart.wings,
                apart.exchange,
                apart.gearing,
                apart.balance,
                apart.pressures
                        .value()
                        .map(found -> BriefResult.Part.ask(() -> PressureStart.worth(found, doubt)))
                        .orElse(apart.pressures),
                apart.stint,
                new TestPlanner(scatter, choices.testing().laps(), doubt).plan(apart.plan),
                debrief,
                doubt.heard(apart.plan.value().map(ChangePlan::car)));
        whole.end();
        return result;
    }

    /** Laps of the whole, about. */
    private int laps() {
        return LAPS + LAPS_A_DRAW * choices.draws();
    }

    private void checkWords(BriefDoubt before) {
        BriefChoices.Logged logged = choices.logged();
        if (!choices.words().isEmpty()
                && (logged.times().isPresent() || !logged.runs().isEmpty())) {
            throw new InvalidValueException(
                    "what the driver says",
                    "laps were driven since, which say more",
                    "leave it out, or fit the car to laps with 'lapwright fit', which takes it");
        }
        before.heard(Optional.empty());
    }

    private static Set<String> planned(BriefResult.Part<ChangePlan> plan) {
        return plan.value().stream()
                .flatMap(found -> found.steps().stream())
                .flatMap(step -> step.changes().stream())
                .map(change -> change.adjustment().name())
                .collect(Collectors.toSet());
    }

    /** As said, or else as the log tells, or else as usual. */
    private double scatter(Debrief debrief) {
        return choices.testing()
                .scatter()
                .orElseGet(() -> debrief.proof()
                        .value()
                        .map(Proof::scatter)
                        .orElse(OptionalDouble.empty())
                        .orElse(BriefChoices.USUAL_SCATTER));
    }

    /** Parts that need no other part, and but one thread each: found side by side. */
    private final class Apart {
        private BriefResult.Part<ChangePlan> plan;
        private BriefResult.Part<List<WingTrade>> wings;
        private BriefResult.Part<BriefResult.AeroExchange> exchange;
        private BriefResult.Part<GearingResult> gearing;
        private BriefResult.Part<BalanceResult> balance;
        private BriefResult.Part<BriefResult.StartPressures> pressures;
        private BriefResult.Part<StintResult> stint;

        Apart(BriefLaps laps, BriefResult.Part<ChangePlan> planned, StudyRun how) {
            Car stands = laps.car();
            StudyRun one = how.reporting(Progress.NONE).alone();
            // What takes longest first.
            List<Runnable> parts = List.of(
                    () -> plan = planned.value()
                            .map(found -> BriefResult.Part.of(found.seconded(track, conditions, one)))
                            .orElse(planned),
                    () -> stint = BriefResult.Part.ask(() -> stint(stands, one)),
                    () -> gearing = BriefResult.Part.ask(
                            () -> Gearing.of(stands, track, conditions).run(one)),
                    () -> wings = BriefResult.Part.ask(new WingTrades(laps.apart())::trades),
                    () -> exchange = BriefResult.Part.ask(new WingTrades(laps.apart())::exchange),
                    () -> balance = BriefResult.Part.ask(
                            () -> Balance.of(laps.asItStands()).run(one)),
                    () -> pressures = BriefResult.Part.ask(() -> new PressureStart(stands, track, conditions)
                            .of(choices.logged().pressures())));
            how.inParallel(
                    parts.size(),
                    () -> parts,
                    (all, i) -> {
                        all.get(i).run();
                        return i;
                    },
                    done -> {});
        }
    }

    private SensitivityResult sensitivity(Car stands, double scatter, StudyRun how) {
        return Sensitivity.of(stands, track, conditions)
                .withScatter(scatter)
                .withLaps(choices.testing().laps())
                .run(how);
    }

    private StintResult stint(Car stands, StudyRun how) {
        BriefChoices.Racing racing = choices.racing();
        return Stint.of(stands, track, conditions, racing.length())
                .withConsumption(racing.consumption())
                .onCompounds(List.of(racing.compound()))
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
