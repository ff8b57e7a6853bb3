package dev.lapwright.line;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.Track;

/**
 * Looks for lines along a road, within its width less half the car's and a margin on each side.
 *
 * <pre>{@code
 * LineSearch search = new LineSearch(track, car, LineChoices.DEFAULT);
 * Line fastest = search.fastest(Vehicle.of(car, Conditions.STANDARD), LineProgress.NONE);
 * Lap lap = LapSolver.lap(car, fastest.driven(), Conditions.STANDARD);
 * }</pre>
 */
public final class LineSearch {
    private final RoadNodes road;

    /**
     * A search along a road.
     *
     * @param car tells how wide it is
     * @throws InvalidValueException if the road is narrower somewhere than the car, or than the car with its margins
     */
    public LineSearch(Track track, Car car, LineChoices choices) {
        road = new RoadNodes(track, car.value(Quantity.WIDTH), choices);
    }

    /** The road's own path, moved into what room there is where it runs too close to an edge. */
    public Line middle() {
        return at(new double[] {0, road.track.length()}, new double[] {0, 0});
    }

    /** The line that bends least: the least sum of squares of its curvature over its length. The car does not matter but for its width. */
    public Line smoothest() {
        return new Line(road, new MinimumCurvature(road).offsets());
    }

    /**
     * The line of least time found from the smoothest: a local minimum, never slower than where it began.
     *
     * @throws dev.lapwright.fault.NoLapException if this car cannot get round on the smoothest line
     */
    public Line fastest(Vehicle vehicle, LineProgress progress) {
        return fastest(smoothest(), vehicle, progress);
    }

    /** The line of least time found from another line along the same road. */
    public Line fastest(Line from, Vehicle vehicle, LineProgress progress) {
        Line start = at(from.distances(), from.offsets());
        Line found = new Line(road, new MinimumTime(road, vehicle, progress).from(start.nodes()));
        // The search drives on its own nodes; the last word has the solver's usual stations.
        return time(found, vehicle) < time(start, vehicle) ? found : start;
    }

    private static double time(Line line, Vehicle vehicle) {
        return LapSolver.on(line.driven()).lapTime(vehicle);
    }

    /**
     * A line by its offsets at some distances, linear between them, and kept within the road.
     *
     * @param distances along the road, m, rising, from 0 to its length
     * @param offsets m, positive to the left, as many
     * @throws InvalidValueException if they do not span the road
     */
    public Line at(double[] distances, double[] offsets) {
        Check.rising("line's distances (m)", distances);
        double length = road.track.length();
        boolean spans = distances.length == offsets.length
                && distances.length >= 2
                && distances[0] == 0
                && Math.abs(distances[distances.length - 1] - length) < 0.01;
        if (!spans) {
            throw new InvalidValueException(
                    "line", "it does not span the road of " + Check.text(length) + " m", "use a line of this road");
        }
        double[] nodes = new double[road.count];
        int k = 0;
        for (int i = 0; i < nodes.length; i++) {
            while (k + 2 < distances.length && distances[k + 1] < road.s[i]) {
                k++;
            }
            double share = (road.s[i] - distances[k]) / (distances[k + 1] - distances[k]);
            double offset = offsets[k] + share * (offsets[k + 1] - offsets[k]);
            nodes[i] = road.within(i, Check.inRange("offset (m)", offset, -100, 100));
        }
        return new Line(road, nodes);
    }
}
