package dev.lapwright.cli.brief;

import dev.lapwright.brief.Brief;
import dev.lapwright.brief.BriefResult;
import dev.lapwright.cli.option.CarAndCircuit;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.option.ResumeOption;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.cli.output.ProgressBar;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.cli.study.StudyCommand;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.SafeFile;
import dev.lapwright.notebook.EventFolder;
import dev.lapwright.report.Report;
import dev.lapwright.results.Subject;
import dev.lapwright.results.event.EventRuns;
import dev.lapwright.study.StudyRun;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Function;
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
            "Two sheets: the answer, and a card for the runs. After driving: of each change what was expected, what",
            "the laps show, what is known now, and the next card.",
            "A part that cannot be found says why and leaves the others alone."
        },
        customSynopsis = {
            "lapwright brief CAR CIRCUIT [--after LOG [--with SETTING]...]... [--card FILE]",
            "                [--pressures LOG] [--test-laps N] [--scatter-s S] [--minutes M | --race-laps N]",
            "                [--vary NAMES] [--driver WORD]... [--setup SETUP] [-s NAME=VALUE]... [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright brief gt-talvex castelvane --out brief",
            "      Before the event: the page and the same as JSON go to the folder brief.",
            "  lapwright brief gt-talvex castelvane -s rear-wing=2 --after castelvane-wings.csv --out after.html",
            "      After driving with the rear wing at 2 and at 7: what the log of lap times proved, and what next. With logs",
            "      that hold speeds, --after run1.csv --after run2.csv --with front-bar=6, the car is fitted to them too."
        })
public final class BriefCommand extends StudyCommand<BriefReport> {
    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nEvent:%n")
    private final BriefOptions asked = new BriefOptions();

    @ArgGroup(exclusive = false, multiplicity = "0..*", heading = "%nAfter driving:%n")
    private List<AfterOptions> after = new ArrayList<>();

    @ArgGroup(validate = false, heading = "%nSetup as the car stands:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineOptions line = new LineOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nLong work:%n")
    private final ResumeOption resume = new ResumeOption();

    public BriefCommand(Console console) {
        this(console, new Once(console));
    }

    private BriefCommand(Console console, Once once) {
        super(console, new StudyFiles<>(once));
        files.text(".html", once::page)
                .json(".json")
                .text("fitted-car.json", BriefReport::fittedDocument)
                .onlyByOption()
                .option(
                        "--to",
                        "After driving laps logged with their speeds: writes the car with the fitted values and their doubt"
                                + " as a document to a .json file.")
                .together(
                        () -> "brief-" + word(documents.car) + "-" + word(documents.circuit),
                        "The page, ending in .html; the same as JSON goes beside it. Or a folder for both. Without it"
                                + " brief-CAR-CIRCUIT.html in this folder.")
                .onScreen("Also prints the result for machines, as JSON.");
    }

    /** What is said of a brief, put together once for file and terminal, and while the page is drawn. */
    private static final class Once implements Function<BriefReport, Report> {
        private final Console console;
        private CompletableFuture<Report> said;

        Once(Console console) {
            this.console = console;
        }

        /** The page, beside which the rest is begun. */
        String page(BriefReport brief) {
            begin(brief);
            return BriefPage.html(brief, console.units());
        }

        private void begin(BriefReport brief) {
            if (said == null) {
                said = CompletableFuture.supplyAsync(brief::report);
            }
        }

        @Override
        public Report apply(BriefReport brief) {
            begin(brief);
            try {
                return said.join();
            } catch (CompletionException failed) {
                throw failed.getCause() instanceof RuntimeException cause ? cause : failed;
            }
        }
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
        AfterOptions.Read driven = driven(subject);
        Brief brief = asked.of(driven.after(Brief.of(subject.car(), subject.driven(), subject.day())), subject);
        StudyRun how = asked.run();
        BriefResult found;
        try (ResumeOption.Kept kept = kept(subject, driven);
                ProgressBar bar = new ProgressBar(console, "percent")) {
            found = brief.remembering(kept.of("brief")).run(how.reporting(bar));
        }
        Subject now = BriefReport.now(subject, found);
        return new BriefReport(
                now,
                driven.times(),
                driven.runs(),
                found,
                BriefLines.of(now, found, cars -> line.ownLines(now, cars, how, console)));
    }

    private ResumeOption.Kept kept(Subject subject, AfterOptions.Read driven) {
        if (!resume.isAsked()) {
            return resume.kept(console, List.of(), List.of());
        }
        List<Subject> subjects = new ArrayList<>(List.of(subject));
        driven.runs().forEach(run -> subjects.add(run.subject()));
        List<String> inputs = new ArrayList<>(asked.inputs());
        inputs.addAll(driven.inputs());
        return resume.kept(console, subjects, inputs);
    }

    private AfterOptions.Read driven(Subject subject) {
        if (asked.runsOf == null) {
            return AfterOptions.Read.of(after, asked.card(), subject, console);
        }
        if (!after.isEmpty() || asked.card != null) {
            throw new InvalidValueException(
                    "--runs-of",
                    "--after gives laps as well",
                    "leave one out, or note them with 'lapwright event run'");
        }
        EventFolder folder = EventFolder.of(SafeFile.path(asked.runsOf));
        return AfterOptions.Read.of(EventRuns.of(folder.read(), folder, subject));
    }

    @Override
    public Report report(BriefReport brief) {
        return files.report(brief);
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
