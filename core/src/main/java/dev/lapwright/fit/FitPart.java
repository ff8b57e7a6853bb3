package dev.lapwright.fit;

import dev.lapwright.track.Corner;
import java.util.Optional;

/**
 * A corner or a straight as driven and as fitted.
 *
 * @param corner empty on a straight
 * @param follows on a straight, the corner it follows; empty otherwise
 * @param start distance, m
 * @param end distance, m; may be below {@code start} where it spans the line
 * @param logged mean of the laps
 * @param before by the car as given
 * @param fitted by the fitted car
 */
public record FitPart(
        Optional<Corner> corner,
        Optional<Corner> follows,
        double start,
        double end,
        Drive logged,
        Drive before,
        Drive fitted) {
    /**
     * One way through it.
     *
     * @param time s
     * @param entrySpeed m/s
     * @param leastSpeed m/s
     * @param mostSpeed m/s
     * @param exitSpeed m/s
     */
    public record Drive(double time, double entrySpeed, double leastSpeed, double mostSpeed, double exitSpeed) {}

    /** Whether it is a corner. */
    public boolean isCorner() {
        return corner.isPresent();
    }

    /** Label for tables: the corner's, or "after" the corner's, or "straight" where there is no corner at all. */
    public String label() {
        return corner.map(Corner::label)
                .orElse(follows.map(c -> "after " + c.label()).orElse("straight"));
    }

    /** Time the laps lose to the fitted car here, s, by speed and by a longer way; negative where they gain. */
    public double lost() {
        return logged.time() - fitted.time();
    }
}
