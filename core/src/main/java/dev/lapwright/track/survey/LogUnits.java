package dev.lapwright.track.survey;

import java.util.ArrayList;
import java.util.List;

/**
 * Whether the numbers of a log look like metres, metres per second and metres per second squared. The bounds are common
 * practice, no source: no circuit car is faster than 110 m/s, and each passes 4 m/s² somewhere on a lap.
 */
final class LogUnits {
    private static final double FASTEST = 110;
    private static final double LEAST_PEAK = 4;
    private static final double HARDEST = 70;

    private LogUnits() {}

    /** What looks odd, each a sentence with what to do. */
    static List<String> odd(double[] speed, double[] lateralAcceleration) {
        List<String> odd = new ArrayList<>();
        double fastest = largest(speed);
        double hardest = largest(lateralAcceleration);
        if (fastest > FASTEST) {
            odd.add("speeds of up to " + Math.round(fastest)
                    + " m/s look like km/h or mph; put the unit in the heading, as in speed (km/h)");
        }
        if (hardest < LEAST_PEAK) {
            odd.add("lateral accelerations of up to " + Math.rint(100 * hardest) / 100
                    + " m/s² look like g; put the unit in the heading, as in lateral acceleration (g)");
        } else if (hardest > HARDEST) {
            odd.add("lateral accelerations of up to " + Math.round(hardest)
                    + " m/s² are more than tyres hold; check their unit, and cut out knocks");
        }
        return odd;
    }

    private static double largest(double[] values) {
        double largest = 0;
        for (double value : values) {
            largest = Math.max(largest, Math.abs(value));
        }
        return largest;
    }
}
