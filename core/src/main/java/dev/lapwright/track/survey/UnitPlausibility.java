package dev.lapwright.track.survey;

import java.util.ArrayList;
import java.util.List;

/**
 * The check whether elevations, widths, speeds and accelerations look like SI units. The bounds are common practice, no source:
 * circuits climb by up to 15 or 20 % and are 6 to 20 m wide; no circuit car is faster than 110 m/s, and each passes 4 m/s²
 * somewhere on a lap.
 */
public final class UnitPlausibility {
    /** Slope above which no circuit is, rad. */
    public static final double STEEPEST = Math.atan(0.22);

    private static final double WIDE = 25;
    private static final double NARROW = 2.5;

    /** Speed above which no circuit car is, m/s. */
    public static final double FASTEST = 110;

    private static final double LEAST_PEAK = 4;
    private static final double HARDEST = 70;

    private UnitPlausibility() {}

    /** The oddities of a survey, each a sentence with what to do. */
    static List<String> ofSurvey(Survey survey, double steepest) {
        List<String> odd = new ArrayList<>();
        if (survey.hasElevation() && steepest > STEEPEST) {
            odd.add("the road is as steep as " + Math.round(100 * Math.tan(steepest))
                    + " %: if the elevations are in feet, put the unit in the heading or say --column z=HEADING:ft; if"
                    + " they are rough, smooth them more, as in --elevation-smoothing 200");
        }
        if (survey.hasWidths() && !survey.points().isEmpty()) {
            double mean = survey.points().stream()
                    .mapToDouble(p -> p.widthLeft() + p.widthRight())
                    .average()
                    .orElse(0);
            if (mean > WIDE) {
                odd.add("the road is " + Math.round(mean)
                        + " m wide on average, which looks like feet, or like the whole width given for each side; put"
                        + " the unit in the heading, as in width_left (ft), or halve the widths");
            } else if (mean < NARROW) {
                odd.add("the road is " + Math.rint(10 * mean) / 10
                        + " m wide on average, narrower than any car needs; widths are counted from the centre line to"
                        + " each side, in metres");
            }
        }
        return odd;
    }

    /** The oddities of a logged lap, each a sentence with what to do. */
    static List<String> ofLog(double[] speed, double[] lateralAcceleration) {
        List<String> odd = new ArrayList<>();
        double fastest = largest(speed);
        double hardest = largest(lateralAcceleration);
        if (fastest > FASTEST) {
            odd.add("speeds of up to " + Math.round(fastest)
                    + " m/s look like km/h or mph; put the unit in the heading, as in speed (km/h)");
        }
        if (hardest == 0) {
            odd.add("all lateral accelerations are 0; look whether the column is the right one, as in"
                    + " --column lateral_acceleration=HEADING");
        } else if (hardest < LEAST_PEAK) {
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
