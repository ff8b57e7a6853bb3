package dev.lapwright.doubt;

import dev.lapwright.car.CarDoubt;
import dev.lapwright.track.Corner;
import dev.lapwright.track.RoadDoubt;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * All roads that a circuit, or a line on it, may truly be: each corner's curvature off by a lognormal factor, by the import's band where the
 * circuit has one and else by its class; where a line was sought between the road's edges, by how it is driven, and all corners
 * together by how much of the width is used; and each corner's grip over that of the whole. From corner to corner factors change evenly.
 * Immutable.
 *
 * <p>Of a band the lap feels the mean over a corner, at most its tightest thirty metres: over a length L the deviation at a place shrinks by
 * √(ℓ/L), with ℓ the {@linkplain Track#curvatureErrorLength length over which errors go together}. An import knows by its points how far a corner
 * turns better than where in it, so a corner is off in its shape besides: tighter towards its exit than its entry, and at its ends than in its middle, by
 * the first Legendre polynomials, over which errors that know nothing of each other spread alike. Radii on a line go with the 0.22th power
 * of the width that is left to the car, as those of lines found with other margins do. Where the road goes and how it climbs is not in doubt.
 */
public final class PlausibleRoads {
    /** A corner's radius is felt over its tightest part, at most so long, m. */
    private static final double FELT = 30;

    private static final double LEAST_EXTENT = 10;
    private static final String CORNERS = "curvature of the corners";
    private static final String SHAPES = "curvature within the corners";
    private static final double PERCENT = 100;
    /** No factor is known worse than so, relative: a corner that may be none. */
    private static final double MOST = 0.5;
    /** Power of the free width with which the corners' radii on a line go: as lines found with other margins have it (PlausibleRoadsTest). */
    private static final double BY_WIDTH = 0.22;
    /** What a car with its margins takes of the width, and the least that is left, m. */
    private static final double TAKEN = 2.5;

    private static final double LEAST_FREE = 1;

    private final Track road;
    private final List<Unknown> unknowns = new ArrayList<>();
    private final double[] places;
    private final double length;
    private final List<Corner> corners;
    /** Logarithm of each corner's curvature and grip for each unknown, one standard deviation. */
    private final List<Off> bends = new ArrayList<>();

    private final List<Off> grips = new ArrayList<>();

    /** What corners may be off by in shape: order of the Legendre polynomial, from entry to exit. */
    private enum Shape {
        EVEN("") {
            @Override
            double at(double place) {
                return 1;
            }
        },
        TOWARDS_THE_EXIT(", exit over entry") {
            @Override
            double at(double place) {
                return place;
            }
        },
        AT_THE_ENDS(", ends over middle") {
            @Override
            double at(double place) {
                return 0.5 * (3 * place * place - 1);
            }
        };

        private final String words;

        Shape(String words) {
            this.words = words;
        }

        /** Its value from -1 at the entry to 1 at the exit. */
        abstract double at(double place);

        /** Its greatest value over its root mean square. */
        double peak() {
            return Math.sqrt(2 * ordinal() + 1.0);
        }
    }

    /**
     * Part of what an unknown does to the logarithm of a quantity.
     *
     * @param corners its value at the exit of each corner, one standard deviation
     */
    private record Off(Shape shape, double[] corners) {}

    /** Between which corners each place lies. */
    private final Between[] between;

    /**
     * Place between two corners, or in one.
     *
     * @param last corner behind, or the one that it lies in
     * @param next corner ahead, or the same
     * @param since way from the one behind, m
     * @param until way to the one ahead, m; with the other 0 in a corner, and where there is but one
     * @param place in a corner from -1 at its entry to 1 at its exit; elsewhere 1
     */
    private record Between(int last, int next, double since, double until, double place) {
        /** The sum of what corners are off by, in each shape. */
        double of(double[][] logs) {
            double here = value(logs, last, place);
            return since + until > 0 ? (here * until + value(logs, next, -1) * since) / (since + until) : here;
        }

        private static double value(double[][] logs, int corner, double place) {
            double sum = 0;
            for (Shape shape : Shape.values()) {
                sum += logs[shape.ordinal()][corner] * shape.at(place);
            }
            return sum;
        }
    }

    private PlausibleRoads(Track road, boolean assuming) {
        this.road = road;
        length = road.length();
        corners = road.stations(StationSpacing.DEFAULT).corners();
        places = road.points().stream().mapToDouble(TrackPoint::s).toArray();
        between = corners.isEmpty()
                ? new Between[0]
                : Arrays.stream(places).mapToObj(this::between).toArray(Between[]::new);
        boolean known = road.curvatureDeviation().length > 0;
        boolean line = assuming && road.isLine();
        RoadDoubt doubt = road.doubt();
        if (known || assuming || doubt.curvaturePercent().isPresent()) {
            curvatures(known, line);
        }
        if (road.isLine() && !corners.isEmpty() && (assuming || doubt.width().isPresent())) {
            width();
        }
        if (assuming || doubt.gripPercent().isPresent()) {
            grips();
        }
    }

    /** The roads that one may be: what its document does not state is assumed by its class. */
    public static PlausibleRoads of(Track driven) {
        return new PlausibleRoads(driven, true);
    }

    /** The roads that one may be by the band of its import alone. */
    public static PlausibleRoads asStated(Track driven) {
        return new PlausibleRoads(driven, false);
    }

    /** The unknowns; independent of each other. */
    public List<Unknown> unknowns() {
        return List.copyOf(unknowns);
    }

    /**
     * The road as it would be if the errors were these: its corners where they are.
     *
     * @param draw one standard normal number for each unknown; not modified
     */
    public Track road(double[] draw) {
        return road.deviating(factors(bends, draw), factors(grips, draw));
    }

    private void curvatures(boolean known, boolean line) {
        OptionalDouble stated = road.doubt().curvaturePercent();
        double alike = stated.orElse(DoubtClass.CORNER.size());
        for (int c = 0; c < corners.size(); c++) {
            double byRoad = known ? ofBand(corners.get(c)) : alike / PERCENT;
            double byLine = line ? DoubtClass.DRIVEN_LINE.size() / PERCENT : 0;
            double size = Math.min(MOST, Math.hypot(byRoad, byLine));
            boolean roads = byRoad >= byLine;
            add(
                    new Unknown(
                            (line ? "curvature driven in " : "curvature of ") + named(corners.get(c)),
                            PERCENT * size,
                            DoubtClass.CORNER.unit(),
                            false,
                            source(known || stated.isPresent()),
                            (roads ? DoubtClass.CORNER : DoubtClass.DRIVEN_LINE).measure(),
                            line ? "curvature driven in the corners" : CORNERS),
                    new Off(Shape.EVEN, only(c, lognormal(size))),
                    new Off(Shape.EVEN, new double[corners.size()]));
        }
        for (int c = 0; known && c < corners.size(); c++) {
            shapes(c);
        }
    }

    private void shapes(int corner) {
        for (Shape shape : List.of(Shape.TOWARDS_THE_EXIT, Shape.AT_THE_ENDS)) {
            double size = Math.min(MOST, shape.peak() * ofBand(corners.get(corner)) * alone(corners.get(corner)));
            add(
                    new Unknown(
                            "curvature of " + named(corners.get(corner)) + shape.words,
                            PERCENT * size,
                            DoubtClass.CORNER.unit(),
                            false,
                            source(true),
                            DoubtClass.CORNER.measure(),
                            SHAPES),
                    new Off(shape, only(corner, lognormal(size))),
                    new Off(Shape.EVEN, new double[corners.size()]));
        }
    }

    /** Relative deviation of a corner's curvature by the import's band. */
    private double ofBand(Corner corner) {
        double apex = Math.max(0, Math.min(length, corner.apex()));
        double shrunk = Math.sqrt(Math.min(1, road.curvatureErrorLength() / felt(corner)));
        return road.curvatureDeviationAt(apex) * corner.minimumRadius() * shrunk;
    }

    /** By how much less a corner is off in its shape, as errors go together for longer than it is felt. */
    private double alone(Corner corner) {
        return Math.sqrt(Math.min(1, felt(corner) / road.curvatureErrorLength()));
    }

    private double felt(Corner corner) {
        return Math.max(LEAST_EXTENT, Math.min(FELT, extent(corner.entry(), corner.exit())));
    }

    private void width() {
        OptionalDouble stated = road.doubt().width();
        double size = stated.orElse(DoubtClass.WIDTH.size());
        double[] byWidth = new double[corners.size()];
        for (int c = 0; c < byWidth.length; c++) {
            TrackPoint apex =
                    road.pointAt(Math.max(0, Math.min(length, corners.get(c).apex())));
            double free = Math.max(LEAST_FREE, apex.widthLeft() + apex.widthRight() - TAKEN);
            byWidth[c] = -BY_WIDTH * Math.min(MOST, size / free);
        }
        add(
                unknown(DoubtClass.WIDTH, size, stated.isPresent(), "", ""),
                new Off(Shape.EVEN, byWidth),
                new Off(Shape.EVEN, new double[corners.size()]));
    }

    private void grips() {
        OptionalDouble stated = road.doubt().gripPercent();
        double size = stated.orElse(DoubtClass.ROAD_GRIP.size());
        for (int c = 0; c < corners.size() && corners.size() > 1; c++) {
            add(
                    unknown(
                            DoubtClass.ROAD_GRIP,
                            size,
                            stated.isPresent(),
                            named(corners.get(c)),
                            "grip of the road from corner to corner"),
                    new Off(Shape.EVEN, new double[corners.size()]),
                    new Off(Shape.EVEN, only(c, lognormal(size / PERCENT))));
        }
    }

    private void add(Unknown unknown, Off bend, Off grip) {
        unknowns.add(unknown);
        bends.add(bend);
        grips.add(grip);
    }

    private static Unknown unknown(DoubtClass kind, double size, boolean stated, String of, String group) {
        String title = kind.title().replace("%s", of);
        return new Unknown(title, size, kind.unit(), false, source(stated), kind.measure(), group);
    }

    /** Circuits do not say where their numbers come from; all that is stated was measured in some way. */
    private static Optional<CarDoubt.Source> source(boolean stated) {
        return stated ? Optional.of(CarDoubt.Source.MEASURED) : Optional.empty();
    }

    private static String named(Corner corner) {
        return "T" + corner.number();
    }

    private double[] only(int corner, double value) {
        double[] values = new double[corners.size()];
        values[corner] = value;
        return values;
    }

    /** Deviation of the logarithm of a lognormal number with this deviation, relative to its mean. */
    private static double lognormal(double relative) {
        return Math.sqrt(Math.log1p(relative * relative));
    }

    /** From one place forward to another, m. */
    private double extent(double from, double to) {
        return to >= from ? to - from : to - from + length;
    }

    /** Factor at each of the road's points: that of a corner within it, and evenly from one to the next between. */
    private double[] factors(List<Off> perUnknown, double[] draw) {
        double[][] logs = new double[Shape.values().length][corners.size()];
        for (int k = 0; k < draw.length; k++) {
            Off off = perUnknown.get(k);
            double[] shape = logs[off.shape().ordinal()];
            for (int c = 0; c < shape.length; c++) {
                shape[c] += off.corners()[c] * draw[k];
            }
        }
        double[] factors = new double[places.length];
        Arrays.fill(factors, 1);
        for (int i = 0; i < between.length; i++) {
            factors[i] = Math.exp(between[i].of(logs));
        }
        if (road.isClosed()) {
            factors[factors.length - 1] = factors[0];
        }
        return factors;
    }

    private Between between(double place) {
        int before = nearest(corner -> behind(corner.entry(), place));
        double into = behind(corners.get(before).entry(), place);
        double extent = extent(corners.get(before).entry(), corners.get(before).exit());
        if (into <= extent) {
            return new Between(before, before, 0, 0, extent > 0 ? 2 * into / extent - 1 : 0);
        }
        int last = nearest(corner -> behind(corner.exit(), place));
        int next = nearest(corner -> behind(place, corner.entry()));
        double since = behind(corners.get(last).exit(), place);
        double until = behind(place, corners.get(next).entry());
        if (Double.isInfinite(since)) {
            return new Between(next, next, 0, 0, -1);
        }
        return Double.isInfinite(until) ? new Between(last, last, 0, 0, 1) : new Between(last, next, since, until, 1);
    }

    /** How far one place lies behind another, m; infinite on an open run where it does not. */
    private double behind(double from, double to) {
        return to >= from ? to - from : road.isClosed() ? to - from + length : Double.POSITIVE_INFINITY;
    }

    private int nearest(ToDoubleFunction<Corner> distance) {
        int found = 0;
        for (int c = 1; c < corners.size(); c++) {
            if (distance.applyAsDouble(corners.get(c)) < distance.applyAsDouble(corners.get(found))) {
                found = c;
            }
        }
        return found;
    }
}
