package dev.lapwright.line;

import dev.lapwright.lap.Vehicle;

/** Finder of minimum-time lines: the search itself, or one that remembers what it found. */
@FunctionalInterface
public interface LineFinder {
    /** The search itself, each time anew. */
    LineFinder SEARCH = LineSearch::fastest;

    /**
     * The line that the search finds for a car on a day, bit for bit.
     *
     * @throws dev.lapwright.fault.NoLapException if this car cannot get round on the line that the search begins at
     */
    Line fastest(LineSearch search, Vehicle vehicle);
}
