package dev.lapwright.track;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Corner: a stretch of track that bends one way.
 *
 * @param number from 1 in driving order
 * @param name the name given to it, or an empty string
 * @param entry distance where the bend begins, m; may exceed {@code exit} where a corner spans the start line
 * @param apex distance of the greatest curvature, m (the middle of it where it is constant)
 * @param exit distance where the bend ends, m
 * @param left true for a left turn
 * @param minimumRadius smallest radius of the path, m
 */
public record Corner(
        int number, String name, double entry, double apex, double exit, boolean left, double minimumRadius) {

    /** Short label for tables and charts: the number, and the name if it has one. */
    public String label() {
        return name.isEmpty() ? "T" + number : "T" + number + " " + name;
    }

    /** Whether a distance (m) lies in it, its ends included. */
    public boolean contains(double s) {
        return entry <= exit ? s >= entry && s <= exit : s >= entry || s <= exit;
    }

    /** The corner at a distance in m, if there is one; of two the first. */
    public static Optional<Corner> at(List<Corner> corners, double s) {
        return corners.stream().filter(corner -> corner.contains(s)).findFirst();
    }

    /** The corner of a track whose entry is the next after a distance in m; none after the last of an open run. */
    public static Optional<Corner> after(List<Corner> corners, Track track, double s) {
        Corner next = null;
        double least = Double.POSITIVE_INFINITY;
        for (Corner corner : corners) {
            double ahead = corner.entry() - s;
            if (ahead < 0 && track.isClosed()) {
                ahead += track.length();
            }
            if (ahead >= 0 && ahead < least) {
                least = ahead;
                next = corner;
            }
        }
        return Optional.ofNullable(next);
    }

    /** The corner that people mean by a number, T and a number, or a name, letter case aside. */
    public static Optional<Corner> find(List<Corner> corners, String wanted) {
        String word = wanted.strip().toLowerCase(Locale.ROOT);
        for (Corner corner : corners) {
            if (word.equals(Integer.toString(corner.number()))
                    || word.equals("t" + corner.number())
                    || word.equals(corner.name().toLowerCase(Locale.ROOT))
                    || word.equals(corner.label().toLowerCase(Locale.ROOT))) {
                return Optional.of(corner);
            }
        }
        return Optional.empty();
    }
}
