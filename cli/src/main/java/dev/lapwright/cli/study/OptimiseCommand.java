package dev.lapwright.cli.study;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Setup;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawing;
import dev.lapwright.charts.sweep.LapTimeFront;
import dev.lapwright.cli.option.CarAndCircuit;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.DemoNames;
import dev.lapwright.cli.option.DoubtOptions;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.option.OpinionOption;
import dev.lapwright.cli.option.ResumeOption;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.BestSoFar;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ProgressBar;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.DecimalText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.Report;
import dev.lapwright.results.LineCheck;
import dev.lapwright.results.OptimisationReport;
import dev.lapwright.results.Standings;
import dev.lapwright.results.Subject;
import dev.lapwright.results.Vary;
import dev.lapwright.study.StudyMemory;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.lines.OwnLinesResult;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.optimise.OptimisationLimits;
import dev.lapwright.study.optimise.OptimisationResult;
import dev.lapwright.study.robust.FirmChanges;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.sweep.SweepAxis;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Command {@code optimise}: the best setup on legal steps. */
@Command(
        name = "optimise",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Looks for the best setup on the legal steps of the car's adjustments."},
        customSynopsis = {
            "lapwright optimise CAR CIRCUIT [--over NAMES] [--circuit NAME=WEIGHT]...",
            "                   [--setup SETUP] [-s NAME=VALUE]... [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright optimise gt-talvex castelvane --over rear-wing,rake,front-bar --min-top-speed-kmh 278",
            "      Three adjustments, with no less than a top speed; the rest stays as it is.",
            "  lapwright optimise touring-merrow harrowmere --over rear-wing,rear-bar --out best",
            "      Two adjustments; result, table of setups, chart and best setup go to the folder best."
        })
public final class OptimiseCommand extends StudyCommand<OptimisationReport> {
    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nSearch:%n")
    private final Search search = new Search();

    @ArgGroup(validate = false, heading = "%nLimits that the setup must keep on every circuit and day:%n")
    private final Limits limits = new Limits();

    @ArgGroup(validate = false, heading = "%nSetup that it is compared with, and from which it starts:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineOptions line = new LineOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nSecond opinion:%n")
    private final OpinionOption opinion = new OpinionOption();

    @ArgGroup(validate = false, heading = "%nLong work:%n")
    private final ResumeOption resume = new ResumeOption();

    @ArgGroup(validate = false, heading = "%nDoubt (of the best setup):%n")
    private final DoubtOptions doubt = new DoubtOptions();

    public OptimiseCommand(Console console) {
        super(
                console,
                new StudyFiles<>(OptimisationReport::report)
                        .json("optimisation.json")
                        .csv("setups.csv")
                        .text("best-setup.json", OptimiseCommand::setup)
                        .onlyInFolder()
                        .chart("lap-time-top-speed.svg", OptimiseCommand::chart)
                        .option("--chart", "Draws lap time against top speed of all setups driven as .svg or .png.")
                        .out(
                                "A folder for everything: result, table of setups, chart, and the best setup as a document"
                                        + " for --setup. Or one file: .json for the result, .csv for the table, .svg or .png for the chart."));
    }

    /** What is searched, for what, and how. */
    public static final class Search {
        @Option(
                names = "--over",
                paramLabel = "NAMES",
                split = ",",
                description =
                        "Adjustments to search: rear-wing,rake,…. Without it all of the car's but those of fuel, mass,"
                                + " power, compound, tyre pressure, brake balance, toe and overrun locking, of which a lap time"
                                + " says too little.")
        List<String> over = new ArrayList<>();

        @Option(
                names = "--circuit",
                paramLabel = "NAME=WEIGHT",
                completionCandidates = DemoNames.Circuits.class,
                description =
                        "Another circuit that the setup is to serve, and how much a lap of it counts beside one of"
                                + " CIRCUIT, which counts 1; may be repeated.")
        List<String> circuits = new ArrayList<>();

        @Option(
                names = "--range",
                paramLabel = "NAME=VALUES",
                description = "Several days that the setup is to serve: one of the conditions and its values, as in"
                        + " conditions.airTempC=5,35; may be repeated, every combination is then a day.")
        List<String> ranges = new ArrayList<>();

        @Option(
                names = "--worst",
                description = "With --range: makes the day on which it is worth least as fast as it can, not the mean.")
        boolean worst;

        @Option(
                names = "--seed",
                paramLabel = "N",
                description =
                        "Seed of the random numbers, of the search between the steps and of --draws; 1 if left out.")
        Long seed;

        @Option(
                names = "--threads",
                paramLabel = "N",
                description = "How many laps are driven at the same time; one for each processor core if left out.")
        Integer threads;
    }

    /** What a setup must keep. */
    public static final class Limits {
        @Option(names = "--min-top-speed-kmh", paramLabel = "V", description = "Top speed at least, km/h.")
        Double minTopSpeedKmh;

        @Option(
                names = "--balance-percent",
                paramLabel = "FROM:TO",
                description =
                        "Limit balance within a band, percent: share of grip that the front axle takes less that of"
                                + " the rear axle, where corners are driven at the limit. Above 0 the front axle is first at its limit.")
        String balancePercent;

        @Option(
                names = "--min-ride-height-mm",
                paramLabel = "H",
                description = "Ride height of either axle at the top speed at least, mm, platform settled.")
        Double minRideHeightMm;

        @Option(
                names = "--no-upshift-in-corner",
                description = "No upshift at more than half of a corner's lateral acceleration.")
        boolean noUpshiftInCorner;

        /** The limits they describe. */
        OptimisationLimits limits() {
            OptionalDouble least = OptionalDouble.empty();
            OptionalDouble most = OptionalDouble.empty();
            if (balancePercent != null) {
                String[] ends = balancePercent.split(":", -1);
                if (ends.length != 2) {
                    throw bad();
                }
                least = end(ends[0]);
                most = end(ends[1]);
            }
            return new OptimisationLimits(of(minTopSpeedKmh), least, most, of(minRideHeightMm), noUpshiftInCorner);
        }

        private static OptionalDouble of(Double value) {
            return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
        }

        private OptionalDouble end(String text) {
            OptionalDouble number = DecimalText.number(text);
            if (number.isEmpty()) {
                throw bad();
            }
            return number;
        }

        private InvalidValueException bad() {
            return new InvalidValueException(
                    "--balance-percent " + balancePercent, "that is not a band", "write from:to, as in -1:2");
        }
    }

    @Override
    public void check() {
        doubt.check(line);
        if (doubt.isAsked() && !(search.circuits.isEmpty() && search.ranges.isEmpty())) {
            throw new InvalidValueException(
                    DoubtOptions.DRAWS,
                    "cars are drawn for one circuit on one day",
                    "leave out --circuit and --range, or leave it out");
        }
    }

    /** With how the best setup stands on drawn cars, and what of it may be recommended; as it is if none are drawn. */
    private OptimisationReport doubted(OptimisationReport report, ResumeOption.Kept kept) {
        FirmChanges firm = FirmChanges.all(report.result());
        Optional<Standings> first = drawn(report, firm, kept);
        if (first.isEmpty()) {
            return report;
        }
        Optional<Standings> last = first;
        Optional<FirmChanges> fewer = firm.without(first.get().result());
        while (fewer.isPresent()) {
            firm = fewer.get();
            last = firm.kept().isEmpty() ? Optional.empty() : drawn(report, firm, kept);
            fewer = last.isEmpty() ? Optional.empty() : firm.without(last.get().result());
        }
        return report.doubted(
                first.get(),
                new OptimisationReport.Recommended(firm, firm.leftOut().isEmpty() ? Optional.empty() : last));
    }

    private Optional<Standings> drawn(OptimisationReport report, FirmChanges firm, ResumeOption.Kept kept) {
        // Each time with fewer changes.
        StudyMemory drives = kept.of("draws-of-" + firm.kept().size());
        return doubt.standings(() -> firm.asked(seeded(report.subject())).remembering(drives), how(), console);
    }

    private Robustness seeded(Subject subject) {
        Robustness study = Robustness.of(subject.car(), subject.driven(), subject.day());
        return search.seed == null ? study : study.withSeed(search.seed);
    }

    @Override
    public OptimisationReport study() {
        OptimisationLimits kept = limits.limits();
        line.refuseRefresh();
        Subject subject = line.drive(documents.subject(setup, conditions.day(), console), console);
        List<Subject> places = new ArrayList<>();
        List<Double> weights = new ArrayList<>();
        places.add(subject);
        weights.add(1.0);
        search.circuits.forEach(text -> add(text, subject, places, weights));
        OptimisationReport report;
        try (ResumeOption.Kept journal = resume.kept(console, places, asked(kept))) {
            OptimisationResult found =
                    run(study(places, weights).within(kept).remembering(journal.of("setups")), subject);
            report = checked(OptimisationReport.of(subject, found), places, weights);
            report = report.moved().isEmpty() ? report : doubted(report, journal);
        }
        return report.moved().isEmpty() ? report : seconded(report);
    }

    /** What the search and the draws depend on beside their subjects. */
    private List<String> asked(OptimisationLimits kept) {
        List<String> asked = new ArrayList<>(doubt.asked());
        asked.add(search.over + " " + search.circuits + " " + search.ranges + " " + search.worst + " " + search.seed);
        asked.add(kept.toString());
        return asked;
    }

    private OptimisationReport seconded(OptimisationReport report) {
        OptimisationResult found = report.result();
        Car best = report.subject().in(found.setup("best", found.best())).car();
        OptimisationResult.Task task = found.task();
        // Of several the first alone: the models part over the car, not over the day.
        String where = task.circuits().size() * task.days().size() > 1
                ? " at " + Report.verbatim(report.subject().track().name()) + " on the first day"
                : "";
        return report.seconded(opinion.ask(
                report.subject(), Map.of(report.moved() + where, best), i -> report.stands(), how(), console));
    }

    /** With the best setup on a line of its own for each circuit and day; on all of them or not at all. */
    private OptimisationReport checked(OptimisationReport found, List<Subject> places, List<Double> weights) {
        String moved = found.moved();
        if (moved.isEmpty()) {
            return found;
        }
        OptimisationResult result = found.result();
        List<OwnLinesResult> own = new ArrayList<>();
        List<Double> shares = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            for (Conditions day : result.task().days()) {
                Subject onTheDay = places.get(i).on(day);
                Car best = onTheDay.in(result.setup("best", result.best())).car();
                Optional<OwnLinesResult> lines = line.ownLines(onTheDay, List.of(best), how(), console);
                if (lines.isEmpty()) {
                    return found;
                }
                own.add(lines.get());
                shares.add(weights.get(i));
            }
        }
        return found.checked(LineCheck.of(moved, result.difference(result.best()), own, shares));
    }

    @Override
    public Report report(OptimisationReport found) {
        return found.report();
    }

    private OptimisationResult run(Optimisation study, Subject subject) {
        try (BestSoFar best = new BestSoFar(console);
                ProgressBar bar = new ProgressBar(console, "setups at most")) {
            return study.tellingBetter((setup, lapTime) -> best.is(said(setup, lapTime, subject)))
                    .run(how().reporting(bar));
        }
    }

    /** The best setup before the search is done, which may lie between steps. */
    private String said(Setup setup, double lapTime, Subject subject) {
        List<String> moved = new ArrayList<>();
        setup.settings().forEach((name, value) -> {
            if (value != subject.car().setting(name)) {
                moved.add(Subject.said(subject.car(), name, rounded(value)));
            }
        });
        String with = moved.isEmpty() ? "the car as it stands" : String.join(", ", moved);
        return BestSoFar.words(lapTime, with, resume.isAsked());
    }

    /** Three digits: between the steps no more are meant. */
    private static double rounded(double value) {
        return new BigDecimal(value).round(new MathContext(3)).doubleValue();
    }

    private StudyRun how() {
        return search.threads == null ? StudyRun.onAllCores() : StudyRun.onThreads(search.threads);
    }

    private Optimisation study(List<Subject> places, List<Double> weights) {
        Subject subject = places.get(0);
        List<Optimisation.Circuit> circuits = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            circuits.add(new Optimisation.Circuit(places.get(i).driven(), weights.get(i)));
        }
        Optimisation study = Optimisation.of(subject.car(), circuits, subject.day())
                .over(search.over.stream().map(String::trim).toList());
        for (String text : search.ranges) {
            study = study.inConditions(range(text, subject));
        }
        if (search.worst) {
            if (search.ranges.isEmpty()) {
                throw new InvalidValueException("--worst", "there is only one day", "add --range, or leave it out");
            }
            study = study.forTheWorstDay();
        }
        return search.seed == null ? study : study.withSeed(search.seed);
    }

    private void add(String text, Subject subject, List<Subject> places, List<Double> weights) {
        int equals = text.lastIndexOf('=');
        String name = equals < 0 ? text : text.substring(0, equals);
        OptionalDouble weight = equals < 0 ? OptionalDouble.of(1) : DecimalText.number(text.substring(equals + 1));
        if (weight.isEmpty()) {
            throw new InvalidValueException(
                    "--circuit " + text, "its weight is not a number", "write name=weight, as in harrowmere=0.5");
        }
        places.add(line.drive(subject.at(Documents.circuit(name.trim())), console));
        weights.add(weight.getAsDouble());
    }

    private static SweepAxis range(String text, Subject subject) {
        if (!Conditions.isMeantBy(text.trim())) {
            throw new InvalidValueException(
                    "--range " + text, "it is not one of the conditions", "write it like conditions.airTempC=5,35");
        }
        return Vary.parse(text, subject).axis();
    }

    private static String setup(OptimisationReport found) {
        String name = "best at " + found.subject().track().name();
        return DocumentWriter.text(
                found.result().setup(name, found.result().best()),
                found.subject().bare());
    }

    private static Drawing chart(OptimisationReport found) {
        OptimisationResult result = found.result();
        List<LapTimeFront.SetupPoint> setups =
                result.search().met().stream().map(OptimiseCommand::point).toList();
        String subject = result.task().circuits().stream()
                .map(circuit -> circuit.track().name())
                .collect(Collectors.joining(" and ", result.task().car().name() + " at ", ""));
        return new Drawing(
                LapTimeFront.of(
                        subject,
                        setups,
                        Optional.of(point(result.before())),
                        LapTimeDifference.COUNTS,
                        ChartStyle.STANDARD),
                LapTimeFront.SIZE);
    }

    private static LapTimeFront.SetupPoint point(OptimisationResult.Candidate point) {
        return new LapTimeFront.SetupPoint("", point.lapTime(), point.topSpeed());
    }
}
