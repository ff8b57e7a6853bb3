package dev.lapwright.cli.brief;

import dev.lapwright.brief.Brief;
import dev.lapwright.brief.Proof;
import dev.lapwright.car.Setup;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.evidence.CleanLaps;
import dev.lapwright.evidence.Evidence;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.ColumnChoice;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.fit.DrivenRun;
import dev.lapwright.logs.DrivenLapSelection;
import dev.lapwright.logs.DrivenLog;
import dev.lapwright.logs.DrivenLogs;
import dev.lapwright.logs.LapLogFile;
import dev.lapwright.logs.LapLogs;
import dev.lapwright.logs.RunCard;
import dev.lapwright.logs.RunLogs;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.FitReport;
import dev.lapwright.results.InputHash;
import dev.lapwright.results.Subject;
import dev.lapwright.results.event.EventRuns;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Option;

/** A log given to the command {@code brief} after driving, and what the car was set to in it. */
public final class AfterOptions {
    @Option(
            names = "--after",
            required = true,
            paramLabel = "LOG",
            description = "After driving: a log of lap times, as 'lapwright evidence' reads it, or of laps with their"
                    + " speeds, as 'lapwright fit' does; a file or the name of a demo. May be repeated, one for each run. A log"
                    + " of lap times names setups by what was set (rear-wing=8), or base for the car as it stands here. Or the"
                    + " flying laps of one run, typed: --after \"1:36.2 1:35.9 1:36.4\".")
    public String log;

    @Option(
            names = "--with",
            paramLabel = "SETTING",
            description =
                    "What was set otherwise than here in all of the log before it: NAME=VALUE as in -s, or a setup, a"
                            + " file or the name of a demo. May be repeated. Without it a log that names no setups was driven as the car"
                            + " stands here.")
    public List<String> settings = new ArrayList<>();

    @Option(
            names = "--column",
            paramLabel = "NAME=HEADING[:UNIT]",
            description =
                    "Says which column of the log of speeds before it holds what, as 'lapwright fit' takes it. May be"
                            + " repeated.")
    public List<String> columns = new ArrayList<>();

    /** The car as it was set in this log. */
    private Subject subject(Subject stands, Console console) {
        Subject subject = stands;
        for (String text : settings) {
            if (text.indexOf('=') >= 0) {
                subject = subject.with(List.of(text));
                continue;
            }
            Setup all = subject.setup();
            for (Map.Entry<String, Double> setting :
                    SetupOptions.read(text, stands.bare(), console).settings().entrySet()) {
                all = all.with(setting.getKey(), setting.getValue());
            }
            subject = subject.in(all);
        }
        SetupOptions.remark(subject, stands, console);
        return subject;
    }

    /** As a log of lap times would name it. */
    private static String name(Subject set, Subject stands) {
        Map<String, Double> before = stands.setup().settings();
        List<String> otherwise = set.setup().settings().entrySet().stream()
                .filter(setting -> !setting.getValue().equals(before.get(setting.getKey())))
                .map(setting -> setting.getKey() + "=" + Numbers.plain(setting.getValue()))
                .toList();
        return otherwise.isEmpty() ? Proof.BASE : String.join(",", otherwise);
    }

    /**
     * Logs read.
     *
     * @param times lap times; empty where no log was given
     * @param evidence how to look at them
     * @param runs laps with their speeds; may be empty
     * @param event whose runs they are; empty where logs were named
     */
    record Read(Optional<LapLogFile> times, Evidence evidence, List<FitReport.Run> runs, Optional<EventRuns> event) {
        Read {
            runs = List.copyOf(runs);
        }

        /**
         * All logs given, in their order. Lap times are those of the logs of lap times, where there are any.
         *
         * @param card whose runs they are; empty where they say so themselves
         */
        static Read of(List<AfterOptions> given, Optional<RunCard> card, Subject stands, Console console) {
            if (card.isPresent() && given.stream().anyMatch(one -> !one.settings.isEmpty())) {
                throw new InvalidValueException(
                        "--card", "the card says what was set, and --with does too", "leave one of the two out");
            }
            if (card.isPresent() && given.isEmpty()) {
                throw new InvalidValueException("--card", "there is no log of it", "add --after LOG");
            }
            List<RunLogs.Timed> timed = new ArrayList<>();
            List<RunLogs.Driven> driven = new ArrayList<>();
            List<FitReport.Run> runs = new ArrayList<>();
            boolean typed = areTyped(given);
            for (AfterOptions one : given) {
                DocumentSource source = LapLogs.typed(one.log).orElseGet(() -> LapLogs.find(one.log));
                Subject set =
                        card.isPresent() ? onCard(card.get(), driven.size(), stands) : one.subject(stands, console);
                List<ColumnChoice> columns =
                        one.columns.stream().map(DrivenLogs::column).toList();
                if (!typed && (!columns.isEmpty() || RunLogs.holdsSpeeds(source))) {
                    DrivenLog log = DrivenLogs.read(source, columns);
                    DrivenLapSelection pick = DrivenLapSelection.of(List.of(log), stands.driven(), List.of());
                    driven.add(new RunLogs.Driven(log, pick, name(set, stands)));
                    runs.add(new FitReport.Run(set, List.of(log), pick));
                } else {
                    timed.add(new RunLogs.Timed(LapLogs.read(source), one.settings.isEmpty() ? "" : name(set, stands)));
                }
            }
            if (!driven.isEmpty()) {
                card.ifPresent(its -> its.check("--after", driven.size()));
            }
            // Of laps with their speeds those at pace count from the first, and of those that somebody typed all.
            CleanLaps.Rule fromTheFirst = new CleanLaps.Rule(0, CleanLaps.Rule.DEFAULT.slowLimit());
            if (!timed.isEmpty()) {
                LapLogFile times = RunLogs.together(timed);
                return new Read(
                        Optional.of(card.map(its -> its.naming(times)).orElse(times)),
                        typed ? Evidence.DEFAULT.rule(fromTheFirst) : Evidence.DEFAULT,
                        runs,
                        Optional.empty());
            }
            return new Read(
                    driven.isEmpty() ? Optional.empty() : Optional.of(RunLogs.times(driven)),
                    Evidence.DEFAULT.rule(fromTheFirst),
                    runs,
                    Optional.empty());
        }

        /** Whether lap times are typed; those of logs have laps that do not count, so that nobody should mix the two. */
        private static boolean areTyped(List<AfterOptions> given) {
            long typed = given.stream()
                    .filter(one -> LapLogs.typed(one.log).isPresent())
                    .count();
            if (typed > 0 && typed < given.size()) {
                throw new InvalidValueException(
                        "--after",
                        "some laps are typed, and others in a log",
                        "type all of them, or write what is typed into a log: a column time, and one setup");
            }
            return typed > 0;
        }

        /** The car as it was set in a run of a card, counted from 0; as it stands where there is no such run, which is told later. */
        private static Subject onCard(RunCard card, int run, Subject stands) {
            String setup = run < card.setups().size() ? card.setups().get(run) : Proof.BASE;
            return setup.equals(Proof.BASE) ? stands : stands.with(List.of(setup.split(",")));
        }

        /** All runs of an event so far. */
        static Read of(EventRuns event) {
            return new Read(event.times(), Evidence.DEFAULT, event.driven(), Optional.of(event));
        }

        /** What it is, in words. */
        List<String> inputs() {
            List<String> inputs = new ArrayList<>(List.of(evidence.toString()));
            times.ifPresent(file -> inputs.add(file.log().laps().toString()));
            runs.forEach(run -> inputs.add(InputHash.of(run.pick().laps())));
            event.ifPresent(its -> inputs.add(its.pressures().toString()));
            return inputs;
        }

        /** The brief after driving. */
        Brief after(Brief brief) {
            if (event.isPresent()) {
                return event.get().after(brief);
            }
            Brief after = times.isPresent() ? brief.after(times.get().log(), evidence) : brief;
            return after.fitting(runs.stream()
                    .map(run -> new DrivenRun(
                            run.subject().car(), run.subject().day(), run.pick().laps()))
                    .toList());
        }
    }
}
