package dev.lapwright.cli.event;

import dev.lapwright.car.Setup;
import dev.lapwright.cli.option.DemoNames;
import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.option.PredictedChange;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.cli.output.TerminalReport;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.logs.LapLogs;
import dev.lapwright.notebook.Event;
import dev.lapwright.notebook.EventFolder;
import dev.lapwright.notebook.EventRun;
import dev.lapwright.report.Report;
import dev.lapwright.results.Subject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Command {@code event run}: a run noted, or more of one that was. */
@Command(
        name = "run",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Notes a run: what was changed since the last one, and what is known of it. What a change was",
            "expected to do is asked of the model, unless it is given. The file may be edited by hand."
        },
        customSynopsis = {
            "lapwright event run [FOLDER] [-s NAME=VALUE]... [--laps TIMES] [OPTIONS]",
            "       lapwright event run [FOLDER] --number N --laps TIMES [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright event run mine/day -s rear-wing=7 --fuel 38 --cold \"FL 24psi, FR 24psi\"",
            "      Before it is driven; then: lapwright event run mine/day --number 1 --laps 1:45.10,1:45.31",
            "  lapwright event run mine/day --log castelvane-wings.csv",
            "      Each run of a lap log becomes a run; setups named like rear-wing=7 are set."
        })
public final class EventRunCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    public HelpOption help;

    @Mixin
    private EventPlace place;

    @Option(
            names = "--setup",
            paramLabel = "SETUP",
            completionCandidates = DemoNames.Setups.class,
            description = "A whole setup: a file, or the name of a demo.")
    private String setup;

    @Option(
            names = {"-s", "--set"},
            paramLabel = "NAME=VALUE",
            description = "What was changed since the last run; may be repeated.")
    private List<String> settings = new ArrayList<>();

    @Option(
            names = "--laps",
            paramLabel = "TIMES",
            description = "Lap times with commas between: 1:45.103,1:44.9; out, in or spoilt may stand behind one.")
    private String laps;

    @Option(
            names = "--log",
            paramLabel = "LOG",
            description =
                    "A log of lap times, as 'lapwright evidence' reads it: each of its runs becomes a run. Or one of laps with"
                            + " their speeds, as 'lapwright fit' does, which is kept with the event; or one of tyre pressures, for the"
                            + " last run, or the one that --number names.")
    private String log;

    @Option(
            names = "--column",
            paramLabel = "NAME=HEADING[:UNIT]",
            description =
                    "Says which column of a log of speeds holds what, as 'lapwright fit' takes it. May be repeated.")
    private List<String> columns = new ArrayList<>();

    @Option(names = "--fuel", paramLabel = "LITRES", description = "Fuel on board at its beginning, litres.")
    private String fuel;

    @Option(
            names = "--cold",
            paramLabel = "TYRES",
            description = "Pressures as set: \"FL 24psi, FR 24psi, RL 23psi, RR 23psi\".")
    private String cold;

    @Option(names = "--hot", paramLabel = "TYRES", description = "Pressures as read after it.")
    private String hot;

    @Option(
            names = "--tread",
            paramLabel = "TYRES",
            description = "Temperatures across the treads, degC, inner edge first: \"FL 92/86/80, FR 90/85/80\".")
    private String tread;

    @Option(names = "--driver", paramLabel = "TEXT", description = "The driver's words.")
    private String driver;

    @Option(names = "--tyres", paramLabel = "TEXT", description = "Which tyres were on.")
    private String tyres;

    @Option(names = "--remark", paramLabel = "TEXT", description = "Anything else.")
    private String remark;

    @Option(
            names = "--expected",
            paramLabel = "SECONDS",
            description =
                    "What was expected of the change: \"-0.25 s, give or take 0.1 s\", one standard deviation; asked of the model if left out.")
    private String expected;

    @Option(names = "--no-expectation", description = "Asks the model nothing.")
    private boolean unasked;

    @Option(names = "--number", paramLabel = "N", description = "Adds to run N in place of noting a new one.")
    private Integer number;

    public EventRunCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        if (laps != null && log != null) {
            throw new InvalidValueException("--laps and --log", "both give laps", "leave one out");
        }
        EventFolder folder = place.folder();
        Event event = folder.read();
        if (columns.isEmpty() || log != null) {
            note(folder, event);
        } else {
            throw new InvalidValueException("--column", "there is no log whose column it could be", "add --log LOG");
        }
        return ExitCode.DONE;
    }

    private void note(EventFolder folder, Event event) {
        if (log != null) {
            ofLog(folder, event);
        } else if (number != null) {
            more(folder, event);
        } else {
            EventRun run = noted(EventRun.of(settings(event, event.settingsNow())));
            check(event, run);
            add(folder, event, expecting(event, event.settingsNow(), run));
        }
    }

    private Map<String, Double> settings(Event event, Map<String, Double> before) {
        Map<String, Double> all = new LinkedHashMap<>(before);
        if (setup != null) {
            all.clear();
            all.putAll(SetupOptions.read(setup, event.car(), console).settings());
        }
        all.putAll(subject(event, Map.of()).with(settings).setup().settings());
        return RunEntry.onlyWhatDiffers(event.car(), all);
    }

    private static Subject subject(Event event, Map<String, Double> settings) {
        Setup set = new Setup("as noted", settings);
        return new Subject(event.car(), set, event.car().with(set), event.track(), event.day());
    }

    /** What was told of a run beside its setup. */
    private EventRun noted(EventRun before) {
        return new RunEntry(laps, fuel, cold, hot, tread, driver, tyres, remark, expected).on(before);
    }

    private void more(EventFolder folder, Event event) {
        if (setup != null || !settings.isEmpty()) {
            throw new InvalidValueException(
                    "--number",
                    "a run's setup is what it was driven with",
                    "note another run, or edit its file if it was written down wrong");
        }
        folder.change(number, event.car(), run -> {
            EventRun changed = noted(run);
            check(event, changed);
            return changed;
        });
        console.line("Added to run " + number + ".");
    }

    private EventRun expecting(Event event, Map<String, Double> before, EventRun run) {
        boolean changed = !RunEntry.onlyWhatDiffers(event.car(), before).equals(run.settings());
        if (!changed || expected != null || unasked) {
            return run;
        }
        Subject from = LineOptions.driveStandard(subject(event, before), console);
        return RunEntry.expecting(
                run, PredictedChange.of(from, from.in(new Setup("as noted", run.settings())), true, console));
    }

    private void add(EventFolder folder, Event event, EventRun asked) {
        int given = folder.add(asked, event.car());
        Report report = new Report().title("Run " + given, ": " + Report.verbatim(event.label(asked)));
        String told = RunEntry.told(asked.expected());
        if (!told.isEmpty()) {
            report.item("Expected", told);
        }
        if (!asked.laps().isEmpty()) {
            report.item("Laps", Integer.toString(asked.laps().size()));
        }
        TerminalReport.print(console, report);
    }

    /** The runs of a log, one after the other, all looked at before the first is written; or the pressures of one. */
    private void ofLog(EventFolder folder, Event event) {
        LoggedRuns logged = new LoggedRuns(
                LapLogs.find(log), columns, LineOptions.driveStandard(subject(event, event.settingsNow()), console));
        if (logged.isOfPressures()) {
            ofPressures(folder, event, logged);
            return;
        }
        if (number != null) {
            throw new InvalidValueException(
                    "--number", "a log of laps is a run of its own", "leave it out; or add its times with --laps");
        }
        Set<String> typed = settings.stream()
                .map(text -> text.split("=", 2)[0].strip())
                .collect(Collectors.toCollection(LinkedHashSet::new));
        List<EventRun> asked = new ArrayList<>();
        Map<String, Double> before = event.settingsNow();
        for (EventRun run : logged.runs(event, settings(event, before), typed, this::noted)) {
            asked.add(expecting(event, before, run));
            before = run.settings();
        }
        asked.forEach(run -> add(folder, event, logged.kept(run, folder)));
    }

    private void ofPressures(EventFolder folder, Event event, LoggedRuns logged) {
        if (setup != null || !settings.isEmpty()) {
            throw new InvalidValueException(
                    "--log " + log,
                    "it holds pressures, which belong to a run that there is",
                    "leave settings out; --number N says which run it is, if not the last");
        }
        int last = event.runs().stream().mapToInt(Event.Numbered::number).max().orElse(0);
        int chosen = number == null ? last : number;
        folder.change(chosen, event.car(), run -> noted(logged.pressures(run)));
        console.line("Added to run " + chosen + ".");
    }

    /** Laps that no such car drives there are of another circuit. */
    private void check(Event event, EventRun run) {
        if (!RunEntry.isTimed(run)) {
            return;
        }
        Subject driven = LineOptions.driveStandard(subject(event, run.settings()), console);
        RunEntry.check(event, run, LapSolver.on(driven.driven()).lapTime(Vehicle.of(driven.car(), driven.day())));
    }
}
