package dev.lapwright.line;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.Track;
import java.util.Arrays;
import java.util.Optional;

/**
 * Search for the minimum-curvature and the minimum-time line along a road, within its width less half the car's and a margin on
 * each side. Immutable: each setting gives a new search.
 *
 * <pre>{@code
 * LineSearch search = LineSearch.of(track, car, LineChoices.DEFAULT);
 * Line fastest = search.fastest(Vehicle.of(car, Conditions.STANDARD));
 * Lap lap = LapSolver.lap(car, fastest.driven(), Conditions.STANDARD);
 * }</pre>
 */
public final class LineSearch {
    private final RoadNodes road;
    private final Optional<Line> start;
    private final Progress progress;
    private final boolean rough;

    private LineSearch(RoadNodes road, Optional<Line> start, Progress progress, boolean rough) {
        this.road = road;
        this.start = start;
        this.progress = progress;
        this.rough = rough;
    }

    /**
     * Search along a road, which begins at the minimum-curvature line and reports to nobody.
     *
     * @param car tells how wide it is
     * @throws InvalidValueException if the road is narrower somewhere than the car, or than the car with its margins, or the
     *     track's path is one that a car drove, about which no road is known
     */
    public static LineSearch of(Track track, Car car, LineChoices choices) {
        if (track.path() == Track.Path.DRIVEN) {
            throw new InvalidValueException(
                    "circuit",
                    track.name()
                            + " is a line that a car drove: where the road's edges lie is not known, so that no other line"
                            + " can be sought between them",
                    "import the road's own line with its widths; if this is the road, write \"path\": \"road\" and the"
                            + " widths into its document");
        }
        return new LineSearch(
                new RoadNodes(track, car.value(Quantity.WIDTH), choices),
                Optional.empty(),
                (steps, difference) -> {},
                false);
    }

    /** The same beginning at another line along the same road. */
    public LineSearch from(Line line) {
        return new LineSearch(road, Optional.of(line), progress, rough);
    }

    /** The same reporting each step of the search for the minimum-time line. */
    public LineSearch reporting(Progress listener) {
        return new LineSearch(road, start, listener, rough);
    }

    /**
     * The same that ends sooner, where two steps in turn gain less than a millisecond. From the line of a car much like this one that takes a third
     * of the time, and finds all but some milliseconds of what is there.
     */
    public LineSearch roughly() {
        return new LineSearch(road, start, progress, true);
    }

    /** Whether it ends sooner. */
    public boolean isRough() {
        return rough;
    }

    /** Listener to the steps of a search. */
    @FunctionalInterface
    public interface Progress {
        /**
         * Called after each step. What it throws ends the search, and goes to whoever asked for the line: so a search is stopped.
         *
         * @param steps taken so far
         * @param difference of the lap time so far, s, minus where faster
         */
        void report(int steps, double difference);
    }

    /** The road. */
    public Track road() {
        return road.track;
    }

    /** Margin and nodes. */
    public LineChoices choices() {
        return road.choices;
    }

    /** Distances of the nodes along the road's path, m; on a circuit the last is its length. A copy. */
    public double[] nodes() {
        return road.s.clone();
    }

    /** Offsets at the nodes of the line that it begins at, m; empty where that is the minimum-curvature line. */
    public Optional<double[]> start() {
        return start.map(line -> at(line.distances(), line.offsets()).nodes());
    }

    /** Middle line: the road's own path, moved within the bounds where it runs too close to an edge. */
    public Line middle() {
        return at(new double[] {0, road.track.length()}, new double[] {0, 0});
    }

    /** Minimum-curvature line: least ∫ κ² ds. Of the car only its width matters. */
    public Line smoothest() {
        return new Line(road, new MinimumCurvature(road).offsets(), 0);
    }

    /**
     * Minimum-time line: a local minimum of the lap time, never slower than where the search began.
     *
     * @throws dev.lapwright.fault.NoLapException if this car cannot get round on the line that the search begins at
     */
    public Line fastest(Vehicle vehicle) {
        Line from = start.isPresent() ? start.get() : smoothest();
        Line first = at(from.distances(), from.offsets());
        Line found = new Line(road, new MinimumTime(road, vehicle, progress, rough).from(first.nodes()), 0);
        // The search drives on its own nodes; the last word has the solver's usual stations.
        return time(found, vehicle) < time(first, vehicle) ? found : new Line(road, first.nodes(), 0);
    }

    private static double time(Line line, Vehicle vehicle) {
        return LapSolver.on(line.driven()).lapTime(vehicle);
    }

    /**
     * Line of given offsets at some distances, linear between them. Where they leave the room that the car has, the line is moved into
     * it with a gentle bend before and behind ({@link Line#moved()} says how far): cut off at the edge it would have kinks there.
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
        boolean own = Arrays.equals(distances, road.s);
        double[] nodes = new double[road.count];
        int k = 0;
        for (int i = 0; i < nodes.length; i++) {
            while (k + 2 < distances.length && distances[k + 1] < road.s[i]) {
                k++;
            }
            if (own) {
                // Bit for bit: a line that is handed back is the same line.
                nodes[i] = Check.inRange("offset (m)", offsets[i], -100, 100);
                continue;
            }
            double share = (road.s[i] - distances[k]) / (distances[k + 1] - distances[k]);
            double offset = offsets[k] + share * (offsets[k + 1] - offsets[k]);
            nodes[i] = Check.inRange("offset (m)", offset, -100, 100);
        }
        double[] squeezed = new RoomForLine(road).squeezed(nodes);
        double moved = 0;
        for (int i = 0; i < nodes.length; i++) {
            moved = Math.max(moved, Math.abs(squeezed[i] - nodes[i]));
        }
        return new Line(road, squeezed, moved);
    }
}
