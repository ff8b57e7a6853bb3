package dev.lapwright.cli.study;

import dev.lapwright.car.Setup;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawing;
import dev.lapwright.charts.log.FitSpeedChart;
import dev.lapwright.cli.option.CarAndCircuit;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.LimitWordText;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.option.ResumeOption;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.BestSoFar;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ProgressBar;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.DecimalText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.ColumnChoice;
import dev.lapwright.fit.DrivenRun;
import dev.lapwright.fit.Fit;
import dev.lapwright.fit.FitDoubts;
import dev.lapwright.fit.FitNuisance;
import dev.lapwright.fit.FitParameter;
import dev.lapwright.fit.FitResult;
import dev.lapwright.fit.LimitWord;
import dev.lapwright.logs.DrivenLapSelection;
import dev.lapwright.logs.DrivenLog;
import dev.lapwright.logs.DrivenLogs;
import dev.lapwright.report.Report;
import dev.lapwright.results.FitReport;
import dev.lapwright.results.NextRunChoices;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Command {@code fit}: what a log of driven laps says of the car. */
@Command(
        name = "fit",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Fits grip, drag, downforce, power and rolling resistance of a car to logged laps.",
            "Gives intervals, and says which the laps do not tell apart. Reads CSV with headings in any",
            "order: distance or time, speed, and if known throttle, brake, gear, accelerations, lap. A unit",
            "may stand behind a heading, as in speed (km/h)."
        },
        customSynopsis = {
            "lapwright fit CAR CIRCUIT LOG... [--lap N]... [--column NAME=HEADING[:UNIT]]...",
            "              [--also LOG --with SETTING...]... [--gives-up [CORNER=]END]... [--fit WHAT[,WHAT]...]",
            "              [--doubt NAME=SIZE]... [--to FILE] [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright fit gt-talvex castelvane castelvane-laps.csv --chart fit.svg",
            "      What three laps say of the car, and where the fitted model differs from them.",
            "  lapwright fit gt-talvex castelvane castelvane-laps.csv --lap 5 --fit grip,power --to fitted.json",
            "      One lap, all but grip and power held; the fitted car becomes a document. With --doubt mass=0.3",
            "      for a car that was weighed: what hangs on its mass is told better; with laps on another wing or",
            "      bar beside it (--also LOG --with SETTING), grip front and rear and load sensitivity are."
        })
public final class FitCommand extends StudyCommand<FitReport> {
    private static final String NAME = "--name";

    @Mixin
    private CarAndCircuit documents;

    @Parameters(
            index = "2..*",
            arity = "1..*",
            paramLabel = "LOG",
            description = "Logged laps: files, or the name of a demo log of driven laps.")
    private List<String> logs;

    @ArgGroup(validate = false, heading = "%nFit:%n")
    private final Asked asked = new Asked();

    @ArgGroup(
            exclusive = false,
            multiplicity = "0..*",
            heading = "%nFurther runs, each of the same car set up otherwise:%n")
    private List<FurtherRun> further = new ArrayList<>();

    @ArgGroup(validate = false, heading = "%nSetup:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineOptions line = new LineOptions();

    @ArgGroup(validate = false, heading = "%nLong work:%n")
    private final ResumeOption resume = new ResumeOption();

    public FitCommand(Console console) {
        super(
                console,
                new StudyFiles<>(FitReport::report)
                        .json("fit.json")
                        .csv(FitReport.ESTIMATES)
                        .csv(FitReport.PARTS)
                        .csv(FitReport.TRACE)
                        .text("fitted-car.json", found -> DocumentWriter.text(found.fittedCar()))
                        .onlyInFolder()
                        .option(
                                "--to",
                                "Writes the car with the fitted values as a document to a .json file; where they come from"
                                        + " is told in its description.")
                        .value(
                                NAME,
                                "NAME",
                                "Name of the car in that document; the car's own if left out, so that its setups go on"
                                        + " fitting it.")
                        .chart(
                                "fit.svg",
                                found -> new Drawing(
                                        FitSpeedChart.of(found.result(), ChartStyle.STANDARD), FitSpeedChart.SIZE))
                        .option("--chart", "Draws logged and simulated speed with their difference as .svg or .png.")
                        .out(
                                "A folder for everything: result, tables, chart, and the fitted car. Or one file: .json for"
                                        + " the result, .csv for the table of estimates, .svg or .png for the chart."));
    }

    @Override
    public FitReport study() {
        double confidence = asked.confidence();
        Set<FitParameter> wanted = asked.wanted();
        FitDoubts doubts = asked.doubts();
        List<LimitWord> said = asked.said();
        List<ColumnChoice> columns = asked.choices();
        if (LineOptions.REFRESH.equals(line.line)) {
            throw new InvalidValueException(
                    "--line refresh", "the laps were all driven on one line", "use --line fastest, or name a file");
        }
        Subject subject = documents.subject(setup, conditions.day(), console);
        String name = name(subject);
        Subject driven = line.drive(subject, console);
        FitReport.Run first = run(driven, logs, columns, asked.laps);
        List<FitReport.Run> runs = new ArrayList<>();
        runs.add(first);
        Fit fit = Fit.of(driven.car(), driven.driven(), driven.day())
                .laps(first.pick().laps())
                .fitting(wanted)
                .doubting(doubts)
                .hearing(said)
                .consideringNext(asked.nextRun ? NextRunChoices.of(driven) : List.of())
                .confidence(confidence);
        for (FurtherRun one : further) {
            FitReport.Run run = run(one.subject(driven, console), List.of(one.log), columns, one.laps);
            runs.add(run);
            fit = fit.also(new DrivenRun(
                    run.subject().car(), run.subject().day(), run.pick().laps()));
        }
        FitResult found;
        try (ResumeOption.Kept journal = resume.kept(
                        console,
                        runs.stream().map(FitReport.Run::subject).toList(),
                        resume.isAsked() ? inputs() : List.of());
                BestSoFar best = new BestSoFar(console);
                ProgressBar bar = new ProgressBar(console, "laps")) {
            found = fit.remembering(journal.of("rounds"))
                    .tellingRounds(values -> best.is(BestSoFar.words(FitReport.said(values), resume.isAsked())))
                    .run(StudyRun.onAllCores().reporting(bar));
        }
        return new FitReport(runs, found, name);
    }

    /** What a fit depends on beside its subjects. */
    private List<String> inputs() {
        List<String> inputs = new ArrayList<>();
        logs.forEach(log -> inputs.add(DrivenLogs.find(log).text()));
        inputs.add(asked.columns + " " + asked.laps + " " + asked.parameters + " " + asked.doubts + " " + asked.said);
        for (FurtherRun one : further) {
            inputs.add(DrivenLogs.find(one.log).text());
            inputs.add(one.laps.toString());
        }
        return inputs;
    }

    private static FitReport.Run run(
            Subject driven, List<String> logs, List<ColumnChoice> columns, List<Integer> laps) {
        List<DrivenLog> read = logs.stream()
                .map(log -> DrivenLogs.read(DrivenLogs.find(log), columns))
                .toList();
        return new FitReport.Run(driven, read, DrivenLapSelection.of(read, driven.driven(), laps));
    }

    @Override
    public Report report(FitReport found) {
        return found.report();
    }

    private String name(Subject subject) {
        String name = files.given(NAME);
        if (name == null) {
            return subject.bare().name();
        }
        return Documents.checkedName(NAME, name);
    }

    /** Run of the same car set up otherwise. */
    static final class FurtherRun {
        @Option(
                names = "--also",
                required = true,
                paramLabel = "LOG",
                description =
                        "A log of a further run: a file, or the name of a demo log. May be repeated, each followed by its"
                                + " own --with. Its laps may lie in the log of another run: see --also-lap.")
        String log;

        @Option(
                names = "--with",
                paramLabel = "SETTING",
                description =
                        "What was set otherwise in that run: NAME=VALUE as in -s, or a setup, a file or the name of a demo."
                                + " May be repeated. What is not named stands as in the first run.")
        List<String> settings = new ArrayList<>();

        @Option(
                names = "--also-lap",
                paramLabel = "N",
                description = "Takes lap N of that log; may be repeated. If left out: all whole laps at pace.")
        List<Integer> laps = new ArrayList<>();

        Subject subject(Subject first, Console console) {
            Subject subject = first;
            for (String text : settings) {
                if (text.indexOf('=') >= 0) {
                    subject = subject.with(List.of(text));
                    continue;
                }
                Setup all = subject.setup();
                for (Map.Entry<String, Double> setting : SetupOptions.read(text, first.bare(), console)
                        .settings()
                        .entrySet()) {
                    all = all.with(setting.getKey(), setting.getValue());
                }
                subject = subject.in(all);
            }
            SetupOptions.remark(subject, first, console);
            return subject;
        }
    }

    /** How the log is read, and what is fitted to it. */
    public static final class Asked {
        private static final double PERCENT = 100;
        private static final double LEAST_CONFIDENCE = 50;
        private static final double MOST_CONFIDENCE = 99.9;

        @Option(
                names = "--column",
                paramLabel = "NAME=HEADING[:UNIT]",
                description =
                        "Says which column of the log holds what: distance, time, speed, throttle, brake, gear,"
                                + " longitudinal_acceleration, lateral_acceleration, steering, yaw_rate or lap. May be repeated.")
        List<String> columns = new ArrayList<>();

        @Option(
                names = "--lap",
                paramLabel = "N",
                description =
                        "Takes lap N as the log numbers them, or counted from 1; may be repeated. If left out: all"
                                + " whole laps at pace.")
        List<Integer> laps = new ArrayList<>();

        @Option(
                names = "--fit",
                paramLabel = "WHAT[,WHAT]...",
                split = ",",
                completionCandidates = ParameterWords.class,
                description =
                        "What to fit: grip, drag-area, downforce-area, power, rolling-resistance; all if left out."
                                + " What is not named stays as the car has it.")
        List<String> parameters = new ArrayList<>();

        @Option(
                names = "--doubt",
                paramLabel = "NAME=SIZE",
                description = "How far something that is not fitted may be off, one standard deviation; 0 is known"
                        + " exactly. May be repeated. Percent: mass, load-sensitivity, grip-balance (front over rear), line"
                        + " (radius driven), speed-scale, way-length; percentage points: aero-balance, front-weight,"
                        + " brake-balance; cg-height in mm, sensor-lag in s; of further runs run-grip and setup-effect, in percent."
                        + " What is left out has its usual doubt,"
                        + " which the result prints.")
        List<String> doubts = new ArrayList<>();

        @Option(
                names = "--gives-up",
                paramLabel = "[CORNER=]END",
                description =
                        "What the driver says gives up first at the limit: front, rear or both; of one corner by its number"
                                + " or name, as in T6=front, or of all. May be repeated. It counts as felt to 3 %% of an axle's grip.")
        List<String> said = new ArrayList<>();

        @Option(
                names = "--next-run",
                description =
                        "Also says which further run would tell front grip, rear grip and load sensitivity apart: one"
                                + " with a wing, bar or spring at either end of its range. Takes about as long as the fit.")
        boolean nextRun;

        @Option(
                names = "--confidence-percent",
                paramLabel = "P",
                defaultValue = "95",
                description = "Confidence of the intervals; 95 if left out.")
        double confidencePercent;

        /** Words for {@code --fit}. */
        static final class ParameterWords extends ArrayList<String> {
            private static final long serialVersionUID = 1L;

            ParameterWords() {
                super(words());
            }
        }

        private static List<String> words() {
            return Arrays.stream(FitParameter.values()).map(FitReport::word).toList();
        }

        List<ColumnChoice> choices() {
            return columns.stream().map(DrivenLogs::column).toList();
        }

        /** A share. */
        double confidence() {
            return Check.inRange("--confidence-percent", confidencePercent, LEAST_CONFIDENCE, MOST_CONFIDENCE)
                    / PERCENT;
        }

        FitDoubts doubts() {
            FitDoubts all = FitDoubts.USUAL;
            for (String text : doubts) {
                int at = text.indexOf('=');
                if (at < 0) {
                    throw new InvalidValueException(
                            "--doubt", "'" + text + "' has no equals sign", "write --doubt mass=0.5");
                }
                FitNuisance nuisance = nuisance(text.substring(0, at).trim());
                double size = DecimalText.number(text.substring(at + 1))
                        .orElseThrow(() -> new InvalidValueException(
                                "--doubt", "'" + text.substring(at + 1) + "' is no number", "write --doubt mass=0.5"));
                all = all.with(nuisance, size);
            }
            return all;
        }

        private static FitNuisance nuisance(String word) {
            return Arrays.stream(FitNuisance.values())
                    .filter(nuisance -> nuisance.word().equals(word))
                    .findFirst()
                    .orElseThrow(() -> new InvalidValueException(
                            "--doubt",
                            "'" + word + "' is nothing that a fit takes with doubt",
                            "use "
                                    + Arrays.stream(FitNuisance.values())
                                            .map(FitNuisance::word)
                                            .collect(Collectors.joining(", "))));
        }

        List<LimitWord> said() {
            return said.stream().map(LimitWordText::read).toList();
        }

        Set<FitParameter> wanted() {
            if (parameters.isEmpty()) {
                return EnumSet.allOf(FitParameter.class);
            }
            return parameters.stream()
                    .map(word -> parameter(word.trim()))
                    .collect(Collectors.toCollection(() -> EnumSet.noneOf(FitParameter.class)));
        }

        private static FitParameter parameter(String word) {
            return Arrays.stream(FitParameter.values())
                    .filter(parameter -> FitReport.word(parameter).equals(word))
                    .findFirst()
                    .orElseThrow(() -> new InvalidValueException(
                            "--fit",
                            "'" + word + "' is nothing that can be fitted",
                            "use " + String.join(", ", words())));
        }
    }
}
