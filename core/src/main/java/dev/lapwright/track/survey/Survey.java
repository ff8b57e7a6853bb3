package dev.lapwright.track.survey;

import dev.lapwright.fault.Check;
import java.util.List;

/**
 * Points along a centre line, in order.
 *
 * @param points unmodifiable
 * @param hasElevation whether their altitudes are known
 * @param hasWidths whether their widths are known
 * @param otherLaps points of more laps on the same line, which are pooled with them; each unmodifiable, from the start line on
 */
public record Survey(
        List<SurveyPoint> points, boolean hasElevation, boolean hasWidths, List<List<SurveyPoint>> otherLaps) {
    private static final double FARTHEST = 1e8;
    private static final double STEEPEST_BANK = Math.toRadians(65);

    /** @throws dev.lapwright.fault.InvalidValueException if a number is not finite or out of its range */
    public Survey {
        points = List.copyOf(points);
        otherLaps = otherLaps.stream().map(List::copyOf).toList();
        check(points, hasElevation, hasWidths);
        for (List<SurveyPoint> lap : otherLaps) {
            check(lap, hasElevation, hasWidths);
        }
    }

    /** Points of one lap or run. */
    public Survey(List<SurveyPoint> points, boolean hasElevation, boolean hasWidths) {
        this(points, hasElevation, hasWidths, List.of());
    }

    private static void check(List<SurveyPoint> points, boolean hasElevation, boolean hasWidths) {
        for (int i = 0; i < points.size(); i++) {
            SurveyPoint p = points.get(i);
            String place = "point " + (i + 1) + ": ";
            Check.inRange(place + "x (m)", p.x(), -FARTHEST, FARTHEST);
            Check.inRange(place + "y (m)", p.y(), -FARTHEST, FARTHEST);
            Check.inRange(place + "bank (rad)", p.bank(), -STEEPEST_BANK, STEEPEST_BANK);
            Check.inRange(place + "grip", p.grip(), 0.05, 3);
            if (hasElevation) {
                Check.inRange(place + "altitude (m)", p.z(), -500, 6000);
            }
            if (hasWidths) {
                Check.inRange(place + "width to the left (m)", p.widthLeft(), 0, 100);
                Check.inRange(place + "width to the right (m)", p.widthRight(), 0, 100);
            }
        }
    }
}
