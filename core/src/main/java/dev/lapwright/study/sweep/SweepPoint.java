package dev.lapwright.study.sweep;

import dev.lapwright.lap.LapFigures;
import java.util.List;
import java.util.Optional;

/**
 * One lap of a sweep.
 *
 * @param settings value on each axis, in the axes' order
 * @param figures the lap in short; empty where there was no lap
 * @param failure why there was no lap; empty where there was one
 */
public record SweepPoint(List<Double> settings, Optional<LapFigures> figures, String failure) {
    public SweepPoint {
        settings = List.copyOf(settings);
    }
}
