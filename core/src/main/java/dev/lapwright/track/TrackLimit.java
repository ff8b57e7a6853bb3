package dev.lapwright.track;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.OptionalDouble;

/**
 * Track limit of a stretch of road, as at the exit of a corner: how far a car's side may lie beyond the road's edge. It stands there in place of the
 * margin that is kept elsewhere.
 *
 * @param from where it begins, m
 * @param to where it ends, m; on a circuit before {@code from} if it runs over the start line
 * @param beyondLeft how far beyond the left edge the car's left side may lie, m; below zero it must stay that far inside; empty
 *     where the left side has no limit of its own
 * @param beyondRight the same on the right
 */
public record TrackLimit(double from, double to, OptionalDouble beyondLeft, OptionalDouble beyondRight) {
    /** Farther no car is allowed, and farther inside none is sent, m. */
    public static final double MOST_BEYOND = 20;

    private static final double LONGEST = 200_000;

    public TrackLimit {
        Check.inRange("track limit's start (m)", from, 0, LONGEST);
        Check.inRange("track limit's end (m)", to, 0, LONGEST);
        beyondLeft.ifPresent(value -> Check.inRange("beyond the left edge (m)", value, -MOST_BEYOND, MOST_BEYOND));
        beyondRight.ifPresent(value -> Check.inRange("beyond the right edge (m)", value, -MOST_BEYOND, MOST_BEYOND));
        if (beyondLeft.isEmpty() && beyondRight.isEmpty()) {
            throw new InvalidValueException(
                    "track limit", "it limits neither side", "say how far beyond the left or the right edge");
        }
    }

    /** Whether it holds at a distance, m. */
    public boolean holdsAt(double distance) {
        return from <= to ? distance >= from && distance <= to : distance >= from || distance <= to;
    }

    /** The mirror image. */
    TrackLimit mirrored() {
        return new TrackLimit(from, to, beyondRight, beyondLeft);
    }

    /** The same from another place to another, m. */
    TrackLimit between(double start, double end) {
        return new TrackLimit(start, end, beyondLeft, beyondRight);
    }
}
