package dev.lapwright.cli.bench;

import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.DemoNames;
import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.option.LineRoomOptions;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.documents.LineKind;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.files.SafeFile;
import dev.lapwright.line.LineChoices;
import dev.lapwright.report.UnitSystem;
import dev.lapwright.results.Subject;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Command {@code bench}: a page in the browser on which knobs are turned while the lap is watched. */
@Command(
        name = "bench",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Opens a page in the browser: turn a knob and watch the lap.",
            "Inside an event's folder it has the event's car, circuit, day and notebook.",
            "Its server listens on this machine alone, and ends with Ctrl-C or a while after the last window was closed."
        },
        customSynopsis = {
            "lapwright bench [CAR [CIRCUIT]] [--setup SETUP] [-s NAME=VALUE]... [OPTIONS]",
            "       lapwright bench --state FILE [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright bench gt-talvex castelvane",
            "      A demo car at a demo circuit; others can be chosen on the page.",
            "  lapwright bench gt-talvex castelvane -s rear-wing=8 --folder setups --no-browser",
            "      Begins with the rear wing at 8, saves to the folder setups, and only prints the address."
        })
public final class BenchCommand implements Callable<Integer> {
    /** Seconds without a window after which it ends: a page that is reloaded is back long before. */
    private static final int PATIENCE_S = 90;

    private final Console console;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "CAR",
            completionCandidates = DemoNames.Cars.class,
            description = "Car: a file, or the name of a demo. Without it the first demo.")
    private String car;

    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "CIRCUIT",
            completionCandidates = DemoNames.Circuits.class,
            description = "Circuit or open run: a file, or the name of a demo. Without it the first demo.")
    private String circuit;

    @ArgGroup(validate = false, heading = "%nBench:%n")
    private final Place place = new Place();

    @ArgGroup(validate = false, heading = "%nSetup:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @Mixin
    public HelpOption help;

    public BenchCommand(Console console) {
        this.console = console;
    }

    /** Where it listens, and where it saves. */
    static final class Place {
        @Option(
                names = "--state",
                paramLabel = "FILE",
                description = "A state that was saved on the page: car, circuit, line, day, setup and pins.")
        private String state;

        @Option(
                names = "--line",
                paramLabel = "LINE",
                defaultValue = "smoothest",
                completionCandidates = Lines.class,
                description =
                        "Line to begin with: smoothest, the least bending, if left out; fastest, the least time for the"
                                + " car as set up, found first; middle, the circuit's own path; or a FILE that 'lapwright line'"
                                + " wrote.")
        private String line;

        @Option(
                names = "--no-cache",
                description = "Looks for each fastest line anew, though it may have been found before, and keeps none.")
        private boolean noCache;

        @Option(
                names = "--folder",
                paramLabel = "FOLDER",
                defaultValue = ".",
                description = "Where the page saves setups, states and pages; this folder if left out.")
        private String folder;

        @Option(
                names = "--port",
                paramLabel = "N",
                defaultValue = "0",
                description = "Port to listen on; any free one if left out.")
        private int port;

        @Option(names = "--no-browser", description = "Only prints the address, and opens no browser.")
        private boolean noBrowser;
    }

    /** Words for lines, for shell completion. */
    static final class Lines extends ArrayList<String> {
        private static final long serialVersionUID = 1L;

        Lines() {
            for (LineKind kind : LineKind.values()) {
                add(kind.word());
            }
        }
    }

    @Override
    public Integer call() throws InterruptedException {
        try (BenchServer server = start()) {
            console.line("The bench is at " + server.address());
            console.flush();
            boolean opened = !place.noBrowser && BrowserStart.open(server.address());
            console.line(invitation(opened));
            console.flush();
            server.windows().awaitDesertion();
            console.line("The last window was closed: the bench has ended.");
        }
        return ExitCode.DONE;
    }

    /** What to do now that it is there; where no browser could be started, somebody opens it by hand. */
    static String invitation(boolean opened) {
        return (opened ? "It is being opened in the browser." : "Open that address in a browser on this machine.")
                + " Ctrl-C ends it, and so does closing its last window.";
    }

    /** Reads what was named, and starts the server. */
    BenchServer start() {
        Check.inRange("--port", place.port, 0, 65_535);
        SavedFiles saved = new SavedFiles(SafeFile.path(place.folder));
        Question first = place.state == null ? null : state(place.state);
        Catalogue catalogue = new Catalogue(
                first == null ? named(car) : first.car(),
                first == null ? named(circuit) : first.circuit(),
                isKind(place.line) ? "" : place.line,
                named(conditions.conditions));
        if (first == null) {
            first = question(
                    car == null ? catalogue.firstCar() : car, circuit == null ? catalogue.firstCircuit() : circuit);
        }
        // What is wrong with the documents is said here, not on the page.
        catalogue.car(first.car());
        catalogue.circuit(first.circuit());
        if (first.line().word().equals(Question.LineWish.FILE)) {
            catalogue.line().on(catalogue.circuit(first.circuit()), catalogue.car(first.car()), LineChoices.DEFAULT);
        }
        LineRoomOptions lines = new LineRoomOptions();
        lines.noCache = place.noCache;
        return new BenchServer(new Sheets(catalogue, lines.finder(console)), saved, first, place.port, PATIENCE_S);
    }

    private static boolean isKind(String line) {
        return new Lines().contains(line);
    }

    private static String named(String document) {
        return document == null ? "" : document;
    }

    private Question state(String file) {
        if (car != null || setup.setup != null || !setup.settings.isEmpty()) {
            throw new InvalidValueException(
                    "--state", "car and setup are in that state already", "leave CAR, --setup and -s out");
        }
        DocumentSource source = DocumentSource.ofFile(SafeFile.path(file));
        Fields fields = Fields.of(source.name(), source.text());
        if (!fields.text("lapwright", "").equals(Question.MARK)) {
            throw new InvalidValueException(
                    file, "this is no state of the bench", "name a file that its page has saved as a state");
        }
        return Question.of(fields);
    }

    private Question question(String carName, String circuitName) {
        Subject subject = Subject.of(carName, circuitName, setup.setup, setup.settings, conditions.day());
        subject.notes().forEach(note -> console.remark("Note: " + note));
        Map<String, Double> day = Question.Stand.values(subject.day());
        String name = setup.settings.isEmpty() ? subject.setup().name() : "as started";
        Question.Stand pinned = new Question.Stand(name, subject.setup().settings(), day);
        Question.Stand now = new Question.Stand("now", pinned.set(), day);
        String line = isKind(place.line) ? place.line : Question.LineWish.FILE;
        return new Question(
                carName,
                circuitName,
                new Question.LineWish(line, pinned),
                now,
                List.of(pinned),
                "",
                "lap",
                new Question.Zoom(0, 0),
                30,
                0.3,
                20,
                List.of(),
                UnitSystem.SI);
    }
}
