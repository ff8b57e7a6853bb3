package dev.lapwright.documents;

import dev.lapwright.fit.DrivenLap;

/**
 * One of the laps in a log.
 *
 * @param number as the log has it, or else counted from 1
 * @param lap its samples
 * @param duration s; by the log's clock, or else by its distance and speed
 */
public record DrivenLogLap(int number, DrivenLap lap, double duration) {}
