package dev.lapwright.results;

import dev.lapwright.documents.DocumentKind;
import dev.lapwright.evidence.CleanLaps;
import dev.lapwright.evidence.DayPlan;
import dev.lapwright.evidence.Evidence;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.evidence.NormalMixture;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.logs.LapLogFile;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Report of what a lap log shows of a change of setup: the verdict, the laps that count, the day's course, the difference under
 * each assumption, and a plan of runs that would tell.
 *
 * @param file the log as it was read
 * @param result what it shows
 * @param drawn cars by which the doubt of the model's prediction was found; 0 if it was given, or the usual one was taken
 */
public record EvidenceReport(LapLogFile file, EvidenceResult result, int drawn) {
    /** The same with a prediction that was given, or with none. */
    public EvidenceReport(LapLogFile file, EvidenceResult result) {
        this(file, result, 0);
    }

    /** Pace of each setup. */
    static final Table<EvidenceResult.SetupPace> PACES = Table.<EvidenceResult.SetupPace>of("Pace of each setup")
            .names("setup", "setup", EvidenceResult.SetupPace::setup)
            .value("laps", EvidenceResult.SetupPace::logged)
            .number("runs", "runs", "", Numbers.fixed(0), EvidenceResult.SetupPace::runs)
            .number("cleanLaps", "clean laps", "", Numbers.fixed(0), EvidenceResult.SetupPace::clean)
            .number("bestS", "best", "m:ss.mmm", Numbers::lapTime, EvidenceResult.SetupPace::best)
            .number("medianS", "median", "m:ss.mmm", Numbers::lapTime, EvidenceResult.SetupPace::median)
            .number("meanS", "mean", "m:ss.mmm", Numbers::lapTime, EvidenceResult.SetupPace::mean)
            .number("spreadS", "spread", "s", Numbers.fixed(3), EvidenceResult.SetupPace::spread)
            .number("consistencyPercent", "consistency", "%", Numbers.fixed(2), pace -> 100 * pace.consistency())
            .with(Table.Trait.LESSER)
            .number("lapToLapS", "lap to lap", "s", Numbers.fixed(3), EvidenceResult.SetupPace::lapToLap);

    private record Assumed(EvidenceResult.Assumption assumption, EvidenceResult.Difference difference) {}

    private static final Table<Assumed> DIFFERENCES = Table.<Assumed>of("Difference under each assumption")
            .value("assumption", row -> word(row.assumption))
            .words("", "assuming", row -> row.assumption.label())
            .number("differenceS", "difference", "s", EvidenceReport::signed, row -> row.difference.mean())
            .number(
                    "differenceLowS",
                    "95 % from",
                    "s",
                    EvidenceReport::signed,
                    row -> row.difference.once().low())
            .number(
                    "differenceHighS",
                    "to",
                    "s",
                    EvidenceReport::signed,
                    row -> row.difference.once().high())
            .number(
                    "differenceRepeatedLowS",
                    "any look from",
                    "s",
                    EvidenceReport::signed,
                    row -> row.difference.repeated().low())
            .number(
                    "differenceRepeatedHighS",
                    "to",
                    "s",
                    EvidenceReport::signed,
                    row -> row.difference.repeated().high())
            .number("fasterPercent", "faster", "%", Numbers.fixed(0), row -> 100 * row.difference.faster());

    private static final Table<DayPlan.Option> PLAN = Table.<DayPlan.Option>of("What runs would buy")
            .number("runs", "runs", "", Numbers.fixed(0), DayPlan.Option::runs)
            .words("order", "order", option -> String.join("-", option.order().split("")))
            .number("lapsPerRun", "laps each", "", Numbers.fixed(0), DayPlan.Option::lapsPerRun)
            .number("laps", "laps in all", "", Numbers.fixed(0), DayPlan.Option::laps)
            .number("halfWidthS", "give or take", "s", Numbers.fixed(2), DayPlan.Option::half)
            .number("chancePercent", "shown in", "%", Numbers.fixed(0), option -> 100 * option.chance());

    private static String signed(double seconds) {
        return Numbers.signed(seconds, 3);
    }

    /** All that the log shows, for people, machines and files. */
    public Report report() {
        CleanLaps laps = result.laps();
        TimingLog log = laps.log();
        Report report = new Report()
                .title(
                        Report.verbatim(file.name()),
                        ", " + count(log.laps().size(), "lap") + " in " + count(log.runs(), "run"))
                .gap()
                .paragraph(verdict(result))
                .gap()
                .item("Columns", file.columns());
        cleanLaps(report);
        report.item("Course", course()).gap().rows(PACES, result.paces());
        result.comparison().filter(seen -> seen.difference().isPresent()).ifPresent(seen -> comparison(report, seen));
        result.plan().ifPresent(plan -> plan(report, plan));
        return report.fields(fields()).csv("laps.csv", laps(), lapNumbers());
    }

    private static String count(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }

    private void cleanLaps(Report report) {
        CleanLaps laps = result.laps();
        CleanLaps.Rule rule = laps.rule();
        List<String> out = new ArrayList<>();
        for (CleanLaps.Status status : CleanLaps.Status.values()) {
            if (status != CleanLaps.Status.CLEAN && laps.count(status) > 0) {
                boolean noun = status == CleanLaps.Status.OUT || status == CleanLaps.Status.IN;
                out.add(noun ? count(laps.count(status), status.label()) : laps.count(status) + " " + status.label());
            }
        }
        report.item(
                "Clean laps",
                laps.clean().length + " of " + laps.log().laps().size()
                        + (out.isEmpty() ? "" : "; not " + String.join(", ", out)));
        List<String> limits = new ArrayList<>();
        for (String setup : laps.log().setups()) {
            limits.add(Report.verbatim(setup) + " " + Numbers.lapTime(laps.slowLimit(setup)));
        }
        String first = rule.warmUpLaps() == 0
                ? ""
                : rule.warmUpLaps() == 1
                        ? ", the first of each run"
                        : ", the first " + rule.warmUpLaps() + " of each run";
        report.item(
                "Rule",
                "left out are flagged laps" + first
                        + ", and those slower than their setup's median by more than "
                        + Numbers.plain(rule.slowLimit())
                        + " robust standard deviations (MAD/0.6745; at least 0.5 %): beyond "
                        + String.join(", ", limits));
        for (int lap : laps.oddlyFast()) {
            report.item(
                    "Look at",
                    "lap " + laps.log().laps().get(lap).number()
                            + " counts, but is oddly fast: a tow, a short cut, a fault of timing?");
        }
    }

    private String course() {
        EvidenceResult.Course course = result.course();
        if (course.equals(EvidenceResult.Course.FLAT)) {
            return "none taken out: there are too few laps to tell it";
        }
        return slope(course.lapSlope()) + " from lap to lap of a run; " + slope(course.drift())
                + " through the session, where it is half over: fuel, tyres, driver and road. Taken out of means and spreads,"
                + " which stand for lap " + Numbers.fixed(course.lapOfRun(), 1) + " of a run";
    }

    private static String slope(EvidenceResult.Slope slope) {
        return signed(slope.value()) + " s a lap (95 %: " + signed(slope.low()) + " to " + signed(slope.high()) + ")";
    }

    private void comparison(Report report, EvidenceResult.Comparison seen) {
        Evidence.Prior prior = result.how().prior();
        report.gap()
                .paragraph(Report.verbatim(seen.after().setup()) + " less "
                        + Report.verbatim(seen.before().setup())
                        + ", minus is faster; 95 % intervals," + " looked at once, and for up to " + Evidence.LOOKS
                        + " looks with laps added in between:")
                .rows(DIFFERENCES, assumed(seen));
        seen.scatter()
                .ifPresent(scatter -> report.gap()
                        .item(
                                "Scatter",
                                Numbers.fixed(scatter.lap(), 2) + " s from lap to lap, neighbours alike by "
                                        + Numbers.fixed(scatter.correlation(), 1) + "; runs of one setup differ by "
                                        + Numbers.fixed(scatter.run(), 2) + " s, supposed before "
                                        + Numbers.plain(prior.runToRun()) + " s to a factor of 1.8 either way (common"
                                        + " practice, no source); by these laps alone (REML) "
                                        + Numbers.fixed(scatter.runAlone(), 2) + " s"));
        seen.together().ifPresent(together -> report.item("Model", together(seen, together)));
    }

    private String together(EvidenceResult.Comparison seen, NormalMixture together) {
        EvidenceResult.Difference difference = seen.difference().orElseThrow();
        double predicted = result.how().predicted().orElseThrow();
        return "predicted " + Numbers.signed(predicted, 2) + " give or take "
                + Numbers.fixed(1.96 * result.how().doubt(), 2)
                + " s"
                + (result.how().predictedDoubt().isPresent()
                        ? drawn > 0 ? " (as the change stands on " + drawn + " cars that this one may be)" : ""
                        : " (a doubt of " + Numbers.fixed(100 * Evidence.DOUBT, 0) + " %: common practice, no source)")
                + ", seen " + Numbers.signed(difference.mean(), 2) + " give or take "
                + Numbers.fixed(difference.once().half(), 2) + ", together " + Numbers.signed(together.mean(), 2)
                + " give or take "
                + Numbers.fixed(together.interval(0.05).half(), 2) + " (95 %; weighted by inverse variances)";
    }

    private void plan(Report report, DayPlan plan) {
        boolean further = result.comparison().isPresent();
        report.gap()
                .paragraph("What " + (further ? "further runs" : "a day of two setups") + " would buy, A "
                        + (further ? "being " + setup(true) + " and B " + setup(false) : "being the setup of this log")
                        + ": clean laps of each run, laps in all with out and in laps, what the difference would be known to,"
                        + " and how often a true "
                        + Numbers.fixed(plan.target(), 2) + " s would be called real:")
                .rows(PLAN, plan.options());
    }

    private String setup(boolean before) {
        EvidenceResult.Comparison seen = result.comparison().orElseThrow();
        return before
                ? Report.verbatim(seen.before().setup())
                : Report.verbatim(seen.after().setup());
    }

    private static List<Assumed> assumed(EvidenceResult.Comparison seen) {
        return seen.differences().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(entry -> new Assumed(entry.getKey(), entry.getValue()))
                .toList();
    }

    /** The plain answer. */
    public static String verdict(EvidenceResult result) {
        if (result.comparison().isEmpty()) {
            return Report.strong("Nothing to compare:") + " all laps are with one setup, "
                    + Report.verbatim(result.paces().get(0).setup()) + ". Name the setups in a column setup."
                    + result.plan().map(plan -> advice(plan, "")).orElse("");
        }
        EvidenceResult.Comparison seen = result.comparison().get();
        if (seen.difference().isEmpty()) {
            return Report.strong("Too few laps to tell:") + " " + seen.before().clean() + " clean with "
                    + Report.verbatim(seen.before().setup()) + " and "
                    + seen.after().clean() + " with "
                    + Report.verbatim(seen.after().setup()) + ", where no fewer than " + Evidence.LEAST_LAPS
                    + " of each are compared.";
        }
        EvidenceResult.Difference difference = seen.difference().get();
        List<String> sentences = new ArrayList<>();
        switch (seen.verdict().finding()) {
            case REAL ->
                sentences.add(Report.strong("Real:") + " "
                        + Report.verbatim(seen.after().setup()) + " is "
                        + (difference.mean() < 0 ? "faster" : "slower") + " than "
                        + Report.verbatim(seen.before().setup()) + " by "
                        + Numbers.fixed(Math.abs(difference.mean()), 2) + " s a lap, give or take "
                        + Numbers.fixed(difference.once().half(), 2)
                        + ", under each assumption looked at, and for up to " + Evidence.LOOKS + " looks.");
            case SMALLER ->
                sentences.add(Report.strong("Smaller than looked for:") + " if there is a difference, it lies"
                        + " between " + Numbers.signed(difference.repeated().low(), 2) + " and "
                        + Numbers.signed(difference.repeated().high(), 2) + " s; one of "
                        + Numbers.fixed(seen.verdict().target(), 2) + " s is not there.");
            case OPEN -> open(result, seen, sentences);
        }
        result.how()
                .predicted()
                .ifPresent(predicted -> sentences.add(
                        difference.once().holds(predicted)
                                ? "The model's prediction fits the laps."
                                : "The model predicted something else: believe the laps, and look for what it does not"
                                        + " know."));
        return String.join(" ", sentences);
    }

    private static void open(EvidenceResult result, EvidenceResult.Comparison seen, List<String> sentences) {
        EvidenceResult.Difference difference = seen.difference().orElseThrow();
        sentences.add(Report.strong("Not decided:") + " "
                + Report.verbatim(seen.after().setup()) + " looks "
                + Numbers.fixed(Math.abs(difference.mean()), 2) + " s "
                + (difference.mean() < 0 ? "faster" : "slower") + " than "
                + Report.verbatim(seen.before().setup())
                + ", give or take " + Numbers.fixed(difference.once().half(), 2) + "; the chance that it is "
                + (difference.mean() < 0 ? "faster" : "slower") + " at all is "
                + Numbers.fixed(100 * (difference.mean() < 0 ? difference.faster() : 1 - difference.faster()), 0)
                + " %.");
        List<EvidenceResult.Assumption> dissent = seen.verdict().dissent();
        if (!dissent.isEmpty()) {
            sentences.add("It is not called real because these laps do not say so assuming "
                    + String.join(
                            ", or ",
                            dissent.stream()
                                    .map(EvidenceResult.Assumption::label)
                                    .toList())
                    + ".");
        }
        EvidenceResult.Difference half = seen.differences().get(EvidenceResult.Assumption.RUNS_HALF);
        EvidenceResult.Difference twice = seen.differences().get(EvidenceResult.Assumption.RUNS_TWICE);
        if (half != null && twice != null) {
            sentences.add("With " + count(seen.runs(), "run")
                    + " this leans on what is supposed of how runs differ: half as much makes it give or take "
                    + Numbers.fixed(half.once().half(), 2) + ", twice as much "
                    + Numbers.fixed(twice.once().half(), 2) + ".");
        }
        if (seen.runs() == 2) {
            sentences.add("Tyres, road, air and driver changed with the setup; only running "
                    + Report.verbatim(seen.before().setup()) + " again can tell them apart.");
        }
        result.plan().ifPresent(plan -> sentences.add(advice(plan, " more").trim()));
    }

    private static String advice(DayPlan plan, String more) {
        String change = Numbers.fixed(plan.target(), 2) + " s";
        Optional<DayPlan.Option> best = plan.recommended();
        if (best.isPresent()) {
            return " To show a change of " + change + " four times in five: " + runs(best.get(), more) + ".";
        }
        return plan.options().stream()
                .max(Comparator.comparingDouble(DayPlan.Option::chance))
                .map(option -> " No plan looked at shows a change of " + change + " four times in five; "
                        + runs(option, more) + " would in " + Numbers.fixed(100 * option.chance(), 0) + " of 100 days.")
                .orElse("");
    }

    private static String runs(DayPlan.Option option, String more) {
        return option.runs() + more + " runs of " + option.lapsPerRun() + " clean laps, in the order "
                + String.join("-", option.order().split(""));
    }

    /** All that the log shows, for machines. */
    public Map<String, Object> fields() {
        Evidence how = result.how();
        return new Report()
                .field(DocumentKind.MARK, "evidence/3")
                .field("version", ResultHeader.version())
                .field("log", file.name())
                .field("columns", file.columns())
                .field("rule", rule())
                .field(
                        "prior",
                        new Report()
                                .field("runToRunS", how.prior().runToRun())
                                .field("runToRunLogDeviation", Evidence.Prior.LOG_RUN_TO_RUN)
                                .field("lapSlopeSPerLap", how.prior().lapSlope())
                                .field("driftSPerLap", how.prior().drift())
                                .field("bendSPerLap2", how.prior().bend())
                                .field("mostCorrelation", how.prior().mostCorrelation())
                                .fields())
                .field("course", courseFields())
                .field("setups", PACES, result.paces())
                .field("comparison", result.comparison().map(this::fields).orElse(null))
                .field(
                        "plan",
                        result.plan().map(plan -> PLAN.maps(plan.options())).orElse(null))
                .field("laps", lapFields(), lapNumbers())
                .fields();
    }

    private Map<String, Object> rule() {
        CleanLaps laps = result.laps();
        Map<String, Object> limits = new LinkedHashMap<>();
        laps.log().setups().forEach(setup -> limits.put(setup, laps.slowLimit(setup)));
        Map<String, Object> counts = new LinkedHashMap<>();
        for (CleanLaps.Status status : CleanLaps.Status.values()) {
            counts.put(status.label(), laps.count(status));
        }
        return new Report()
                .field("warmUpLaps", laps.rule().warmUpLaps())
                .field("slowLimitRobustDeviations", laps.rule().slowLimit())
                .field("slowLimitS", limits)
                .field("counts", counts)
                .fields();
    }

    private Map<String, Object> courseFields() {
        EvidenceResult.Course course = result.course();
        return new Report()
                .field("lapSlopeSPerLap", slopeFields(course.lapSlope()))
                .field("driftSPerLap", slopeFields(course.drift()))
                .field("bendSPerLap2", slopeFields(course.bend()))
                .field("lapOfRun", course.lapOfRun())
                .field("lapOfSession", course.lapOfSession())
                .fields();
    }

    private static Map<String, Object> slopeFields(EvidenceResult.Slope slope) {
        return new Report()
                .field("value", slope.value())
                .field("low", slope.low())
                .field("high", slope.high())
                .fields();
    }

    private Map<String, Object> fields(EvidenceResult.Comparison seen) {
        Evidence how = result.how();
        return new Report()
                .field("before", seen.before().setup())
                .field("after", seen.after().setup())
                .field("finding", word(seen.verdict().finding()))
                .field("differenceLookedForS", seen.verdict().target())
                .field("looks", Evidence.LOOKS)
                .field("differences", DIFFERENCES, assumed(seen))
                .field(
                        "dissent",
                        seen.verdict().dissent().stream()
                                .map(EvidenceReport::word)
                                .toList())
                .field("scatter", seen.scatter().map(EvidenceReport::fields).orElse(null))
                .field("differencePredictedS", how.predicted().orElse(Double.NaN))
                .field("predictedDoubtS", how.predicted().isPresent() ? how.doubt() : Double.NaN)
                .field("predictedOnDrawnCars", drawn)
                .field(
                        "differenceTogetherS",
                        seen.together().map(NormalMixture::mean).orElse(null))
                .field(
                        "togetherDoubtS",
                        seen.together().map(NormalMixture::deviation).orElse(null))
                .fields();
    }

    private static Map<String, Object> fields(EvidenceResult.Scatter scatter) {
        return new Report()
                .field("lapS", scatter.lap())
                .field("runS", scatter.run())
                .field("runAloneS", scatter.runAlone())
                .field("correlation", scatter.correlation())
                .field("degreesOfFreedomAlone", scatter.freedom().orElse(Double.NaN))
                .fields();
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private List<Integer> lapNumbers() {
        List<Integer> numbers = new ArrayList<>();
        Table.places(result.laps().log().laps().size()).forEach(numbers::add);
        return numbers;
    }

    private Table<Integer> laps() {
        TimingLog log = result.laps().log();
        return Table.<Integer>of("Laps as judged")
                .value("lap", i -> log.laps().get(i).number())
                .value("run", i -> log.run(i) + 1)
                .value("lapOfRun", log::runLap)
                .value("timeS", i -> log.laps().get(i).time())
                .value("timeWithoutCourseS", i -> result.course().without(log, i))
                .value("setup", i -> log.laps().get(i).setup())
                .value("status", i -> result.laps().status(i).label());
    }

    private Table<Integer> lapFields() {
        TimingLog log = result.laps().log();
        return Table.<Integer>of("Laps as judged")
                .value("lap", i -> log.laps().get(i).number())
                .value("run", i -> log.run(i) + 1)
                .value("timeS", i -> log.laps().get(i).time())
                .value("setup", i -> log.laps().get(i).setup())
                .value("status", i -> result.laps().status(i).label());
    }
}
