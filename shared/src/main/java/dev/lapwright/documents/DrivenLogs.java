package dev.lapwright.documents;

import java.util.List;

/**
 * Reads logs of driven laps: comma-separated values under headings in any order. Speed and distance or time must be there;
 * throttle, brake, gear, longitudinal and lateral acceleration and the lap's number may be.
 */
public final class DrivenLogs {
    private DrivenLogs() {}

    /**
     * The text of a log, unchecked: an existing file, or else the demo log of that name.
     *
     * @throws DocumentException if there is neither
     */
    public static DocumentSource find(String nameOrFile) {
        return LapLogs.find(nameOrFile);
    }

    /**
     * The laps in a text.
     *
     * @param columns which column holds what, where the headings do not tell
     * @throws DocumentException with all that is wrong with it
     */
    public static DrivenLog read(DocumentSource source, List<ColumnChoice> columns) {
        return new DrivenLogReader(source, columns).log();
    }
}
