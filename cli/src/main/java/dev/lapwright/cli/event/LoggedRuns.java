package dev.lapwright.cli.event;

import dev.lapwright.car.Setup;
import dev.lapwright.car.Unit;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.logs.DrivenLapSelection;
import dev.lapwright.logs.DrivenLog;
import dev.lapwright.logs.DrivenLogs;
import dev.lapwright.logs.LapLogs;
import dev.lapwright.logs.PressureLog;
import dev.lapwright.logs.RunLogs;
import dev.lapwright.notebook.Event;
import dev.lapwright.notebook.EventFolder;
import dev.lapwright.notebook.EventRun;
import dev.lapwright.notebook.RunText;
import dev.lapwright.results.Subject;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.tyre.TreadTemperatures;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;

/**
 * Runs that a log becomes, by the command or dropped on the bench: a log of lap times each of its runs, a log of laps with their speeds one,
 * kept beside it. A log of pressures adds its readings to a run that there is.
 *
 * @param log as it was read
 * @param columns which column of a log with speeds holds what, where its headings do not tell
 * @param stands the car as it stands in the event, on the line that laps are driven on
 */
public record LoggedRuns(DocumentSource log, List<String> columns, Subject stands) {
    public LoggedRuns {
        columns = List.copyOf(columns);
    }

    /** Whether it holds pressures and no laps. */
    public boolean isOfPressures() {
        return PressureLog.isOne(log);
    }

    /** Whether it is a log of lap times that says what was set. */
    public boolean namesSetups() {
        return columns.isEmpty()
                && !RunLogs.holdsSpeeds(log)
                && LapLogs.read(log).log().setups().stream().anyMatch(LoggedRuns::isTold);
    }

    private static boolean isTold(String label) {
        return label.indexOf('=') > 0;
    }

    /**
     * The runs, checked: laps of another circuit, a setup that contradicts what is said of it, and laps that are noted already are refused.
     *
     * @param event to which they are added
     * @param before settings that hold where the log names none
     * @param typed names of those among them that were said of this very log
     * @param said adds what else was said of each
     */
    public List<EventRun> runs(
            Event event, Map<String, Double> before, Set<String> typed, UnaryOperator<EventRun> said) {
        List<EventRun> runs = new ArrayList<>();
        if (!columns.isEmpty() || RunLogs.holdsSpeeds(log)) {
            runs.add(said.apply(withSpeeds(RunEntry.onlyWhatDiffers(event.car(), before))));
        } else {
            timed(event, before, typed).forEach(run -> runs.add(said.apply(run)));
        }
        runs.forEach(run -> check(event, run));
        return runs;
    }

    private EventRun withSpeeds(Map<String, Double> settings) {
        DrivenLog read =
                DrivenLogs.read(log, columns.stream().map(DrivenLogs::column).toList());
        DrivenLapSelection pick = DrivenLapSelection.of(List.of(read), stands.driven(), List.of());
        TimingLog times = RunLogs.times(List.of(new RunLogs.Driven(read, pick, "as noted")))
                .log();
        return EventRun.of(settings).with(laps(times, 0));
    }

    private static List<EventRun.TimedLap> laps(TimingLog times, int run) {
        List<EventRun.TimedLap> laps = new ArrayList<>();
        for (int i = 0; i < times.laps().size(); i++) {
            if (times.run(i) == run) {
                TimingLog.Lap lap = times.laps().get(i);
                laps.add(new EventRun.TimedLap(RunText.milliseconds(lap.time()), lap.flag()));
            }
        }
        return laps;
    }

    private List<EventRun> timed(Event event, Map<String, Double> before, Set<String> typed) {
        TimingLog times = LapLogs.read(log).log();
        List<EventRun> runs = new ArrayList<>();
        Map<String, Double> now = before;
        for (int r = 0; r < times.runs(); r++) {
            String label = "";
            for (int i = 0; i < times.laps().size(); i++) {
                label = times.run(i) == r ? times.laps().get(i).setup() : label;
            }
            now = named(event, now, typed, label);
            runs.add(EventRun.of(now).with(laps(times, r)));
        }
        return runs;
    }

    /** The settings with those that a log's name of a setup tells. */
    private static Map<String, Double> named(Event event, Map<String, Double> now, Set<String> typed, String label) {
        if (!isTold(label)) {
            return RunEntry.onlyWhatDiffers(event.car(), now);
        }
        Map<String, Double> told = RunText.settings(label, event.car());
        for (String name : typed) {
            if (told.containsKey(name) && !told.get(name).equals(now.get(name))) {
                throw new InvalidValueException(
                        name,
                        "it is given, and the log says that its laps were driven with " + label,
                        "leave it out, or give the laps that belong to it");
            }
        }
        Map<String, Double> all = new LinkedHashMap<>(now);
        all.putAll(told);
        return RunEntry.onlyWhatDiffers(event.car(), all);
    }

    private void check(Event event, EventRun run) {
        for (Event.Numbered noted : event.runs()) {
            if (run.laps().size() > 1 && run.laps().equals(noted.run().laps())) {
                throw new InvalidValueException(
                        log.name(),
                        "its laps are those of run " + noted.number() + ", to the thousandth",
                        "each log is given once; take another");
            }
        }
        if (RunEntry.isTimed(run)) {
            Subject driven = stands.in(new Setup("as noted", run.settings()));
            RunEntry.check(event, run, LapSolver.on(driven.driven()).lapTime(Vehicle.of(driven.car(), driven.day())));
        }
    }

    /** The run with this log kept beside it, where that holds speeds. */
    public EventRun kept(EventRun run, EventFolder folder) {
        return !columns.isEmpty() || RunLogs.holdsSpeeds(log)
                ? run.with(new EventRun.KeptLog(folder.keep(log.name(), log), columns))
                : run;
    }

    /**
     * A run with the pressures and treads of this log.
     *
     * @throws InvalidValueException if it holds more than one run: which of them this is nobody says
     */
    public EventRun pressures(EventRun run) {
        PressureDay day = new PressureDay(
                stands.day().airTempC(), stands.day().airTempC(), stands.day().airPressureHpa());
        PressureLog read = PressureLog.read(log, day, Double.NaN, Unit.PSI);
        Map<String, Double> cold = new LinkedHashMap<>();
        Map<String, Double> hot = new LinkedHashMap<>();
        for (PressurePair pair : read.pairs()) {
            if (cold.put(pair.wheel().code(), pair.coldKpa()) != null) {
                throw new InvalidValueException(
                        log.name(),
                        "it has several rows for " + pair.wheel().code() + ", of several runs",
                        "give the readings of one run, a row a tyre");
            }
            hot.put(pair.wheel().code(), pair.hotKpa());
        }
        Map<String, TreadTemperatures> treads = new LinkedHashMap<>(run.tyres().treads());
        read.tread().forEach((wheel, tread) -> treads.put(wheel.code(), tread));
        return run.with(new EventRun.TyreReadings(cold, hot, treads));
    }
}
