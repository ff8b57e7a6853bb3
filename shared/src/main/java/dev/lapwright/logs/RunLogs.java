package dev.lapwright.logs;

import dev.lapwright.brief.Proof;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.fit.DrivenLap;
import dev.lapwright.samples.SampleColumn;
import dev.lapwright.samples.SampleHeader;
import dev.lapwright.text.CsvTable;
import dev.lapwright.text.FaultList;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Logs of the runs of one day, each of one setup or of several, put together as one log of lap times. */
public final class RunLogs {
    private RunLogs() {}

    /**
     * Log of lap times, and what the car was set to in it.
     *
     * @param file as it was read
     * @param setup name for all of its laps; empty where its own column names them
     */
    public record Timed(LapLogFile file, String setup) {}

    /**
     * Log of laps driven with their speeds, in one setup.
     *
     * @param log as it was read
     * @param pick the laps of it that count
     * @param setup its name
     */
    public record Driven(DrivenLog log, DrivenLapSelection pick, String setup) {}

    /** Whether a log holds speeds over distance or time, sample by sample, and not lap times. */
    public static boolean holdsSpeeds(DocumentSource source) {
        try {
            return CsvTable.rows(source, "").stream()
                    .limit(CsvTable.PREAMBLE)
                    .map(row ->
                            new SampleHeader(row, List.of(), SampleColumn.OF_DRIVEN_LAPS, new FaultList(source.name())))
                    .anyMatch(SampleHeader::isDrivenLap);
        } catch (InvalidValueException noTable) {
            // What is wrong with it is told by whoever reads it.
            return false;
        }
    }

    /**
     * Several logs of lap times as one, each a run of its own at least.
     *
     * @param logs in the order driven, at least one
     * @throws InvalidValueException if a log names its setups and is given another name too
     */
    public static LapLogFile together(List<Timed> logs) {
        List<TimingLog.Lap> laps = new ArrayList<>();
        for (int i = 0; i < logs.size(); i++) {
            Timed one = logs.get(i);
            TimingLog log = one.file().log();
            boolean unnamed = log.setups().equals(List.of(LapLogReader.ONE_SETUP));
            if (!unnamed && !one.setup().isEmpty()) {
                throw new InvalidValueException(
                        one.file().name(),
                        "its column setup names what was set, and " + one.setup() + " is given as well",
                        "leave one of the two out");
            }
            String setup = one.setup().isEmpty() ? Proof.BASE : one.setup();
            for (TimingLog.Lap lap : log.laps()) {
                laps.add(new TimingLog.Lap(
                        lap.number(),
                        lap.time(),
                        unnamed ? setup : lap.setup(),
                        logs.size() == 1 ? lap.run() : (i + 1) + "." + lap.run(),
                        lap.flag()));
            }
        }
        return new LapLogFile(
                logs.stream().map(one -> one.file().name()).collect(Collectors.joining(", ")),
                TimingLog.of(laps),
                logs.stream().map(one -> one.file().columns()).distinct().collect(Collectors.joining("; ")));
    }

    /**
     * Lap times of laps driven with their speeds: those that count, the others as out laps.
     *
     * @param logs in the order driven, at least one
     */
    public static LapLogFile times(List<Driven> logs) {
        List<TimingLog.Lap> laps = new ArrayList<>();
        for (int i = 0; i < logs.size(); i++) {
            Driven one = logs.get(i);
            Map<DrivenLap, Boolean> counts = new IdentityHashMap<>();
            one.pick().laps().forEach(lap -> counts.put(lap, true));
            int number = -1;
            for (DrivenLog.Lap lap : one.log().laps()) {
                // Lap numbers that fall back are counted on.
                number = Math.max(number + 1, lap.number());
                laps.add(new TimingLog.Lap(
                        number,
                        lap.duration(),
                        one.setup(),
                        Integer.toString(i + 1),
                        counts.containsKey(lap.lap()) ? TimingLog.Flag.NONE : TimingLog.Flag.SPOILT));
            }
        }
        return new LapLogFile(
                logs.stream().map(one -> one.log().name()).collect(Collectors.joining(", ")),
                TimingLog.of(laps),
                "times of the whole laps at pace; setups as given for each log");
    }
}
