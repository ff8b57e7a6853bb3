package dev.lapwright.results;

import dev.lapwright.car.Car;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.files.SafeFile;
import dev.lapwright.fit.DrivenLap;
import dev.lapwright.fit.FitNuisance;
import dev.lapwright.fit.FitParameter;
import dev.lapwright.fit.FitResult;
import dev.lapwright.logs.DrivenLapSelection;
import dev.lapwright.logs.DrivenLog;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Report of a fit to logged laps: estimates, corners and straights, and speeds along the lap.
 *
 * @param runs the first and what else was driven with the car set up otherwise, at least one
 * @param result what was found
 * @param name of the fitted car in its document
 */
public record FitReport(List<Run> runs, FitResult result, String name) {
    /**
     * Run of laps.
     *
     * @param subject the car, set up, and where
     * @param logs as they were read
     * @param pick the laps taken from them
     */
    public record Run(Subject subject, List<DrivenLog> logs, DrivenLapSelection pick) {
        public Run {
            logs = List.copyOf(logs);
        }
    }

    public FitReport {
        runs = List.copyOf(runs);
    }

    /** The car as set up in the first run, and where. */
    public Subject subject() {
        return runs.get(0).subject();
    }

    /** File of the estimates. */
    public static final String ESTIMATES = "estimates.csv";

    /** File of corners and straights. */
    public static final String PARTS = "parts.csv";

    /** File of speeds along the lap. */
    public static final String TRACE = "trace.csv";

    private static final int PERCENT = 100;
    /** Further runs worth a line. */
    private static final int NEXT_SHOWN = 4;

    private static final String USE =
            "A fit tells how this driver used this car on that day, with its tyres, track, wind and line in it: it is no"
                    + " measurement of the car. Try what it suggests in licensed practice, and keep to the maker's limits.";

    private static final Table<FitResult.Estimate> ESTIMATE = Table.<FitResult.Estimate>of(
                    "What the laps say of the car")
            .said(
                    "parameter",
                    "parameter",
                    "",
                    estimate -> field(estimate.parameter()),
                    estimate -> estimate.parameter().title())
            .with(Table.Trait.WORDS)
            .words("", "unit", estimate -> estimate.parameter().unit().symbol())
            .said("before", "before", "", FitResult.Estimate::before, fixed(FitResult.Estimate::before))
            .said("fitted", "fitted", "", FitResult.Estimate::value, fixed(FitResult.Estimate::value))
            .value("standardError", FitResult.Estimate::standardError)
            .said("lower", "from", "", FitResult.Estimate::lower, fixed(FitResult.Estimate::lower))
            .said("upper", "to", "", FitResult.Estimate::upper, fixed(FitResult.Estimate::upper))
            .number("", "change", "%", Numbers.signed(1), estimate -> PERCENT * estimate.change())
            .said("standing", "standing", "", FitReport::standing, FitReport::standingInWords)
            .with(Table.Trait.WORDS);

    private static final Table<FitResult.Estimate> ESTIMATES_AS_VALUES = Table.<FitResult.Estimate>of("Estimates")
            .all(ESTIMATE, estimate -> estimate)
            .value("atBound", FitResult.Estimate::atBound);

    private static final Table<FitResult.Estimate> ESTIMATES_AS_FIELDS = Table.<FitResult.Estimate>of("Estimates")
            .all(ESTIMATE, estimate -> estimate)
            .value("determined", FitResult.Estimate::determined)
            .value(
                    "leansOn",
                    estimate -> estimate.leans().stream().map(FitNuisance::word).toList())
            .value("atBound", FitResult.Estimate::atBound);

    /** The figures as they stand on a page, one row each. */
    public static final Table<FitResult.Estimate> FIGURES = Table.<FitResult.Estimate>of(
                    "What is known of the car now, with the interval of the confidence asked for")
            .words("", "Figure", estimate -> estimate.parameter().title())
            .text("Before", "", estimate -> FitWords.value(estimate.parameter(), estimate.before()))
            .text("Now", "", estimate -> FitWords.value(estimate.parameter(), estimate.value()))
            .text("From", "", estimate -> end(estimate, estimate.lower()))
            .text("To", "", estimate -> end(estimate, estimate.upper()))
            .words("", "Standing", FitReport::standingInWords);

    private static String end(FitResult.Estimate estimate, double value) {
        return Double.isNaN(value) ? "-" : Numbers.fixed(value, FitWords.decimals(estimate.parameter()));
    }

    private static final Table<FitResult.Nuisance> NUISANCES = Table.<FitResult.Nuisance>of(
                    "What was taken with doubt, one standard deviation, and what the laps make of it")
            .said(
                    "doubtOf",
                    "doubt of",
                    "",
                    nuisance -> nuisance.nuisance().word(),
                    nuisance -> nuisance.nuisance().title())
            .with(Table.Trait.WORDS)
            .said("unit", "unit", "", nuisance -> nuisance.nuisance().unit().symbol(), FitWords::unit)
            .with(Table.Trait.WORDS)
            .value("run", FitResult.Nuisance::run)
            .said("doubt", "before", "", FitResult.Nuisance::doubt, FitWords::doubt)
            .said("found", "found", "", FitResult.Nuisance::found, FitWords::found)
            .said("standardError", "after", "", FitResult.Nuisance::standardError, FitWords::error)
            .said("told", "standing", "", FitResult.Nuisance::told, FitWords::standing)
            .with(Table.Trait.WORDS);

    private static final Table<FitResult.Suspicion> SUSPICIONS = Table.<FitResult.Suspicion>of("What is odd")
            .value("cause", suspicion -> suspicion.cause().name().toLowerCase(Locale.ROOT))
            .value("what", FitResult.Suspicion::what)
            .value("value", FitResult.Suspicion::value)
            .value("oddness", FitResult.Suspicion::oddness);

    private static final Table<FitResult.Collinearity> TIES = Table.<FitResult.Collinearity>of("Not told apart")
            .value("notToldApart", FitReport::together)
            .value("held", tie -> tie.held().stream().map(FitReport::field).toList())
            .value("correlation", FitResult.Collinearity::correlation);

    private static final Table<FitResult.LapFit> LAPS = Table.<FitResult.LapFit>of("Laps")
            .value("name", fitted -> fitted.lap().name())
            .value("loggedLengthM", fitted -> fitted.lap().length())
            .value("distanceScale", fitted -> fitted.alignment().scale())
            .value("distanceOffsetM", fitted -> fitted.alignment().offset())
            .value("clockTimeS", FitResult.LapFit::loggedTime)
            .value("speedTimeS", FitResult.LapFit::speedTime)
            .value("countsPercent", fitted -> PERCENT * fitted.share())
            .value("leftOutPercent", fitted -> PERCENT * fitted.dropped())
            .value("liftedPercent", fitted -> PERCENT * fitted.lifted())
            .value("sameGearPercent", fitted -> PERCENT * fitted.gearAgreement())
            .value("longitudinalAccelerationRmsG", fitted -> LapTrace.g(fitted.accelerationRms()));

    private static final Table<FitResult.NextRun> NEXT = Table.<FitResult.NextRun>of("What a further run would tell")
            .words("setup", "one more run with", run -> run.candidate().name())
            .said(
                    "loadSensitivityStandardErrorPercent",
                    "load sensitivity then, give or take",
                    "%",
                    run -> run.standardErrors().getOrDefault(FitNuisance.LOAD_SENSITIVITY, Double.NaN),
                    run -> Numbers.fixed(
                            run.standardErrors().getOrDefault(FitNuisance.LOAD_SENSITIVITY, Double.NaN), 1))
            .said(
                    "gripBalanceStandardErrorPercent",
                    "grip balance then, give or take",
                    "%",
                    run -> run.standardErrors().getOrDefault(FitNuisance.GRIP_BALANCE, Double.NaN),
                    run -> Numbers.fixed(run.standardErrors().getOrDefault(FitNuisance.GRIP_BALANCE, Double.NaN), 2));

    private static final Table<FitResult.Word> WORDS = Table.<FitResult.Word>of(
                    "What was said of which axle gives up first")
            .value("corner", word -> word.word().corner())
            .value("bySteering", FitResult.Word::bySteering)
            .value("first", word -> word.word().first().name().toLowerCase(Locale.ROOT))
            .value("errorPercent", word -> PERCENT * word.word().error())
            .value("frontLessRearUseByLapsPercent", word -> PERCENT * word.before())
            .value("frontLessRearUsePercent", word -> PERCENT * word.after());

    private static final Table<FitResult.RunFit> RUNS = Table.<FitResult.RunFit>of("Runs")
            .value("settings", run -> run.car().settings())
            .value("loggedTimeS", FitResult.RunFit::loggedTime)
            .value("givenTimeS", run -> run.before().time())
            .value("fittedTimeS", run -> run.after().time());

    private static final Table<DrivenLog> LOGS = Table.<DrivenLog>of("Logs")
            .value("name", DrivenLog::name)
            .value("columns", DrivenLog::columns)
            .value("remarks", DrivenLog::remarks);

    private static final Table<FitResult.Passage> PASSAGE = Table.<FitResult.Passage>of("Passage")
            .value("timeS", FitResult.Passage::time)
            .value("entryKmh", passage -> LapTrace.kmh(passage.entrySpeed()))
            .value("slowestKmh", passage -> LapTrace.kmh(passage.leastSpeed()))
            .value("fastestKmh", passage -> LapTrace.kmh(passage.mostSpeed()))
            .value("exitKmh", passage -> LapTrace.kmh(passage.exitSpeed()));

    private static final Table<FitResult.Part> PARTS_AS_FIELDS = Table.<FitResult.Part>of("Corners and straights")
            .value("part", FitResult.Part::label)
            .value("startM", FitResult.Part::start)
            .value("endM", FitResult.Part::end)
            .value("logged", part -> PASSAGE.map(part.logged()))
            .value("given", part -> PASSAGE.map(part.before()))
            .value("fitted", part -> PASSAGE.map(part.fitted()));

    private static final Table<FitResult.Part> PARTS_IN_ROWS = Table.<FitResult.Part>of("Corners and straights")
            .words("part", "part", FitResult.Part::label)
            .number("startM", "from", "m", Numbers.fixed(0), FitResult.Part::start)
            .value("endM", FitResult.Part::end)
            .number(
                    "loggedTimeS",
                    "logged time",
                    "s",
                    Numbers.fixed(3),
                    part -> part.logged().time())
            .number(
                    "",
                    "to given",
                    "s",
                    Numbers.signed(3),
                    part -> part.logged().time() - part.before().time())
            .number("", "to fitted", "s", Numbers.signed(3), FitResult.Part::difference)
            .number(
                    "loggedEntryKmh",
                    "logged entry",
                    "km/h",
                    Numbers.fixed(1),
                    kmh(part -> part.logged().entrySpeed()))
            .with(Table.Trait.LESSER)
            .number(
                    "",
                    "fitted",
                    "km/h",
                    Numbers.fixed(1),
                    kmh(part -> part.fitted().entrySpeed()))
            .with(Table.Trait.LESSER)
            .value("loggedSlowestKmh", kmh(part -> part.logged().leastSpeed()))
            .value("loggedFastestKmh", kmh(part -> part.logged().mostSpeed()))
            .number("", "logged apex, top", "km/h", Numbers.fixed(1), kmh(part -> extreme(part, part.logged())))
            .number("", "fitted", "km/h", Numbers.fixed(1), kmh(part -> extreme(part, part.fitted())))
            .number(
                    "loggedExitKmh",
                    "logged exit",
                    "km/h",
                    Numbers.fixed(1),
                    kmh(part -> part.logged().exitSpeed()))
            .with(Table.Trait.LESSER)
            .number(
                    "",
                    "fitted",
                    "km/h",
                    Numbers.fixed(1),
                    kmh(part -> part.fitted().exitSpeed()))
            .with(Table.Trait.LESSER)
            .value("givenTimeS", part -> part.before().time())
            .value("givenEntryKmh", kmh(part -> part.before().entrySpeed()))
            .value("givenSlowestKmh", kmh(part -> part.before().leastSpeed()))
            .value("givenFastestKmh", kmh(part -> part.before().mostSpeed()))
            .value("givenExitKmh", kmh(part -> part.before().exitSpeed()))
            .value("fittedTimeS", part -> part.fitted().time())
            .value("fittedEntryKmh", kmh(part -> part.fitted().entrySpeed()))
            .value("fittedSlowestKmh", kmh(part -> part.fitted().leastSpeed()))
            .value("fittedFastestKmh", kmh(part -> part.fitted().mostSpeed()))
            .value("fittedExitKmh", kmh(part -> part.fitted().exitSpeed()));

    /** Name under which a parameter is asked for: {@code drag-area}. */
    public static String word(FitParameter parameter) {
        return parameter.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** What parameters have come to, before the fit is done. */
    public static String said(Map<FitParameter, Double> values) {
        return values.entrySet().stream()
                .map(one -> (word(one.getKey()) + " "
                                + Numbers.fixed(one.getValue(), FitWords.decimals(one.getKey())) + " "
                                + one.getKey().unit().symbol())
                        .strip())
                .collect(Collectors.joining(", "));
    }

    /** Name of a parameter's values, with their unit: {@code dragAreaM2}. */
    static String field(FitParameter parameter) {
        return switch (parameter) {
            case GRIP -> "gripFactor";
            case DRAG_AREA -> "dragAreaM2";
            case DOWNFORCE_AREA -> "downforceAreaM2";
            case POWER -> "powerFactor";
            case ROLLING_RESISTANCE -> "rollingResistance";
        };
    }

    private static Function<FitResult.Estimate, String> fixed(Function<FitResult.Estimate, Double> value) {
        return estimate -> Numbers.fixed(value.apply(estimate), FitWords.decimals(estimate.parameter()));
    }

    private static String standing(FitResult.Estimate estimate) {
        return estimate.identifiability().name().toLowerCase(Locale.ROOT);
    }

    private static String standingInWords(FitResult.Estimate estimate) {
        if (estimate.atBound()) {
            return "at the edge of the search";
        }
        return estimate.identifiability() == FitResult.Identifiability.LEANING
                        && !estimate.leans().isEmpty()
                ? "leans on " + FitWords.leans(estimate)
                : estimate.identifiability().label();
    }

    private static Map<String, Object> together(FitResult.Collinearity tie) {
        Map<String, Object> together = new LinkedHashMap<>();
        tie.together().forEach((parameter, change) -> together.put(field(parameter), change));
        return together;
    }

    private static Function<FitResult.Part, Double> kmh(Function<FitResult.Part, Double> speed) {
        return part -> LapTrace.kmh(speed.apply(part));
    }

    private static double extreme(FitResult.Part part, FitResult.Passage passage) {
        return part.isCorner() ? passage.leastSpeed() : passage.mostSpeed();
    }

    /** All that was found, for people, machines and files. */
    public Report report() {
        List<String> ties =
                result.doubts().collinearities().stream().map(FitWords::tie).toList();
        Table<Integer> trace = trace();
        Iterable<Integer> cells = Table.places(result.agreement().trace().count());
        Report report = subject().heading();
        int from = 0;
        for (int run = 0; run < runs.size(); run++) {
            int to = from + runs.get(run).pick().laps().size();
            heading(report, run, result.laps().subList(from, to));
            from = to;
        }
        report.gap()
                .line("What the laps say of the car (intervals of " + Numbers.plain(PERCENT * result.confidence())
                        + " %):")
                .rows(ESTIMATE, result.estimates());
        ties.forEach(tie -> report.gap().paragraph(tie));
        if (!result.doubts().nuisances().isEmpty()) {
            report.gap()
                    .line("Taken with doubt (one standard deviation), and what the laps make of it:")
                    .rows(NUISANCES, result.doubts().nuisances());
        }
        result.doubts().words().forEach(word -> report.gap().paragraph(FitWords.word(word)));
        if (!result.doubts().next().isEmpty()) {
            report.gap()
                    .paragraph(
                            "What one more run, of as many laps, would leave of the two doubts by which tyres decide between"
                                    + " setups (one standard deviation, expected; the best first):")
                    .rows(
                            NEXT,
                            result.doubts().next().stream().limit(NEXT_SHOWN).toList());
        }
        FitWords.culprits(result).ifPresent(culprits -> report.gap().paragraph(culprits));
        FitWords.drivenLine(
                        result,
                        runs.stream().flatMap(run -> run.logs().stream()).toList())
                .ifPresent(offer -> report.gap().paragraph(offer));
        agreement(report.gap());
        report.gap()
                .paragraph(
                        "By corner and straight, logged against the fitted car (minus is where the laps are faster):")
                .rows(PARTS_IN_ROWS, result.agreement().parts())
                .gap();
        result.notes().forEach(report::point);
        cautions().forEach(report::caution);
        return fields(report, result)
                .field("trace", new Report().columns(trace, cells).fields())
                .field("setup", subject().setup().name())
                .field("line", subject().line().tree())
                .field(
                        "logs",
                        LOGS,
                        runs.stream().flatMap(run -> run.logs().stream()).toList())
                .field(
                        "leftOut",
                        runs.stream()
                                .flatMap(run -> run.pick().leftOut().stream())
                                .toList())
                .field("tiesInWords", ties)
                .field("cautions", cautions())
                .csv(ESTIMATES, ESTIMATES_AS_VALUES, result.estimates())
                .csv(PARTS, PARTS_IN_ROWS, result.agreement().parts())
                .csv(TRACE, trace, cells);
    }

    private void heading(Report report, int run, List<FitResult.LapFit> laps) {
        if (run > 0) {
            report.item("Run " + (run + 1), "set up as in the first but for " + difference(run));
        }
        for (DrivenLog log : runs.get(run).logs()) {
            report.item("Log", SafeFile.path(log.name()).getFileName() + ": " + log.columns());
            log.remarks().forEach(remark -> report.item("", remark));
        }
        report.item("Laps", String.join("; ", laps.stream().map(FitReport::lap).toList()));
        runs.get(run).pick().leftOut().forEach(left -> report.item("Left out", left));
    }

    /** What is set otherwise in a run than in the first. */
    private String difference(int run) {
        Subject first = subject();
        Subject other = runs.get(run).subject();
        List<String> changed = other.setup().settings().entrySet().stream()
                .filter(setting -> !first.setup()
                        .settings()
                        .getOrDefault(setting.getKey(), Double.NaN)
                        .equals(setting.getValue()))
                .map(setting -> setting.getKey() + "=" + Numbers.plain(setting.getValue()))
                .collect(Collectors.toCollection(ArrayList::new));
        if (!other.day().equals(first.day())) {
            changed.add("the air");
        }
        return changed.isEmpty() ? "nothing" : String.join(", ", changed);
    }

    /** What a fit found, for machines, without what a document begins with. */
    public static Map<String, Object> found(FitResult found) {
        return BriefSummary.headless(fields(new Report(), found).fields());
    }

    /** Figures told, each with its interval and what it was before, and those that are not. */
    public static String figures(FitResult found) {
        List<String> told = new ArrayList<>();
        List<String> untold = new ArrayList<>();
        for (FitResult.Estimate estimate : found.estimates()) {
            FitParameter parameter = estimate.parameter();
            if (estimate.identifiability() == FitResult.Identifiability.HELD) {
                untold.add(parameter.title());
            } else {
                told.add(FitWords.value(estimate) + FitWords.interval(estimate, found.confidence()) + ", "
                        + Numbers.fixed(estimate.before(), FitWords.decimals(parameter)) + " before");
            }
        }
        int laps = found.laps().size();
        return "Fitted to " + laps + (laps == 1 ? " lap" : " laps") + ": " + String.join("; ", told)
                + (untold.isEmpty() ? "." : ". Not told: " + String.join(", ", untold) + ".");
    }

    /** Which is the likeliest culprit of what is odd; empty if nothing is. */
    public static Optional<String> culprits(FitResult found) {
        return FitWords.culprits(found);
    }

    private static Report fields(Report report, FitResult result) {
        FitResult.Residuals residuals = result.agreement().residuals();
        List<Object> correlation = new ArrayList<>();
        for (double[] row : result.doubts().correlation()) {
            correlation.add(InputHash.list(row));
        }
        return report.fields(ResultHeader.of("fit/2", hash(result), result.car(), result.track(), result.conditions()))
                .field("confidencePercent", PERCENT * result.confidence())
                .field("estimates", ESTIMATES_AS_FIELDS, result.estimates())
                .field("correlation", correlation)
                .field("nuisances", NUISANCES, result.doubts().nuisances())
                .field("words", WORDS, result.doubts().words())
                .field("nextRuns", NEXT, result.doubts().next())
                .field("suspicions", SUSPICIONS, result.doubts().suspicions())
                .field("ties", TIES, result.doubts().collinearities())
                .field("loggedTimeS", result.loggedTime())
                .field("givenTimeS", result.before().time())
                .field("fittedTimeS", result.after().time())
                .field("rmsGivenKmh", LapTrace.kmh(residuals.rmsBefore()))
                .field("rmsFittedKmh", LapTrace.kmh(residuals.rmsAfter()))
                .field("cellM", residuals.cell())
                .field("residualPersistence", residuals.autocorrelation())
                .field("bandwidthCells", residuals.correlationCells())
                .field("effectiveSamples", residuals.effectiveSamples())
                .field("laps", LAPS, result.laps())
                .field("runs", RUNS, result.runs())
                .field("doubt", DocumentWriter.tree(result.doubts().car()))
                .field("parts", PARTS_AS_FIELDS, result.agreement().parts())
                .field("notes", result.notes());
    }

    /** Logged and simulated speed along the lap. */
    private Table<Integer> trace() {
        FitResult.Trace trace = result.agreement().trace();
        Map<String, double[]> columns = new LinkedHashMap<>();
        columns.put("distanceM", trace.distance());
        columns.put("loggedKmh", kmh(trace.logged()));
        columns.put("givenKmh", kmh(trace.before()));
        columns.put("fittedKmh", kmh(trace.after()));
        columns.put("weight", trace.weight());
        return Table.of("Speed along the lap", columns);
    }

    private static double[] kmh(double[] speed) {
        double[] kmh = new double[speed.length];
        for (int i = 0; i < kmh.length; i++) {
            kmh[i] = LapTrace.kmh(speed[i]);
        }
        return kmh;
    }

    /** Hash of the car as set up, conditions, circuit, the laps driven, what was fitted and with which confidence. */
    static String hash(FitResult result) {
        List<Object> laps = new ArrayList<>();
        for (FitResult.LapFit fitted : result.laps()) {
            DrivenLap lap = fitted.lap();
            laps.add(List.of(
                    InputHash.list(lap.distance()),
                    InputHash.list(lap.speed()),
                    InputHash.list(lap.time()),
                    InputHash.list(lap.throttle()),
                    InputHash.list(lap.brake()),
                    InputHash.list(lap.gear()),
                    InputHash.list(lap.longitudinalAcceleration()),
                    InputHash.list(lap.lateralAcceleration()),
                    InputHash.list(lap.steering().angle()),
                    InputHash.list(lap.steering().yawRate())));
        }
        return InputHash.of(result.car(), result.conditions(), result.track())
                .with("laps", laps)
                .with(
                        "words",
                        result.doubts().words().stream()
                                .map(FitResult.Word::word)
                                .map(word -> List.of(word.corner(), word.first().name(), word.error()))
                                .toList())
                .with(
                        "furtherRuns",
                        result.runs().stream()
                                .skip(1)
                                .map(run -> List.of(
                                        run.car().settings(),
                                        DocumentWriter.tree(
                                                run.after().vehicle().conditions())))
                                .toList())
                .with(
                        "fitted",
                        result.estimates().stream()
                                .map(estimate -> estimate.parameter().name())
                                .toList())
                .with(
                        "doubts",
                        result.doubts().nuisances().stream()
                                .map(nuisance -> List.of(nuisance.nuisance().word(), nuisance.doubt()))
                                .toList())
                .with("confidence", result.confidence())
                .sha256();
    }

    /** The car with the fitted values as its document describes it; its description tells where they come from. */
    public Car fittedCar() {
        return result.document(name, FitWords.description(subject(), result));
    }

    private static String lap(FitResult.LapFit fitted) {
        double time = Double.isFinite(fitted.loggedTime()) ? fitted.loggedTime() : fitted.speedTime();
        return Report.verbatim(fitted.lap().name()) + " in " + Numbers.lapTime(time) + ", "
                + Numbers.percent(fitted.share()) + " % of it counts";
    }

    private void agreement(Report report) {
        report.item("Lap time", times(result.runs().get(0)));
        for (int run = 1; run < result.runs().size(); run++) {
            report.item("Run " + (run + 1), times(result.runs().get(run)));
        }
        report.item(
                "Speed",
                "logged less simulated, root mean square: "
                        + Numbers.kmh(result.agreement().residuals().rmsBefore()) + " km/h as given, "
                        + Numbers.kmh(result.agreement().residuals().rmsAfter()) + " km/h fitted; as good as "
                        + Numbers.fixed(result.agreement().residuals().effectiveSamples(), 0)
                        + " independent readings");
    }

    private static String times(FitResult.RunFit run) {
        return "logged " + Report.strong(Numbers.lapTime(run.loggedTime())) + ", the car as given "
                + Numbers.lapTime(run.before().time()) + ", fitted "
                + Report.strong(Numbers.lapTime(run.after().time()));
    }

    /** What to think of before the figures are used. */
    private List<String> cautions() {
        List<String> cautions = new ArrayList<>();
        cautions.add(USE);
        for (FitResult.Estimate estimate : result.estimates()) {
            if (estimate.parameter() == FitParameter.GRIP && estimate.value() < 1) {
                cautions.add("A grip of " + FitWords.value(FitParameter.GRIP, estimate.value())
                        + " may be the driver as well as the car: an average lap is driven below the limit.");
            }
            if (estimate.atBound()) {
                cautions.add(
                        FitWords.capital(estimate.parameter().title()) + " ended at the edge of what was searched, "
                                + FitWords.value(estimate.parameter(), estimate.value())
                                + ": see to the car, the circuit and the units of the log.");
            }
        }
        return cautions;
    }
}
