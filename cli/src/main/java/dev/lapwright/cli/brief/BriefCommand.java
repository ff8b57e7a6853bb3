package dev.lapwright.cli.brief;

import dev.lapwright.brief.Brief;
import dev.lapwright.brief.BriefResult;
import dev.lapwright.cli.option.CarAndCircuit;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.cli.output.ProgressBar;
import dev.lapwright.logs.LapLogFile;
import dev.lapwright.logs.LapLogs;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Command {@code brief}: one page with all that is to be known before an event. */
@Command(
        name = "brief",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Writes one page to read before an event, and after driving what the laps proved.",
            "A part that cannot be found says why and leaves the others alone."
        },
        customSynopsis = {
            "lapwright brief CAR CIRCUIT [--laps LOG] [--test-laps N] [--scatter-s S]",
            "                [--minutes M | --race-laps N] [--vary NAMES]",
            "                [--setup SETUP] [-s NAME=VALUE]... [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright brief gt-talvex castelvane --out brief",
            "      Before the event: the page and the same as JSON go to the folder brief.",
            "  lapwright brief gt-talvex castelvane -s rear-wing=2 --laps castelvane-wings.csv --out after.html",
            "      After driving with the rear wing at 2: also what the log of laps proved."
        })
public final class BriefCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nEvent:%n")
    private final BriefOptions asked = new BriefOptions();

    @ArgGroup(validate = false, heading = "%nSetup as the car stands:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nOutput:%n")
    private final BriefOutputOptions output = new BriefOutputOptions();

    @Mixin
    public HelpOption help;

    public BriefCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        BriefFiles files = BriefFiles.plan(output, documents.car, documents.circuit);
        Subject subject = documents.subject(setup, conditions.day(), console);
        Brief brief = asked.of(subject);
        StudyRun how = asked.run();
        Optional<LapLogFile> log =
                asked.laps == null ? Optional.empty() : Optional.of(LapLogs.read(LapLogs.find(asked.laps)));
        if (log.isPresent()) {
            brief = brief.after(log.get().log());
        }
        BriefOutcome outcome = new BriefOutcome(subject, log, run(brief, how));
        files.write(outcome);
        if (output.json) {
            console.text(BriefJson.text(outcome));
        } else {
            BriefReport.print(console, outcome);
        }
        boolean written = files.report(console, output.json);
        BriefReport.remarks(console, outcome);
        return written && !outcome.isUnusable() ? ExitCode.DONE : ExitCode.BAD_INPUT;
    }

    private BriefResult run(Brief brief, StudyRun how) {
        try (ProgressBar bar = new ProgressBar(console, "percent")) {
            return brief.run(how.reporting(bar));
        }
    }
}
