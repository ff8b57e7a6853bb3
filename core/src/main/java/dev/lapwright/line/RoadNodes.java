package dev.lapwright.line;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackLimit;
import dev.lapwright.track.TrackPoint;
import java.util.List;

/**
 * Corridor of a road: even nodes along its path, the normal (x and y components) at each, and the bounds within which the
 * middle of a car may be offset along it, m, positive to the left.
 */
final class RoadNodes {
    /** Share of the path's radius that an offset may use: beyond it normals of neighbours would cross. */
    private static final double SHARE_OF_RADIUS = 0.8;

    private static final double LEAST_FREEDOM = 1e-3;

    final Track track;
    final LineChoices choices;
    final boolean closed;
    /** Nodes; on a closed road the first does not come again. */
    final int count;

    /** Distance along the path, m, one more than there are nodes on a closed road. */
    final double[] s;

    final TrackPoint[] point;
    final double[] x;
    final double[] y;
    final double[] z;
    final double[] heading;
    /** Unit normal to the left. */
    final double[] normalX;

    final double[] normalY;
    /** Bounds of the offset to the left, m. */
    final double[] lower;

    final double[] upper;
    /** The corners of the road's own path. */
    final List<Corner> corners;

    RoadNodes(Track track, double carWidth, LineChoices choices) {
        this.track = track;
        this.choices = choices;
        closed = track.isClosed();
        Stations laid = track.stations(StationSpacing.DEFAULT);
        corners = laid.corners();
        double length = track.length();
        int cells = (int) Math.max(12, Math.ceil(length / choices.spacing() - 1e-9));
        count = closed ? cells : cells + 1;
        s = new double[cells + 1];
        point = new TrackPoint[count];
        x = new double[count];
        y = new double[count];
        z = new double[count];
        heading = new double[count];
        normalX = new double[count];
        normalY = new double[count];
        lower = new double[count];
        upper = new double[count];
        Stations.Place start = laid.placeAt(0);
        Stations.Place end = laid.placeAt(length);
        for (int i = 0; i <= cells; i++) {
            s[i] = i == cells ? length : length * i / cells;
            if (i == count) {
                break;
            }
            Stations.Place place = laid.placeAt(s[i]);
            // A circuit closes within a tolerance; what it misses is spread over the lap.
            double share = closed ? s[i] / length : 0;
            x[i] = place.x() - share * (end.x() - start.x());
            y[i] = place.y() - share * (end.y() - start.y());
            z[i] = place.z() - share * (end.z() - start.z());
            heading[i] = place.heading();
            normalX[i] = -Math.sin(place.heading());
            normalY[i] = Math.cos(place.heading());
            point[i] = track.pointAt(s[i]);
            bounds(i, carWidth);
        }
    }

    private String place(int i) {
        return "track at " + Check.text(Math.rint(10 * s[i]) / 10) + " m";
    }

    private void bounds(int i, double carWidth) {
        TrackPoint p = point[i];
        double marginLeft = choices.marginLeft();
        double marginRight = choices.marginRight();
        for (TrackLimit limit : track.limits()) {
            if (limit.holdsAt(s[i])) {
                marginLeft = -limit.beyondLeft().orElse(-marginLeft);
                marginRight = -limit.beyondRight().orElse(-marginRight);
            }
        }
        double free = p.widthLeft() + p.widthRight();
        double needed = carWidth + marginLeft + marginRight;
        if (free < needed + LEAST_FREEDOM && free < carWidth) {
            throw new InvalidValueException(
                    place(i),
                    "the road is " + Check.text(free) + " m wide there, the car " + Check.text(carWidth) + " m",
                    "check the track's widths and chassis.widthM of the car");
        }
        if (free < needed + LEAST_FREEDOM) {
            throw new InvalidValueException(
                    place(i),
                    "the road is " + Check.text(free) + " m wide there, the car with its margins " + Check.text(needed)
                            + " m",
                    "give a smaller margin");
        }
        lower[i] = 0.5 * carWidth + marginRight - p.widthRight();
        upper[i] = p.widthLeft() - (0.5 * carWidth + marginLeft);
        double bend = p.curvature();
        if (bend > 0) {
            upper[i] = Math.max(lower[i] + LEAST_FREEDOM, Math.min(upper[i], SHARE_OF_RADIUS / bend));
        } else if (bend < 0) {
            lower[i] = Math.min(upper[i] - LEAST_FREEDOM, Math.max(lower[i], SHARE_OF_RADIUS / bend));
        }
    }

    /** The offset nearest to this one at which a car may be. */
    double within(int node, double offset) {
        return Math.max(lower[node], Math.min(upper[node], offset));
    }
}
