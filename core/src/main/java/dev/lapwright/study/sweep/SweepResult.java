package dev.lapwright.study.sweep;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineFinder;
import dev.lapwright.line.LineSearch;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Optional;

/**
 * Laps of a sweep. Points are in the order of the axes, the last axis fastest.
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
        List<Point> points,
        Optional<LineRefresh> refresh) {
    public SweepResult {
        axes = List.copyOf(axes);
        points = points instanceof SweepPoints ? points : List.copyOf(points);
    }

    /** What a sweep found in which all laps were driven on the same track. */
    public SweepResult(
            Car car,
            Track track,
            Conditions conditions,
            List<SweepAxis> axes,
            LapFigures baseline,
            List<Point> points) {
        this(car, track, conditions, axes, baseline, points, Optional.empty());
    }

    /** Difference of a point to the baseline, s, minus where faster; NaN where there was no lap. */
    public double difference(Point point) {
        return point.figures().map(f -> f.lapTime() - baseline.lapTime()).orElse(Double.NaN);
    }

    /** The fastest point; empty if no point has a lap. The first of equals. */
    public Optional<Point> fastest() {
        Point best = null;
        for (Point point : points) {
            if (point.figures().isPresent()
                    && (best == null
                            || point.figures().get().lapTime()
                                    < best.figures().get().lapTime())) {
                best = point;
            }
        }
        return Optional.ofNullable(best);
    }

    /**
     * Lap of a sweep.
     *
     * @param settings value on each axis, in the axes' order
     * @param figures the lap in short; empty where there was no lap
     * @param failure why there was no lap; empty where there was one
     */
    public record Point(List<Double> settings, Optional<LapFigures> figures, String failure) {
        public Point {
            settings = List.copyOf(settings);
        }
    }

    /**
     * Search of a sweep for the fastest line anew for each car: from one line, always the same, so that no point's result
     * depends on another's.
     *
     * @param from where each search begins
     * @param choices margin and nodes
     * @param finder who looks
     */
    public record LineRefresh(Line from, LineChoices choices, LineFinder finder) {
        /** The fastest line found from there for this car. */
        Line line(Car car, Vehicle vehicle, StudyRun how) {
            LineSearch search = LineSearch.of(from.road(), car, choices)
                    .from(from)
                    .reporting((steps, difference) -> how.stopIfWanted());
            return finder.fastest(search, vehicle);
        }

        /** A lap in short on the fastest line found from there for this car. */
        LapFigures figures(Car car, Vehicle vehicle, StudyRun how) {
            return LapSolver.on(line(car, vehicle, how).driven()).figures(vehicle);
        }
    }
}
