package dev.lapwright.notebook;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Setup;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.track.Track;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Event as its folder holds it at one moment: car, circuit, day, and all runs so far.
 *
 * @param folder it is in
 * @param name for people
 * @param papers its documents as files
 * @param car as its document describes it
 * @param track circuit or open run
 * @param day air, wind and grip
 * @param base setup with which it began
 * @param runs in the order of their numbers
 */
public record Event(
        Path folder,
        String name,
        Papers papers,
        Car car,
        Track track,
        Conditions day,
        Setup base,
        List<Numbered> runs) {
    public Event {
        runs = List.copyOf(runs);
    }

    /**
     * Names of the documents in the folder.
     *
     * @param car document
     * @param circuit document
     * @param conditions document; empty for a standard day
     * @param setup document; empty for the car's standard
     */
    public record Papers(String car, String circuit, Optional<String> conditions, Optional<String> setup) {}

    /**
     * Run with its number.
     *
     * @param number from 1
     * @param run what it holds
     */
    public record Numbered(int number, EventRun run) {}

    /** Settings of the car now: those of the last run, or those with which the event began. */
    public Map<String, Double> settingsNow() {
        return runs.isEmpty()
                ? base.settings()
                : runs.get(runs.size() - 1).run().settings();
    }

    /** The run of a number. */
    public Optional<EventRun> run(int number) {
        return runs.stream()
                .filter(run -> run.number() == number)
                .map(Numbered::run)
                .findFirst();
    }

    /** A setup in a line. */
    public String label(EventRun run) {
        return RunText.settings(run.settings(), car);
    }

    /** All laps that were driven, for {@link dev.lapwright.evidence.Evidence}; empty if there are none. */
    public Optional<TimingLog> log() {
        List<TimingLog.Lap> laps = new ArrayList<>();
        for (Numbered numbered : runs) {
            int lap = 1;
            for (EventRun.TimedLap timed : numbered.run().laps()) {
                laps.add(new TimingLog.Lap(
                        lap++, timed.time(), label(numbered.run()), Integer.toString(numbered.number()), timed.flag()));
            }
        }
        return laps.isEmpty() ? Optional.empty() : Optional.of(TimingLog.of(laps));
    }
}
