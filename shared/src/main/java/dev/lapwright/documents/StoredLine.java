package dev.lapwright.documents;

import dev.lapwright.car.Car;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.numerics.CubicSpline;
import dev.lapwright.numerics.SplineKnots;
import dev.lapwright.text.Excerpt;
import dev.lapwright.track.Track;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Driven line as a line document holds it. It belongs to one road; with any other it is refused.
 *
 * @param source where it was read, for messages
 * @param name for people
 * @param road name of the road
 * @param roadLength length of the road's own path, m
 * @param search how it was found
 * @param distances along the road's own path, m, rising from 0 to its length
 * @param offsets m, positive to the left, as many
 */
public record StoredLine(
        String source,
        String name,
        String road,
        double roadLength,
        Search search,
        double[] distances,
        double[] offsets) {
    /**
     * Search that found a line, as far as its document tells.
     *
     * @param kind what it was looked for as; empty if it was not
     * @param car for which it was found; empty if that is open
     * @param setup of that car; empty if that is open
     * @param lapTime of that car, s
     * @param margin kept to the road's edges, m
     * @param marginRight kept to the right edge, m, if another than that
     */
    public record Search(
            Optional<LineKind> kind,
            String car,
            String setup,
            OptionalDouble lapTime,
            OptionalDouble margin,
            OptionalDouble marginRight) {}

    /** Distances may differ by this much from even ones and still mean them, m. */
    private static final double EVEN = 1e-3;

    /** Nodes of a search are no closer and no farther apart, m. */
    private static final double CLOSEST = 0.5;

    private static final double FARTHEST = 20;

    public StoredLine {
        distances = distances.clone();
        offsets = offsets.clone();
    }

    /** A line as found for a car. */
    public static StoredLine of(Line line, LineKind kind, Car car, String setup, double lapTime, LineChoices choices) {
        String road = line.road().name();
        return new StoredLine(
                "",
                road + ", " + kind.word(),
                road,
                line.road().length(),
                new Search(
                        Optional.of(kind),
                        car.name(),
                        setup,
                        OptionalDouble.of(lapTime),
                        OptionalDouble.of(choices.marginLeft()),
                        choices.isEven() ? OptionalDouble.empty() : OptionalDouble.of(choices.marginRight())),
                line.distances(),
                line.offsets());
    }

    /**
     * This line on its road, kept where this car fits within the margin. Between its points it runs as a natural cubic
     * spline of the distance unless they are the even nodes of a search, which are taken as they are.
     *
     * @param choices for what the document leaves open; its own margin and nodes come first
     * @throws DocumentException if it belongs to another road
     */
    public Line on(Track track, Car forCar, LineChoices choices) {
        checkRoad(track);
        int cells = distances.length - 1;
        double step = track.length() / cells;
        double left = search.margin().orElse(choices.marginLeft());
        double right = search.marginRight().orElse(search.margin().orElse(choices.marginRight()));
        if (isEven() && step >= CLOSEST && step <= FARTHEST) {
            return LineSearch.of(track, forCar, new LineChoices(left, right, step))
                    .at(exact(track), offsets);
        }
        LineSearch line = LineSearch.of(track, forCar, new LineChoices(left, right, choices.spacing()));
        double[] nodes = line.middle().distances();
        return line.at(nodes, splined(track, nodes));
    }

    private void checkRoad(Track track) {
        boolean sameLength = Math.abs(track.length() - roadLength) <= LineReader.SAME_LENGTH;
        if (!track.name().equals(road)) {
            throw new DocumentException(
                    source,
                    "this line is for the road '" + Excerpt.of(road) + "', but it is used on '" + track.name() + "'",
                    "use it with its road, or find one for this road with 'lapwright line'");
        }
        if (!sameLength) {
            throw new DocumentException(
                    source,
                    "this line is for a road of " + Check.text(roadLength) + " m, but " + track.name() + " is "
                            + Check.text(Math.rint(track.length() * 1e4) / 1e4) + " m long",
                    "find it anew with 'lapwright line'");
        }
        double first = offsets[0];
        double last = offsets[offsets.length - 1];
        if (track.isClosed() && Math.abs(last - first) > EVEN) {
            throw new DocumentException(
                    source,
                    "this line ends at an offset of " + Check.text(last) + " m, but begins at " + Check.text(first)
                            + " m",
                    "let the last offset be the first again, as " + track.name() + " is closed");
        }
    }

    private boolean isEven() {
        int cells = distances.length - 1;
        for (int i = 0; i <= cells; i++) {
            if (Math.abs(distances[i] - roadLength * i / cells) > EVEN) {
                return false;
            }
        }
        return true;
    }

    /** The even distances without their rounding. */
    private double[] exact(Track track) {
        double[] even = new double[distances.length];
        for (int i = 0; i < even.length; i++) {
            even[i] = track.length() * i / (even.length - 1);
        }
        return even;
    }

    private double[] splined(Track track, double[] nodes) {
        int n = track.isClosed() ? distances.length - 1 : distances.length;
        // A spline that goes round needs five knots; the first comes again as the last point.
        int least = track.isClosed() ? 6 : 3;
        if (distances.length < least) {
            throw new InvalidValueException(
                    source, distances.length + " points are too few to draw a line through", "give at least " + least);
        }
        double[] knots = Arrays.copyOf(distances, n);
        SplineKnots places = new SplineKnots(knots, track.isClosed() ? track.length() : Double.NaN);
        CubicSpline spline = places.fit(0).spline(Arrays.copyOf(offsets, n));
        double[] found = new double[nodes.length];
        int k = 0;
        for (int i = 0; i < nodes.length; i++) {
            while (k + 1 < places.intervals() && knots[Math.min(k + 1, n - 1)] <= nodes[i]) {
                k++;
            }
            found[i] = spline.value(k, nodes[i] - knots[k]);
        }
        return found;
    }

    @Override
    public double[] distances() {
        return distances.clone();
    }

    @Override
    public double[] offsets() {
        return offsets.clone();
    }
}
