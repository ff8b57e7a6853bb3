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
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.logs.LapLogs;
import dev.lapwright.notebook.Event;
import dev.lapwright.notebook.EventFolder;
import dev.lapwright.notebook.EventRun;
import dev.lapwright.notebook.RunText;
import dev.lapwright.report.Report;
import dev.lapwright.results.Subject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
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

    @Option(names = "--log", paramLabel = "LOG", description = "A log of lap times: each of its runs becomes a run.")
    private String log;

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
        if (number != null) {
            more(folder, event);
        } else if (log != null) {
            ofLog(folder, event);
        } else {
            EventRun run = noted(EventRun.of(settings(event, event.settingsNow())));
            check(event, run);
            add(folder, event, event.settingsNow(), run);
        }
        return ExitCode.DONE;
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
        if (setup != null || !settings.isEmpty() || log != null) {
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

    private void add(EventFolder folder, Event event, Map<String, Double> before, EventRun run) {
        EventRun asked = run;
        boolean changed = !RunEntry.onlyWhatDiffers(event.car(), before).equals(run.settings());
        if (changed && expected == null && !unasked) {
            Subject from = LineOptions.driveStandard(subject(event, before), console);
            PredictedChange predicted =
                    PredictedChange.of(from, from.in(new Setup("as noted", run.settings())), true, console);
            asked = RunEntry.expecting(run, predicted);
        }
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

    /** The runs of a log, one after the other. */
    private void ofLog(EventFolder folder, Event event) {
        TimingLog read = LapLogs.read(LapLogs.find(log)).log();
        List<EventRun> runs = new ArrayList<>();
        Map<String, Double> now = settings(event, event.settingsNow());
        for (int r = 0; r < read.runs(); r++) {
            List<EventRun.TimedLap> driven = new ArrayList<>();
            String label = "";
            for (int i = 0; i < read.laps().size(); i++) {
                if (read.run(i) == r) {
                    TimingLog.Lap lap = read.laps().get(i);
                    driven.add(new EventRun.TimedLap(lap.time(), lap.flag()));
                    label = lap.setup();
                }
            }
            now = named(event, now, label);
            EventRun run = noted(EventRun.of(now).with(driven));
            check(event, run);
            runs.add(run);
        }
        Map<String, Double> before = event.settingsNow();
        for (EventRun run : runs) {
            add(folder, event, before, run);
            before = run.settings();
        }
    }

    /** The settings with those that a log's name of a setup tells. */
    private Map<String, Double> named(Event event, Map<String, Double> now, String label) {
        if (label.indexOf('=') < 1) {
            return now;
        }
        Map<String, Double> told = RunText.settings(label, event.car());
        for (String text : settings) {
            String name = text.split("=", 2)[0].strip();
            if (told.containsKey(name) && !told.get(name).equals(now.get(name))) {
                throw new InvalidValueException(
                        "-s " + text,
                        "the log says that its laps were driven with " + label,
                        "leave it out, or give the laps that belong to it");
            }
        }
        Map<String, Double> all = new LinkedHashMap<>(now);
        all.putAll(told);
        return RunEntry.onlyWhatDiffers(event.car(), all);
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
