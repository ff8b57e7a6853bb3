package dev.lapwright.results.event;

import dev.lapwright.brief.Brief;
import dev.lapwright.brief.Proof;
import dev.lapwright.car.Setup;
import dev.lapwright.car.Unit;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fit.DrivenRun;
import dev.lapwright.fit.Fit;
import dev.lapwright.logs.DrivenLapSelection;
import dev.lapwright.logs.DrivenLog;
import dev.lapwright.logs.DrivenLogs;
import dev.lapwright.logs.LapLogFile;
import dev.lapwright.notebook.Event;
import dev.lapwright.notebook.EventFolder;
import dev.lapwright.notebook.EventRun;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.FitReport;
import dev.lapwright.results.PressuresReport;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.study.pressures.Pressures;
import dev.lapwright.tyre.TreadTemperatures;
import dev.lapwright.tyre.Wheel;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Runs of an event as the studies of driven laps take them: all lap times so far, the laps logged with their speeds, and the pressures read.
 *
 * @param stands the car as it is set up now, where laps are driven on
 * @param times of all runs, each setup named by what it sets otherwise than the car stands; empty without laps
 * @param driven laps with their speeds, in the order of the runs; may be empty
 * @param pressures as set and as read after it, in the order of the runs; may be empty
 * @param treads temperatures across each tread, the last that were read
 */
public record EventRuns(
        Subject stands,
        Optional<LapLogFile> times,
        List<FitReport.Run> driven,
        List<PressurePair> pressures,
        Map<Wheel, TreadTemperatures> treads) {
    public EventRuns {
        driven = List.copyOf(driven);
        pressures = List.copyOf(pressures);
        treads = Map.copyOf(treads);
    }

    /**
     * Those of an event.
     *
     * @param folder that it is kept in
     * @param stands the car as it is set up now
     * @throws dev.lapwright.fault.LapwrightException if a log that is kept cannot be used
     */
    public static EventRuns of(Event event, EventFolder folder, Subject stands) {
        List<FitReport.Run> driven = new ArrayList<>();
        List<PressurePair> pressures = new ArrayList<>();
        Map<Wheel, TreadTemperatures> treads = new EnumMap<>(Wheel.class);
        PressureDay day = new PressureDay(
                stands.day().airTempC(), stands.day().airTempC(), stands.day().airPressureHpa());
        for (Event.Numbered numbered : event.runs()) {
            EventRun run = numbered.run();
            Subject set = stands.in(new Setup("run " + numbered.number(), run.settings()));
            if (run.log().isPresent()) {
                DrivenLog log = DrivenLogs.read(
                        folder.log(run.log().get()),
                        run.log().get().columns().stream()
                                .map(DrivenLogs::column)
                                .toList());
                driven.add(new FitReport.Run(
                        set, List.of(log), DrivenLapSelection.of(List.of(log), stands.driven(), List.of())));
            }
            run.tyres().hotKpa().forEach((tyre, hot) -> {
                Double cold = run.tyres().coldKpa().get(tyre);
                if (cold != null) {
                    pressures.add(new PressurePair(Wheel.named(tyre).get(0), cold, hot, day.airTempC(), day));
                }
            });
            run.tyres()
                    .treads()
                    .forEach((tyre, tread) -> treads.put(Wheel.named(tyre).get(0), tread));
        }
        return new EventRuns(stands, times(event, stands), driven, pressures, treads);
    }

    private static Optional<LapLogFile> times(Event event, Subject stands) {
        List<TimingLog.Lap> laps = new ArrayList<>();
        for (Event.Numbered numbered : event.runs()) {
            String name = name(stands, numbered.run().settings());
            int lap = 1;
            for (EventRun.TimedLap timed : numbered.run().laps()) {
                laps.add(new TimingLog.Lap(
                        lap++, timed.time(), name, Integer.toString(numbered.number()), timed.flag()));
            }
        }
        return laps.isEmpty()
                ? Optional.empty()
                : Optional.of(new LapLogFile("runs of " + event.name(), TimingLog.of(laps), "the event's notebook"));
    }

    /** A setup as a log of lap times names it: by all that it sets otherwise than the car stands. */
    private static String name(Subject stands, Map<String, Double> settings) {
        Setup set = new Setup("as noted", settings);
        Subject subject = stands.in(set);
        Set<String> names = new LinkedHashSet<>(settings.keySet());
        names.addAll(stands.setup().settings().keySet());
        String name = names.stream()
                .sorted()
                .filter(one -> subject.valueOf(one) != stands.valueOf(one))
                .map(one -> one + "=" + Numbers.plain(subject.valueOf(one)))
                .collect(Collectors.joining(","));
        return name.isEmpty() ? Proof.BASE : name;
    }

    /** Whether there are laps to look back on. */
    public boolean isDriven() {
        return times.isPresent();
    }

    /** A brief after all these runs. */
    public Brief after(Brief brief) {
        Brief after = times.isPresent() ? brief.after(times.get().log()) : brief;
        after = after.fitting(driven.stream()
                .map(run -> new DrivenRun(
                        run.subject().car(), run.subject().day(), run.pick().laps()))
                .toList());
        return pressures.isEmpty() ? after : after.withPressures(pressures);
    }

    /** The car fitted to all laps with their speeds; empty where there are none. */
    public Optional<FitReport> fit(StudyRun how) {
        if (driven.isEmpty()) {
            return Optional.empty();
        }
        FitReport.Run first = driven.get(0);
        Fit fit = Fit.of(first.subject().car(), stands.driven(), stands.day())
                .laps(first.pick().laps());
        for (FitReport.Run run : driven.subList(1, driven.size())) {
            fit = fit.also(new DrivenRun(
                    run.subject().car(), run.subject().day(), run.pick().laps()));
        }
        return Optional.of(new FitReport(driven, fit.run(how), stands.bare().name()));
    }

    /** What the pressures read say of those to set; empty where none were read both cold and hot. */
    public Optional<PressuresReport> pressuresToSet() {
        if (pressures.isEmpty()) {
            return Optional.empty();
        }
        Pressures study = Pressures.of(stands.car(), stands.driven(), stands.day(), pressures);
        for (Map.Entry<Wheel, TreadTemperatures> one : treads.entrySet()) {
            study = study.withTread(one.getKey(), one.getValue());
        }
        return Optional.of(new PressuresReport(stands, study.run(), Unit.PSI, "", Optional.empty()));
    }
}
