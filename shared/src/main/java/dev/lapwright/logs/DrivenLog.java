package dev.lapwright.logs;

import dev.lapwright.fit.DrivenLap;
import java.util.List;

/**
 * Log of driven laps and how it was read.
 *
 * @param name of the file or the demo
 * @param laps in order, at least one; unmodifiable
 * @param columns which heading was taken for what
 * @param remarks on what was done to it, whole sentences; unmodifiable
 */
public record DrivenLog(String name, List<Lap> laps, String columns, List<String> remarks) {
    public DrivenLog {
        laps = List.copyOf(laps);
        remarks = List.copyOf(remarks);
    }

    /**
     * One of the laps in a log.
     *
     * @param number as the log has it, or else counted from 1
     * @param lap its samples
     * @param duration s; by the log's clock, or else by its distance and speed
     */
    public record Lap(int number, DrivenLap lap, double duration) {}
}
