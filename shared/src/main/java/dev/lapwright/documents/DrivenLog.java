package dev.lapwright.documents;

import java.util.List;

/**
 * A log of driven laps and how it was read.
 *
 * @param name of the file or the demo
 * @param laps in order, at least one; unmodifiable
 * @param columns which heading was taken for what
 * @param remarks on what was done to it, whole sentences; unmodifiable
 */
public record DrivenLog(String name, List<DrivenLogLap> laps, String columns, List<String> remarks) {
    public DrivenLog {
        laps = List.copyOf(laps);
        remarks = List.copyOf(remarks);
    }
}
