package dev.lapwright.cli;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.sensitivity.Sensitivity;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** What matters at a circuit, and whether it can be seen. */
@Command(
        name = "sensitivity",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Ranks adjustments by what they are worth, and says which the timing screen can show."},
        customSynopsis = {
            "lapwright sensitivity CAR CIRCUIT [--laps N] [--scatter-s S]",
            "                      [--setup SETUP] [-s NAME=VALUE]... [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright sensitivity gt-talvex castelvane",
            "      What each adjustment is worth, and what 30 laps can show of it.",
            "  lapwright sensitivity student-pipit harrowmere --laps 12 --scatter-s 0.6 --out worth",
            "      For a driver whose laps scatter more; result, table and chart go to the folder worth."
        })
final class SensitivityCommand implements Callable<Integer> {
    private static final double LEAST_SCATTER_S = 0.001;
    private static final double MOST_SCATTER_S = 60;
    private static final int FEWEST_LAPS = 4;
    private static final int MOST_LAPS = 100_000;

    private final Console console;

    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nTiming screen:%n")
    private final SensitivityOptions sensitivity = new SensitivityOptions();

    @ArgGroup(validate = false, heading = "%nSetup about which it is varied:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineOptions line = new LineOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nOutput:%n")
    private final SensitivityOutputOptions output = new SensitivityOutputOptions();

    @Mixin
    HelpOption help;

    SensitivityCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        Check.inRange("--scatter-s", sensitivity.scatterS, LEAST_SCATTER_S, MOST_SCATTER_S);
        Check.inRange("--laps", sensitivity.laps, FEWEST_LAPS, MOST_LAPS);
        if (LineOptions.REFRESH.equals(line.line)) {
            throw new InvalidValueException(
                    "--line " + line.line,
                    "all laps of this study are driven on one line",
                    "take --line fastest, or sweep with --line refresh");
        }
        ResultFiles<SensitivityOutcome> files = SensitivityFiles.plan(output);
        Subject subject = documents.subject(setup, conditions.day(), console);
        ChosenLine chosen = ChosenLine.of(line, subject, console);
        SensitivityOutcome outcome = new SensitivityOutcome(subject, chosen, run(subject, chosen));
        files.write(outcome);
        if (output.json) {
            console.text(SensitivityJson.text(outcome));
        } else {
            new SensitivityReport(console, outcome).print();
        }
        files.report(console, output.json);
        return Lapwright.DONE;
    }

    private SensitivityResult run(Subject subject, ChosenLine chosen) {
        Sensitivity study = Sensitivity.of(subject.car(), chosen.driven(), subject.day())
                .withScatter(sensitivity.scatterS)
                .withLaps(sensitivity.laps);
        StudyRun how = sensitivity.threads == null ? StudyRun.onAllCores() : StudyRun.onThreads(sensitivity.threads);
        try (ProgressBar bar = new ProgressBar(console, "adjustments and pairs")) {
            return study.run(how.reporting(bar));
        }
    }
}
