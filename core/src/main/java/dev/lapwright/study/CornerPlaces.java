package dev.lapwright.study;

import dev.lapwright.track.Corner;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Optional;

/** Which corner a place lies in, and which comes next. */
public final class CornerPlaces {
    private final List<Corner> corners;
    private final boolean closed;
    private final double length;

    public CornerPlaces(List<Corner> corners, Track track) {
        this.corners = corners;
        closed = track.isClosed();
        length = track.length();
    }

    /** The corner at a distance in m, its ends included. */
    public Optional<Corner> at(double s) {
        return corners.stream().filter(corner -> holds(corner, s)).findFirst();
    }

    private static boolean holds(Corner corner, double s) {
        return corner.entry() <= corner.exit()
                ? s >= corner.entry() && s <= corner.exit()
                : s >= corner.entry() || s <= corner.exit();
    }

    /** The corner whose entry is the next after a distance in m; none after the last of an open run. */
    public Optional<Corner> after(double s) {
        Corner next = null;
        double least = Double.POSITIVE_INFINITY;
        for (Corner corner : corners) {
            double ahead = corner.entry() - s;
            if (ahead < 0 && closed) {
                ahead += length;
            }
            if (ahead >= 0 && ahead < least) {
                least = ahead;
                next = corner;
            }
        }
        return Optional.ofNullable(next);
    }
}
