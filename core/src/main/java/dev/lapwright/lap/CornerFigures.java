package dev.lapwright.lap;

import dev.lapwright.track.Corner;

/**
 * Figures of a lap in one corner: speeds, time, and what limits it.
 *
 * @param corner where it is
 * @param entrySpeed m/s
 * @param minimumSpeed m/s
 * @param minimumSpeedAt distance, m
 * @param exitSpeed m/s
 * @param peakLateralAcceleration greatest lateral acceleration that the tyres supply, m/s², without sign
 * @param time spent between entry and exit, s
 * @param gear at the slowest place
 * @param limit at the slowest place
 */
public record CornerFigures(
        Corner corner,
        double entrySpeed,
        double minimumSpeed,
        double minimumSpeedAt,
        double exitSpeed,
        double peakLateralAcceleration,
        double time,
        int gear,
        Limit limit) {}
