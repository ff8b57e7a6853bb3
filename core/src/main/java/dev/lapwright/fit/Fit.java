package dev.lapwright.fit;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.Lap;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyMemory;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/**
 * Parameter estimation of a car from logged laps, by robust least squares of speed on the full lap model. Immutable: each setting
 * gives a new study.
 *
 * <pre>{@code
 * FitResult result = Fit.of(car, track, conditions).laps(laps).run();
 * result.estimates().forEach(e -> System.out.println(e.parameter().title() + " " + e.value()));
 * }</pre>
 */
public final class Fit implements Study<FitResult> {
    private final Car car;
    private final Track track;
    private final Conditions conditions;
    private final List<DrivenLap> laps;
    private final List<DrivenRun> further;
    private final Choices choices;

    /** What is asked, and what is given beside the laps. */
    private record Choices(
            Set<FitParameter> parameters,
            FitDoubts doubts,
            List<LimitWord> words,
            List<FitResult.Candidate> candidates,
            double confidence,
            StudyMemory rounds,
            Consumer<Map<FitParameter, Double>> told) {}

    private Fit(
            Car car,
            Track track,
            Conditions conditions,
            List<DrivenLap> laps,
            List<DrivenRun> further,
            Choices choices) {
        this.car = car;
        this.track = track;
        this.conditions = conditions;
        this.laps = laps;
        this.further = further;
        this.choices = choices;
    }

    private Fit with(Choices others) {
        return new Fit(car, track, conditions, laps, further, others);
    }

    /** Fit of a car as set up on the day, on the track that was driven: all parameters, intervals of 95 %, no laps yet. */
    public static Fit of(Car car, Track track, Conditions conditions) {
        Choices usual = new Choices(
                EnumSet.allOf(FitParameter.class),
                FitDoubts.USUAL,
                List.of(),
                List.of(),
                0.95,
                StudyMemory.NONE,
                any -> {});
        return new Fit(car, track, conditions, List.of(), List.of(), usual);
    }

    /** The same with these laps of the car as set up, at least one. */
    public Fit laps(List<DrivenLap> driven) {
        return new Fit(car, track, conditions, List.copyOf(driven), further, choices);
    }

    /**
     * The same with a further run, in which the same car was set up otherwise: two wings or two bars tell of the tyres what one does
     * not.
     *
     * @throws InvalidValueException if it is a car of another document
     */
    public Fit also(DrivenRun run) {
        Car mine = car.document();
        Car its = run.car().document();
        if (!mine.quantities().equals(its.quantities()) || !mine.name().equals(its.name())) {
            throw new InvalidValueException(
                    "run " + (further.size() + 2),
                    "it is a run of " + its.name() + " by another document than that of the first, " + mine.name(),
                    "fit runs of one car's document together, each with its setup");
        }
        List<DrivenRun> all = new ArrayList<>(further);
        all.add(run);
        return new Fit(car, track, conditions, laps, List.copyOf(all), choices);
    }

    /** The same for some parameters, at least one; all by default. */
    public Fit fitting(Set<FitParameter> wanted) {
        if (wanted.isEmpty()) {
            throw new InvalidValueException("parameters", "there is none to fit", "name one at least");
        }
        Set<FitParameter> some = Collections.unmodifiableSet(EnumSet.copyOf(wanted));
        return with(new Choices(
                some,
                choices.doubts,
                choices.words,
                choices.candidates,
                choices.confidence,
                choices.rounds,
                choices.told));
    }

    /** The same with other doubts of what is not fitted; {@link FitDoubts#USUAL} by default. */
    public Fit doubting(FitDoubts stated) {
        return with(new Choices(
                choices.parameters,
                stated,
                choices.words,
                choices.candidates,
                choices.confidence,
                choices.rounds,
                choices.told));
    }

    /** The same, taking in what is said of which axle gives up first in the first run; each word counts for itself. None by default. */
    public Fit hearing(List<LimitWord> said) {
        return with(new Choices(
                choices.parameters,
                choices.doubts,
                List.copyOf(said),
                choices.candidates,
                choices.confidence,
                choices.rounds,
                choices.told));
    }

    /** The same, asking of each of these setups what a further run in it would tell; none by default. */
    public Fit consideringNext(List<FitResult.Candidate> setups) {
        return with(new Choices(
                choices.parameters,
                choices.doubts,
                choices.words,
                List.copyOf(setups),
                choices.confidence,
                choices.rounds,
                choices.told));
    }

    /** The same with another confidence of the intervals, 0.5 to 0.999; 0.95 by default. */
    public Fit confidence(double wanted) {
        Check.inRange("confidence", wanted, 0.5, 0.999);
        return with(new Choices(
                choices.parameters,
                choices.doubts,
                choices.words,
                choices.candidates,
                wanted,
                choices.rounds,
                choices.told));
    }

    /** The same, going on from what a memory recalls of this very fit's rounds of least squares, and keeping there what it does. */
    public Fit remembering(StudyMemory rounds) {
        return with(new Choices(
                choices.parameters,
                choices.doubts,
                choices.words,
                choices.candidates,
                choices.confidence,
                rounds,
                choices.told));
    }

    /** The same, telling what the parameters that are still free have come to, in their units, as each round of least squares ends. */
    public Fit tellingRounds(Consumer<Map<FitParameter, Double>> told) {
        return with(new Choices(
                choices.parameters,
                choices.doubts,
                choices.words,
                choices.candidates,
                choices.confidence,
                choices.rounds,
                told));
    }

    /**
     * Estimates of the parameters.
     *
     * @param how its progress is told in laps driven, of about as many as such fits take; a fit goes step by step, on one thread
     * @throws InvalidValueException if a lap is none of this track, or the car has no lap of it
     */
    @Override
    public FitResult run(StudyRun how) {
        if (laps.isEmpty()) {
            throw new InvalidValueException("laps", "there is none", "give one at least");
        }
        if (car.hasOwnTyres()) {
            throw new InvalidValueException(
                    "car",
                    "it stands on tyre models of its own, which a fit cannot scale",
                    "fit the car of the document");
        }
        List<DrivenRun> runs = new ArrayList<>();
        runs.add(new DrivenRun(car, conditions, laps));
        runs.addAll(further);
        return new Run(runs, how).result();
    }

    /** One run of the search: the parameters still free, and the collinearities found so far. */
    private final class Run {
        /** Laps for each run, about, and more for each parameter: those of the demo logs take 70 to 100 for one or two, 180 to 320 for five. */
        private static final int EXPECTED = 50;

        private static final int EXPECTED_EACH = 45;
        /** Rounds of least squares, and steps of them all: those of the demo logs take 5 to 9 rounds and 10 to 20 steps. */
        private static final int ROUNDS = 7;

        private static final int STEPS = 16;
        /** Below this share of the strongest direction's effect on speed nothing can be told, whatever the noise. */
        private static final double BLIND = 1e-3;
        /** A direction is held where its standard error is above what is usually in doubt of it: 1 in u. */
        private static final double LEAST_INFORMATION = 1;
        /** Least length of a cell, m. */
        private static final double LEAST_CELL = 5;

        private static final int LEAST_CELLS = 40;

        private final List<DrivenRun> runs;
        private final StudyRun how;
        private final List<ParameterScale> asked = new ArrayList<>();
        private final List<ParameterScale> free = new ArrayList<>();
        private final List<DoubtedDirection> nuisances = new ArrayList<>();
        private final List<FitResult.Collinearity> collinearities = new ArrayList<>();

        Run(List<DrivenRun> runs, StudyRun how) {
            this.runs = runs;
            this.how = how;
            for (FitParameter parameter : FitParameter.values()) {
                if (choices.parameters.contains(parameter)) {
                    asked.add(ParameterScale.of(parameter, car));
                }
            }
            free.addAll(asked);
            for (FitNuisance nuisance : FitNuisance.values()) {
                NuisanceScale scale = NuisanceScale.of(nuisance, choices.doubts.of(nuisance), car);
                if (scale.moves(car)) {
                    nuisances.add(scale);
                }
            }
            for (int run = 1; run < runs.size(); run++) {
                addIfMoves(RunScale.grip(choices.doubts.of(FitNuisance.RUN_GRIP), run, car));
                addIfMoves(RunScale.effect(
                        choices.doubts.of(FitNuisance.SETUP_EFFECT),
                        run,
                        car,
                        runs.get(run).car()));
            }
        }

        private void addIfMoves(RunScale scale) {
            if (scale.moves()) {
                nuisances.add(scale);
            }
        }

        FitResult result() {
            List<Direction> directions = new ArrayList<>(free);
            directions.addAll(nuisances);
            FitModel model = new FitModel(runs, track, directions, how, expected(), choices.rounds);
            Priors priors = new Priors(choices.doubts, free.size(), directions);
            List<Lap> before = lapsAsGiven(model);
            List<LapValidator> validators = before.stream()
                    .map(lap -> new LapValidator(track, new SpeedCurve(lap), lap.time()))
                    .toList();
            List<LapCells> cells = cells(validators);
            double[] start = new double[priors.shared + 2 * cells.size()];
            for (int k = 0; k < cells.size(); k++) {
                start[priors.shared + 2 * k] = validators.get(cells.get(k).run).offset(cells.get(k));
            }
            double mostOffset = validators.get(0).mostOffset();
            RobustFit begun = new RobustFit(model, cells, priors, mostOffset, start, this::tell);
            int left = Math.max(1, ROUNDS - model.rounds().known());
            how.begin((long) expected() * left / ROUNDS, 1, new Trial(model, begun.problem()));
            begun.problem().endTrial();
            RobustFit fit = identifiable(begun);
            FitEstimates estimates = new FitEstimates(asked, free, nuisances, collinearities, fit, choices.confidence);
            estimates.hear(choices.words);
            FitResult result = new FitAssessment(track, cells, free, fit, before)
                    .result(car, estimates, choices.candidates, choices.confidence);
            model.end();
            return result;
        }

        private void tell(double[] u) {
            Map<FitParameter, Double> values = new EnumMap<>(FitParameter.class);
            for (int j = 0; j < free.size(); j++) {
                values.put(free.get(j).parameter(), free.get(j).value(u[j]));
            }
            choices.told.accept(values);
        }

        /** Laps to be driven, about. */
        private int expected() {
            // Of each setup to consider one lap, and one a step below and above in each direction.
            return (EXPECTED + EXPECTED_EACH * free.size()) * runs.size()
                    + choices.candidates.size() * (1 + 2 * (free.size() + nuisances.size()));
        }

        /** A lap, and the share of the least squares that comes with it: of many logged laps they take most of the time. */
        private final class Trial implements Runnable {
            private final FitModel model;
            private final FitProblem problem;
            private int tried;
            private double columns;

            Trial(FitModel model, FitProblem problem) {
                this.model = model;
                this.problem = problem;
            }

            @Override
            public void run() {
                model.tryLap(tried++ % runs.size());
                for (columns += (double) STEPS * problem.unknowns() / expected(); columns >= 1; columns--) {
                    problem.tryColumn();
                }
            }
        }

        private List<Lap> lapsAsGiven(FitModel model) {
            List<Lap> given = new ArrayList<>();
            for (int run = 0; run < runs.size(); run++) {
                try {
                    given.add(model.lap(new double[model.directions().size()], run));
                } catch (NoLapException e) {
                    throw new InvalidValueException(
                            "car " + car.name(),
                            "it has no lap of " + track.name() + (run == 0 ? "" : " as set up in run " + (run + 1))
                                    + ": " + e.getMessage(),
                            "see to the car first: a fit begins with a lap of the car as given");
                }
            }
            return given;
        }

        private List<LapCells> cells(List<LapValidator> validators) {
            double spacing = LEAST_CELL;
            for (int run = 0; run < runs.size(); run++) {
                for (DrivenLap lap : runs.get(run).laps()) {
                    validators.get(run).check(lap);
                    spacing = Math.max(spacing, LapCells.spacing(lap, 0.9));
                }
            }
            int count = (int) Math.max(LEAST_CELLS, Math.round(track.length() / spacing));
            List<LapCells> cells = new ArrayList<>();
            for (int run = 0; run < runs.size(); run++) {
                for (DrivenLap lap : runs.get(run).laps()) {
                    cells.add(new LapCells(lap, run, count, track.length()));
                }
            }
            return cells;
        }

        /** Fit in which one parameter after another is held until the laps tell those that are left. */
        private RobustFit identifiable(RobustFit first) {
            RobustFit fit = first;
            while (!free.isEmpty()) {
                Optional<Collinearities.WeakDirection> blind = fit.blind(BLIND);
                if (blind.isEmpty()) {
                    break;
                }
                fit = holding(fit, blind.get());
            }
            fit.run();
            while (!free.isEmpty()) {
                Optional<Collinearities.WeakDirection> weak =
                        Collinearities.weakest(fit.covariance().information(free.size()), LEAST_INFORMATION);
                if (weak.isEmpty()) {
                    break;
                }
                fit = holding(fit, weak.get());
                fit.run();
            }
            return fit;
        }

        private RobustFit holding(RobustFit fit, Collinearities.WeakDirection weak) {
            collinearities.add(Collinearities.held(weak, free, fit.parameters()));
            free.remove(weak.hold());
            return fit.without(weak.hold());
        }
    }
}
