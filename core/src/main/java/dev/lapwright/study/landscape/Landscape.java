package dev.lapwright.study.landscape;

import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.LapTimeDifference;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Landscape of one thing that can be turned: laps at settings over its range, all else as it stands.
 *
 * @param name of an adjustment, a quantity of the car, or one of the conditions
 * @param baseline the lap of the car as it stands
 * @param points by rising setting; among them where it stands, unless that was not among the settings asked for
 * @param complete whether all settings asked for are among them
 */
public record Landscape(String name, LapFigures baseline, List<Point> points, boolean complete) {
    public Landscape {
        points = List.copyOf(points);
    }

    /**
     * Lap at one setting.
     *
     * @param setting in the unit of what is turned
     * @param figures the lap in short; empty where there was no lap
     * @param failure why there was no lap; empty where there was one
     */
    public record Point(double setting, Optional<LapFigures> figures, String failure) {}

    /** Difference of a point to the baseline, s, minus where faster; NaN where there was no lap. */
    public double difference(Point point) {
        return point.figures().map(f -> f.lapTime() - baseline.lapTime()).orElse(Double.NaN);
    }

    /** The fastest point, the first of equals; empty if no point has a lap. */
    public Optional<Point> fastest() {
        return points.stream()
                .filter(point -> point.figures().isPresent())
                .min(Comparator.comparingDouble(this::difference));
    }

    /** From the fastest point to the slowest, s; 0 where no point has a lap. */
    public double range() {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (Point point : points) {
            if (point.figures().isPresent()) {
                least = Math.min(least, difference(point));
                most = Math.max(most, difference(point));
            }
        }
        return most >= least ? most - least : 0;
    }

    /** Whether no setting that has a lap makes a difference to the lap time. */
    public boolean isFlat() {
        return LapTimeDifference.isNone(range());
    }
}
