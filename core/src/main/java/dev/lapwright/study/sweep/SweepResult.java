package dev.lapwright.study.sweep;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Optional;

/**
 * What a sweep found. Points are in the order of the axes, the last axis fastest.
 *
 * @param car the baseline car
 * @param track where: the road, or the line that was held along it
 * @param conditions the baseline's day
 * @param axes what was varied
 * @param baseline the lap of the car as it stood
 * @param points one for each combination
 * @param refresh how each car's line was found anew; empty where all drove the same track
 */
public record SweepResult(
        Car car,
        Track track,
        Conditions conditions,
        List<SweepAxis> axes,
        LapFigures baseline,
        List<SweepPoint> points,
        Optional<LineRefresh> refresh) {
    public SweepResult {
        axes = List.copyOf(axes);
        points = List.copyOf(points);
    }

    /** What a sweep found in which all laps were driven on the same track. */
    public SweepResult(
            Car car,
            Track track,
            Conditions conditions,
            List<SweepAxis> axes,
            LapFigures baseline,
            List<SweepPoint> points) {
        this(car, track, conditions, axes, baseline, points, Optional.empty());
    }

    /** Seconds gained against the baseline at a point, positive is faster; NaN where there was no lap. */
    public double gain(SweepPoint point) {
        return point.figures().map(f -> baseline.lapTime() - f.lapTime()).orElse(Double.NaN);
    }

    /** The fastest point; empty if no point has a lap. The first of equals. */
    public Optional<SweepPoint> fastest() {
        SweepPoint best = null;
        for (SweepPoint point : points) {
            if (point.figures().isPresent()
                    && (best == null
                            || point.figures().get().lapTime()
                                    < best.figures().get().lapTime())) {
                best = point;
            }
        }
        return Optional.ofNullable(best);
    }
}
