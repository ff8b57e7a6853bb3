package dev.lapwright.cli;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.ColumnChoice;
import dev.lapwright.fit.Fit;
import dev.lapwright.fit.FitParameter;
import dev.lapwright.fit.FitResult;
import dev.lapwright.logs.DrivenLapSelection;
import dev.lapwright.logs.DrivenLog;
import dev.lapwright.logs.DrivenLogs;
import dev.lapwright.results.ChosenLine;
import dev.lapwright.results.Subject;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** What a log of driven laps says of the car. */
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
            "              [--fit WHAT[,WHAT]...] [--to FILE] [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright fit gt-talvex castelvane castelvane-laps.csv --chart fit.svg",
            "      What three laps say of the car, and where the fitted model differs from them.",
            "  lapwright fit gt-talvex castelvane castelvane-laps.csv --lap 5 --fit grip,power --to fitted.json",
            "      One lap, all but grip and power held; the fitted car becomes a document."
        })
final class FitCommand implements Callable<Integer> {
    private static final int LONGEST_NAME = 100;

    private final Console console;

    @Mixin
    private CarAndCircuit documents;

    @Parameters(
            index = "2..*",
            arity = "1..*",
            paramLabel = "LOG",
            description = "Logged laps: files, or the name of a demo log of driven laps.")
    private List<String> logs;

    @ArgGroup(validate = false, heading = "%nFit:%n")
    private final FitOptions asked = new FitOptions();

    @ArgGroup(validate = false, heading = "%nSetup:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineOptions line = new LineOptions();

    @ArgGroup(validate = false, heading = "%nOutput:%n")
    private final FitOutputOptions output = new FitOutputOptions();

    @Mixin
    HelpOption help;

    FitCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        ResultFiles<FitOutcome> files = FitFiles.plan(output);
        double confidence = asked.confidence();
        Set<FitParameter> wanted = asked.wanted();
        List<ColumnChoice> columns = asked.choices();
        if (LineOptions.REFRESH.equals(line.line)) {
            throw new InvalidValueException(
                    "--line refresh", "the laps were all driven on one line", "use --line fastest, or name a file");
        }
        Subject subject = documents.subject(setup, conditions.day());
        String name = name(subject);
        List<DrivenLog> read = logs.stream()
                .map(log -> DrivenLogs.read(DrivenLogs.find(log), columns))
                .toList();
        ChosenLine chosen = line.find(subject, console);
        DrivenLapSelection pick = DrivenLapSelection.of(read, chosen.driven(), asked.laps);
        FitResult result = Fit.of(subject.car(), chosen.driven(), subject.day())
                .laps(pick.laps())
                .fitting(wanted)
                .confidence(confidence)
                .run();
        FitOutcome outcome = new FitOutcome(subject, chosen, read, pick, result, name);
        files.write(outcome);
        if (output.json) {
            console.text(FitJson.text(outcome));
        } else {
            new FitReport(console, outcome).print();
        }
        files.report(console, output.json);
        return Lapwright.DONE;
    }

    private String name(Subject subject) {
        if (output.name == null) {
            return subject.bare().name();
        }
        boolean fits = !output.name.isBlank()
                && output.name.length() <= LONGEST_NAME
                && output.name.chars().noneMatch(Character::isISOControl);
        if (!fits) {
            throw new InvalidValueException(
                    "--name", "this cannot be a name", "give 1 to 100 characters without line breaks");
        }
        return output.name;
    }
}
