package dev.lapwright.line;

import dev.lapwright.fault.Check;
import dev.lapwright.track.Track;

/**
 * A line driven along a road: offsets from its path at even nodes, and the track that the line itself makes. Immutable.
 * Sweeps that hold a line fixed are given {@link #driven()}.
 */
public final class Line {
    private final RoadNodes road;
    private final double[] offsets;
    private final DrivenPath path;
    private final Track driven;

    Line(RoadNodes road, double[] offsets) {
        this.road = road;
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

    /** Offsets without the first one's coming again. */
    double[] nodes() {
        return offsets.clone();
    }

    /** On a circuit the first node comes again at the end. */
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

    /** Distance along the line (m) abreast of a distance along the road (m). */
    public double along(double roadDistance) {
        return path.along(Check.inRange("distance (m)", roadDistance, 0, road.track.length()));
    }
}
