package dev.lapwright.charts.track;

import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.line.Line;
import java.util.Arrays;
import java.util.Objects;

/**
 * A line driven along a road, as {@link LineMap} draws it: columns of one length, a row for each point. On a closed road the
 * last point may be the first again. Arrays are copied in and out.
 *
 * @param name short, such as {@code least time}; not blank
 * @param lapTime s, or NaN if it is not known
 * @param x east of the road's start, m, in the plane of {@link dev.lapwright.track.Stations#x()}
 * @param y north of the road's start, m
 * @param distanceAlongRoad of the road beside the point, m, never falling
 * @param offset how far to the left of the road's own path the point lies, m
 */
public record DrivenLine(
        String name, double lapTime, double[] x, double[] y, double[] distanceAlongRoad, double[] offset) {
    public DrivenLine {
        Objects.requireNonNull(name, "name");
        if (name.isBlank()) {
            throw new InvalidValueException("line name", "it is blank", "give each line a short name");
        }
        if (!Double.isNaN(lapTime)) {
            Check.positive("lap time of line " + name, lapTime);
        }
        x = column(name, "x", x, x.length);
        y = column(name, "y", y, x.length);
        distanceAlongRoad = column(name, "distance along the road", distanceAlongRoad, x.length);
        offset = column(name, "offset", offset, x.length);
        for (int i = 1; i < x.length; i++) {
            if (distanceAlongRoad[i] < distanceAlongRoad[i - 1]) {
                throw new InvalidValueException(
                        "line " + name,
                        "its distance along the road falls from " + Check.text(distanceAlongRoad[i - 1]) + " m to "
                                + Check.text(distanceAlongRoad[i]) + " m",
                        "give the points in driving order");
            }
        }
    }

    /** A line that has been found, with the time (s) of a lap on it, or NaN. */
    public static DrivenLine of(String name, double lapTime, Line line) {
        return new DrivenLine(name, lapTime, line.x(), line.y(), line.distances(), line.offsets());
    }

    private static double[] column(String line, String column, double[] values, int length) {
        if (values.length != length || length < 2) {
            throw new InvalidValueException(
                    "line " + line,
                    column + " has " + values.length + " values",
                    length < 2 ? "give two points or more" : "give " + length + ", as many as x");
        }
        for (double value : values) {
            Check.finite(column + " of line " + line, value);
        }
        return values.clone();
    }

    @Override
    public double[] x() {
        return x.clone();
    }

    @Override
    public double[] y() {
        return y.clone();
    }

    @Override
    public double[] distanceAlongRoad() {
        return distanceAlongRoad.clone();
    }

    @Override
    public double[] offset() {
        return offset.clone();
    }

    /** Offset (m) beside a distance along the road (m), linear between points, level beyond the ends. */
    double offsetAt(double distance) {
        int last = distanceAlongRoad.length - 1;
        int place = Arrays.binarySearch(distanceAlongRoad, distance);
        int above = place >= 0 ? place : -place - 1;
        if (above == 0 || above > last) {
            return offset[Math.min(above, last)];
        }
        double step = distanceAlongRoad[above] - distanceAlongRoad[above - 1];
        double part = step > 0 ? (distance - distanceAlongRoad[above - 1]) / step : 1;
        return offset[above - 1] + part * (offset[above] - offset[above - 1]);
    }

    /** The name, with the lap time where there is one. */
    String label() {
        return Double.isNaN(lapTime) ? name : name + ": " + NumberText.lapTime(lapTime);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof DrivenLine that
                && name.equals(that.name)
                && Double.compare(lapTime, that.lapTime) == 0
                && Arrays.equals(x, that.x)
                && Arrays.equals(y, that.y)
                && Arrays.equals(distanceAlongRoad, that.distanceAlongRoad)
                && Arrays.equals(offset, that.offset);
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, lapTime, Arrays.hashCode(x), Arrays.hashCode(y), Arrays.hashCode(offset));
    }

    @Override
    public String toString() {
        return "line " + label() + ", " + x.length + " points";
    }
}
