package dev.lapwright.ride;

/** Height that a tyre feels along its way. Safe to read from many threads. */
public interface RoadProfile {
    /** How far it reaches, m. */
    double length();

    /** Height (m) at a distance from its beginning, m. */
    double height(double distance);

    /** Slope, the derivative of {@link #height}. */
    double slope(double distance);

    /** Distances within it at which the slope has a jump or a kink, rising, m; a copy. */
    double[] joints();

    /** Distance at its beginning that counts for nothing while transients die away, at a speed in m/s: m. */
    default double runUp(double speed) {
        return 0;
    }

    /** Time after its end that still counts, s. */
    default double settling() {
        return 0;
    }
}
