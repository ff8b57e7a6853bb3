package dev.lapwright.study.lines;

import dev.lapwright.car.Car;
import dev.lapwright.line.Line;
import java.util.List;

/**
 * Lap times of cars, each on the minimum-time line found for it.
 *
 * @param first the car that the others are compared with
 * @param others in the order in which they were asked for
 */
public record OwnLinesResult(OwnLap first, List<OwnLap> others) {
    public OwnLinesResult {
        others = List.copyOf(others);
    }

    /**
     * A car on its own line.
     *
     * @param lapTime s
     */
    public record OwnLap(Car car, Line line, double lapTime) {}

    /** Difference of another car to the first, s, minus where faster. */
    public double difference(int other) {
        return others.get(other).lapTime() - first.lapTime();
    }
}
