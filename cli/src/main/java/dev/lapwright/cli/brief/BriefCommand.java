package dev.lapwright.cli.brief;

import dev.lapwright.brief.Brief;
import dev.lapwright.brief.BriefResult;
import dev.lapwright.cli.option.CarAndCircuit;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.cli.output.ProgressBar;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.cli.study.StudyCommand;
import dev.lapwright.files.SafeFile;
import dev.lapwright.logs.LapLogFile;
import dev.lapwright.logs.LapLogs;
import dev.lapwright.report.Report;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import java.nio.file.Path;
import java.util.Optional;
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
public final class BriefCommand extends StudyCommand<BriefReport> {
    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nEvent:%n")
    private final BriefOptions asked = new BriefOptions();

    @ArgGroup(validate = false, heading = "%nSetup as the car stands:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineOptions line = new LineOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    public BriefCommand(Console console) {
        super(console, new StudyFiles<>(BriefReport::report));
        files.text(".html", BriefPage::html)
                .json(".json")
                .together(
                        () -> "brief-" + word(documents.car) + "-" + word(documents.circuit),
                        "The page, ending in .html; the same as JSON goes beside it. Or a folder for both. Without it"
                                + " brief-CAR-CIRCUIT.html in this folder.")
                .onScreen("Also prints the result for machines, as JSON.");
    }

    /** The name of a document without its folder and ending, fit for the name of a file. */
    public static String word(String document) {
        Path name = SafeFile.path(document).getFileName();
        String bare = (name == null ? document : name.toString()).replaceFirst("(?i)\\.json$", "");
        String word = bare.replaceAll("[^\\p{L}\\p{N}._-]+", "-");
        return word.isEmpty() ? "document" : word;
    }

    @Override
    public BriefReport study() {
        line.refuseRefresh();
        Subject subject = line.drive(documents.subject(setup, conditions.day(), console), console);
        Brief brief = asked.of(subject);
        StudyRun how = asked.run();
        Optional<LapLogFile> log =
                asked.laps == null ? Optional.empty() : Optional.of(LapLogs.read(LapLogs.find(asked.laps)));
        if (log.isPresent()) {
            brief = brief.after(log.get().log());
        }
        BriefResult found;
        try (ProgressBar bar = new ProgressBar(console, "percent")) {
            found = brief.run(how.reporting(bar));
        }
        return new BriefReport(
                subject, log, found, BriefLines.of(subject, found, cars -> line.ownLines(subject, cars, how, console)));
    }

    @Override
    public Report report(BriefReport brief) {
        return brief.report();
    }

    /** Says what is missing, and what to do about it, beside the result. */
    @Override
    public int end(BriefReport brief) {
        brief.missing()
                .forEach((about, part) -> console.remark("lapwright: " + about + ": " + part.problem()
                        + (part.remedy().isEmpty() ? "" : "; " + part.remedy())));
        return brief.isUnusable() ? ExitCode.BAD_INPUT : ExitCode.DONE;
    }
}
