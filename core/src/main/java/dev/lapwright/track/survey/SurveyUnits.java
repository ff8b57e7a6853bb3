package dev.lapwright.track.survey;

import java.util.ArrayList;
import java.util.List;

/**
 * Whether elevations and widths look like metres. The bounds are common practice, no source: circuits climb by up to 15 or
 * 20 % and are 6 to 20 m wide.
 */
final class SurveyUnits {
    private static final double STEEP = Math.atan(0.22);
    private static final double WIDE = 25;
    private static final double NARROW = 2.5;

    private SurveyUnits() {}

    /** What looks odd, each a sentence with what to do. */
    static List<String> odd(Survey survey, double steepest) {
        List<String> odd = new ArrayList<>();
        if (survey.hasElevation() && steepest > STEEP) {
            odd.add("the road is as steep as " + Math.round(100 * Math.tan(steepest))
                    + " %: if the elevations are in feet, put the unit in the heading or multiply them by 0.3048; if"
                    + " they are rough, smooth them more");
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
}
