package dev.lapwright.line;

import dev.lapwright.fault.Check;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;

/**
 * Racing line along a road: offsets from the road's path at even nodes, and the line as a track of its own. Immutable.
 * Sweeps that hold a line fixed are given {@link #driven()}.
 */
public final class Line {
    private final RoadNodes road;
    private final double[] offsets;
    private final double moved;
    private final DrivenPath path;
    private final Track driven;

    Line(RoadNodes road, double[] offsets, double moved) {
        this.road = road;
        this.moved = moved;
        this.offsets = offsets.clone();
        path = new DrivenPath(road, this.offsets);
        driven = path.track(road.track.name());
    }

    /** The road. */
    public Track road() {
        return road.track;
    }

    /** The line as a track of its own: its curvature, slope and bank over its own length. */
    public Track driven() {
        return driven;
    }

    /** Distances of the nodes along the road's path, m; on a circuit the last is its length. A copy. */
    public double[] distances() {
        return road.s.clone();
    }

    /** Offset at each of those distances, m, positive to the left. A new array. */
    public double[] offsets() {
        return round(offsets);
    }

    /** East coordinate of each node of the line, in the frame of the road's stations, m. A new array. */
    public double[] x() {
        return round(path.x);
    }

    /** North coordinate of each node of the line, in the frame of the road's stations, m. A new array. */
    public double[] y() {
        return round(path.y);
    }

    /** Offsets of the nodes, each once. */
    double[] nodes() {
        return offsets.clone();
    }

    /** Values of the nodes in turn; on a circuit the first again at the end. */
    private double[] round(double[] values) {
        double[] all = new double[road.s.length];
        for (int i = 0; i < all.length; i++) {
            all[i] = values[i % values.length];
        }
        return all;
    }

    /** Length of the line along the road's surface, m. */
    public double length() {
        return driven.length();
    }

    /** Farthest that a node of it lies from where it was asked for, as the car would not have fitted there, m. */
    public double moved() {
        return moved;
    }

    /** Distance along the line (m) abreast of a distance along the road (m). */
    public double along(double roadDistance) {
        return path.along(Check.inRange("distance (m)", roadDistance, 0, road.track.length()));
    }

    /** Shape of the line in short. */
    public Figures figures() {
        double[] s = distances();
        int far = 0;
        for (int i = 1; i < s.length; i++) {
            if (Math.abs(offsets[i % offsets.length]) > Math.abs(offsets[far % offsets.length])) {
                far = i;
            }
        }
        return Figures.of(driven, offsets[far % offsets.length], s[far]);
    }

    /**
     * Shape of a line in short.
     *
     * @param length along the road's surface, m
     * @param leastRadius m; positive infinity if it is straight
     * @param leastRadiusAt where, by distance along the line, m
     * @param largestOffset from the road's own path, m, positive to the left: the one farthest from 0
     * @param largestOffsetAt where, by distance along the road, m
     */
    public record Figures(
            double length, double leastRadius, double leastRadiusAt, double largestOffset, double largestOffsetAt) {
        /** Shape of a road's own path. */
        public static Figures of(Track road) {
            return of(road, 0, 0);
        }

        private static Figures of(Track path, double offset, double at) {
            double most = 0;
            double place = 0;
            for (TrackPoint point : path.points()) {
                if (Math.abs(point.curvature()) > most) {
                    most = Math.abs(point.curvature());
                    place = point.s();
                }
            }
            return new Figures(path.length(), 1 / most, place, offset, at);
        }
    }
}
