package dev.lapwright.cli.study;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawing;
import dev.lapwright.charts.log.LapLog;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.DemoNames;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.option.PredictedChange;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.evidence.CleanLaps;
import dev.lapwright.evidence.Evidence;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.SafeFile;
import dev.lapwright.logs.LapLogFile;
import dev.lapwright.logs.LapLogs;
import dev.lapwright.report.Report;
import dev.lapwright.results.EvidenceReport;
import dev.lapwright.results.Subject;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Command {@code evidence}: whether a change of setup shows on the timing screen, and which runs would tell. */
@Command(
        name = "evidence",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Says from a log of lap times whether a change was real, and what to run next.",
            "Reads CSV with headings in any order: time (1:44.851, or seconds), and if known lap, setup,",
            "run, and flag (out, in, or what spoilt a lap)."
        },
        customSynopsis = {
            "lapwright evidence LOG [--before SETUP] [--after SETUP]",
            "                   [--predicted-s SECONDS | --change NAME=BEFORE:AFTER --car CAR --circuit CIRCUIT]",
            "                   [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright evidence castelvane-wings.csv --predicted-s -0.25",
            "      A test of two wings, the old one run again at the end, beside what the model predicted.",
            "  lapwright evidence castelvane-wings.csv --run-to-run-s 0.05 --chart laps.svg",
            "      The same for a day on which runs differ little, and draws every lap."
        })
public final class EvidenceCommand extends StudyCommand<EvidenceReport> {
    @Parameters(index = "0", paramLabel = "LOG", description = "The laps: a file, or the name of a demo lap log.")
    private String log;

    @ArgGroup(validate = false, heading = "%nComparison:%n")
    private final Asked asked = new Asked();

    @ArgGroup(validate = false, heading = "%nModel:%n")
    private final Model model = new Model();

    @ArgGroup(validate = false, heading = "%nSetup of the model's car:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nConditions for the model:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    public EvidenceCommand(Console console) {
        super(
                console,
                new StudyFiles<>(EvidenceReport::report)
                        .json("evidence.json")
                        .csv("laps.csv")
                        .chart(
                                "laps.svg",
                                found -> new Drawing(
                                        LapLog.of(subject(found), found.result(), ChartStyle.STANDARD), LapLog.SIZE))
                        .option("--chart", "Draws every lap as .svg or .png.")
                        .out("A folder for everything: result, laps as judged, chart. Or one file, by its ending: .json"
                                + " for the result, .csv for the laps, .svg or .png for the chart."));
    }

    /** The log's name without its folder. */
    private static String subject(EvidenceReport found) {
        return SafeFile.path(found.file().name()).getFileName().toString();
    }

    @Override
    public EvidenceReport study() {
        Optional<PredictedChange> predicted = model.predicted(setup, conditions, asked.doubt == null, console);
        Evidence how = asked.how(predicted);
        LapLogFile file = LapLogs.read(LapLogs.find(log));
        return new EvidenceReport(
                file, how.run(file.log()), predicted.map(PredictedChange::drawn).orElse(0));
    }

    @Override
    public Report report(EvidenceReport found) {
        return found.report();
    }

    /** Which laps count, what is compared, and what is supposed of the day. */
    static final class Asked {
        /** A drift is lost within so many laps, as in the prior that is used if left out. */
        private static final double LAPS_OF_DRIFT = 40;

        @Option(
                names = "--before",
                paramLabel = "SETUP",
                description = "The setup to compare with; the log's first if left out.")
        String before = "";

        @Option(
                names = "--after",
                paramLabel = "SETUP",
                description = "The setup to judge; the log's other one if left out.")
        String after = "";

        @Option(
                names = "--predicted-s",
                paramLabel = "SECONDS",
                description = "What a model predicted that the change does to the lap time; minus is faster.")
        Double predicted;

        @Option(
                names = "--predicted-doubt-s",
                paramLabel = "SECONDS",
                description =
                        "Standard deviation of that prediction. If left out it is how the change stands on 60 cars that"
                                + " this one may be where --change asks the model, and 35 %% of the prediction otherwise.")
        Double doubt;

        @Option(
                names = "--worth-s",
                paramLabel = "SECONDS",
                defaultValue = "0.1",
                description = "The least change worth knowing, where none was predicted; 0.1 if left out.")
        double worth;

        @Option(
                names = "--run-to-run-s",
                paramLabel = "SECONDS",
                defaultValue = "0.15",
                description = "By how much runs of one setup are supposed to differ, beside scatter: tyres, road, air,"
                        + " driver; 0.15 if left out (common practice, no source).")
        double runToRun;

        @Option(
                names = "--drift-s-per-lap",
                paramLabel = "SECONDS",
                defaultValue = "0.02",
                description =
                        "How large a drift through the session may be, s a lap; 0 for none, 0.02 if left out (common"
                                + " practice, no source).")
        double drift;

        @Option(
                names = "--warm-up-laps",
                paramLabel = "N",
                defaultValue = "1",
                description = "How many laps at the beginning of each run do not count; 1 if left out.")
        int warmUpLaps;

        @Option(
                names = "--slow-limit",
                paramLabel = "K",
                defaultValue = "3.5",
                description =
                        "A lap does not count if it is slower than its setup's median by more than K robust standard"
                                + " deviations (MAD/0.6745); 3.5 if left out.")
        double slowLimit;

        /** @param modelled what the model predicts, if it was asked */
        Evidence how(Optional<PredictedChange> modelled) {
            if (predicted != null && modelled.isPresent()) {
                throw new InvalidValueException(
                        "--predicted-s", "the prediction is given, and asked of the model too", "leave one out");
            }
            OptionalDouble change = predicted != null
                    ? OptionalDouble.of(predicted)
                    : modelled.map(one -> OptionalDouble.of(one.difference())).orElse(OptionalDouble.empty());
            OptionalDouble drawn = modelled.map(PredictedChange::doubt).orElse(OptionalDouble.empty());
            if (doubt != null && change.isEmpty()) {
                throw new InvalidValueException(
                        "--predicted-doubt-s", "there is no prediction to doubt", "add --predicted-s or --change");
            }
            return Evidence.DEFAULT
                    .rule(new CleanLaps.Rule(warmUpLaps, slowLimit))
                    .prior(Evidence.Prior.DEFAULT.runToRun(runToRun).drift(drift, drift / LAPS_OF_DRIFT))
                    .between(before, after)
                    .predicted(change, doubt == null ? drawn : OptionalDouble.of(doubt))
                    .worth(worth);
        }
    }

    /** What the lap model predicts for a change of setup. */
    static final class Model {
        @Option(
                names = "--change",
                paramLabel = "NAME=BEFORE:AFTER",
                description =
                        "What was changed, for the model to predict: rear-wing=2:6; may be repeated. Needs --car and"
                                + " --circuit.")
        private List<String> changes = new ArrayList<>();

        @Option(
                names = "--car",
                paramLabel = "CAR",
                completionCandidates = DemoNames.Cars.class,
                description = "Car: a file, or the name of a demo.")
        private String car;

        @Option(
                names = "--circuit",
                paramLabel = "CIRCUIT",
                completionCandidates = DemoNames.Circuits.class,
                description = "Circuit: a file, or the name of a demo.")
        private String circuit;

        /** What it predicts; none if nothing is said to have changed. */
        Optional<PredictedChange> predicted(
                SetupOptions setup, ConditionsOptions conditions, boolean doubted, Console console) {
            if (changes.isEmpty()) {
                if (car != null || circuit != null) {
                    throw new InvalidValueException(
                            "--car and --circuit",
                            "they say nothing without a change",
                            "add --change NAME=BEFORE:AFTER, as in --change rear-wing=2:6");
                }
                return Optional.empty();
            }
            if (car == null || circuit == null) {
                throw new InvalidValueException(
                        "--change", "the model knows no car or no circuit", "give --car CAR --circuit CIRCUIT too");
            }
            List<String> before = new ArrayList<>();
            List<String> after = new ArrayList<>();
            changes.forEach(change -> read(change, before, after));
            Subject subject =
                    LineOptions.driveStandard(setup.subject(car, circuit, conditions.day(), console), console);
            return Optional.of(PredictedChange.of(subject.with(before), subject.with(after), doubted, console));
        }

        private static void read(String change, List<String> before, List<String> after) {
            int equals = change.indexOf('=');
            int colon = change.indexOf(':', equals);
            if (equals < 0 || colon < 0) {
                throw new InvalidValueException(
                        "--change " + change, "it is no change", "write NAME=BEFORE:AFTER, as in rear-wing=2:6");
            }
            String name = change.substring(0, equals + 1);
            before.add(name + change.substring(equals + 1, colon));
            after.add(name + change.substring(colon + 1));
        }
    }
}
