package dev.lapwright.logs;

import dev.lapwright.evidence.TimingLog;

/**
 * Lap log and how it was read.
 *
 * @param name of the file or the demo
 * @param log the laps
 * @param columns which heading was taken for what
 */
public record LapLogFile(String name, TimingLog log, String columns) {}
