package dev.lapwright.track.survey;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.List;

/**
 * Altitudes of a road from a source of their own, to be joined to a survey: known by the distance from its start, or at
 * positions on its plane. Between two of them altitude is linear. Immutable.
 */
public final class ElevationProfile {
    /** Lengths along two surveys of one road differ by less: noise makes chords longer, coarse points make them shorter. */
    private static final double SAME_LENGTH = 0.05;
    /** A point this far from all positions lies beside another road, m. */
    private static final double FARTHEST = 50;

    private static final int FEWEST = 2;

    private final double[] distance;
    private final double[] altitude;
    private final List<SurveyPoint> points;

    private ElevationProfile(double[] distance, double[] altitude, List<SurveyPoint> points) {
        if (altitude.length < FEWEST) {
            throw new InvalidValueException(
                    "elevation", "it has " + altitude.length + " altitudes", "give one every 10 to 50 m of the road");
        }
        this.distance = distance;
        this.altitude = altitude;
        this.points = points;
    }

    /**
     * Altitudes by the distance from the survey's first point.
     *
     * @param distance m, not falling; not modified
     * @param altitude m, as many; not modified
     * @throws InvalidValueException if they are fewer than two, or the distance falls
     */
    public static ElevationProfile along(double[] distance, double[] altitude) {
        for (int i = 1; i < distance.length; i++) {
            if (!(distance[i] >= distance[i - 1])) {
                throw new InvalidValueException(
                        "elevation",
                        "distance " + Check.text(distance[i]) + " m stands behind " + Check.text(distance[i - 1])
                                + " m",
                        "list the altitudes in order of distance");
            }
        }
        return new ElevationProfile(distance.clone(), altitude.clone(), List.of());
    }

    /**
     * Altitudes at positions along the road, on the plane of the survey that they are to be joined to.
     *
     * @throws InvalidValueException if there are fewer than two
     */
    public static ElevationProfile at(List<SurveyPoint> points) {
        return new ElevationProfile(
                new double[0], points.stream().mapToDouble(SurveyPoint::z).toArray(), List.copyOf(points));
    }

    /**
     * A survey with these altitudes instead of its own.
     *
     * @param closed whether its end joins its start
     * @throws InvalidValueException if they are not those of the same road: by distance, where the lengths differ by more than
     *     5 %; by position, where a point of the survey lies more than 50 m from all of them
     */
    public Survey joined(Survey survey, boolean closed) {
        return new Survey(
                joined(survey.points(), closed),
                true,
                survey.hasWidths(),
                survey.otherLaps().stream().map(lap -> joined(lap, closed)).toList());
    }

    private List<SurveyPoint> joined(List<SurveyPoint> road, boolean closed) {
        double[] z = points.isEmpty() ? byDistance(road, closed) : byPosition(road, closed);
        List<SurveyPoint> raised = new ArrayList<>(z.length);
        for (int i = 0; i < z.length; i++) {
            SurveyPoint p = road.get(i);
            raised.add(p.at(p.x(), p.y(), z[i]));
        }
        return raised;
    }

    private double[] byDistance(List<SurveyPoint> road, boolean closed) {
        double[] way = new double[road.size()];
        for (int i = 1; i < way.length; i++) {
            way[i] = way[i - 1] + road.get(i).distanceTo(road.get(i - 1));
        }
        double open = way.length == 0 ? 0 : way[way.length - 1];
        double whole =
                closed && way.length > 0 ? open + road.get(way.length - 1).distanceTo(road.get(0)) : open;
        double span = distance[distance.length - 1] - distance[0];
        boolean same = span >= (1 - SAME_LENGTH) * open && span <= (1 + SAME_LENGTH) * whole;
        if (!same) {
            throw new InvalidValueException(
                    "elevation",
                    "its altitudes span " + Math.round(span) + " m of road, where the survey is " + Math.round(whole)
                            + " m long",
                    "give the altitudes of the same lap from the same start, or give positions, which need no start");
        }
        // What both call a lap is one lap.
        double stretched = Math.abs(span - open) <= Math.abs(span - whole) ? span / open : span / whole;
        double[] z = new double[way.length];
        int cell = 0;
        for (int i = 0; i < z.length; i++) {
            double s = distance[0] + Math.min(span, way[i] * stretched);
            while (cell + 2 < distance.length && distance[cell + 1] <= s) {
                cell++;
            }
            double step = distance[cell + 1] - distance[cell];
            double share = step > 0 ? Math.max(0, Math.min(1, (s - distance[cell]) / step)) : 0;
            z[i] = altitude[cell] + share * (altitude[cell + 1] - altitude[cell]);
        }
        return z;
    }

    private double[] byPosition(List<SurveyPoint> road, boolean closed) {
        double[] z = new double[road.size()];
        int pieces = closed ? points.size() : points.size() - 1;
        for (int i = 0; i < z.length; i++) {
            SurveyPoint p = road.get(i);
            double nearest = Double.POSITIVE_INFINITY;
            for (int k = 0; k < pieces; k++) {
                SurveyPoint a = points.get(k);
                SurveyPoint b = points.get((k + 1) % points.size());
                double dx = b.x() - a.x();
                double dy = b.y() - a.y();
                double square = dx * dx + dy * dy;
                double along = square > 0 ? ((p.x() - a.x()) * dx + (p.y() - a.y()) * dy) / square : 0;
                double share = Math.max(0, Math.min(1, along));
                double apart = Math.hypot(p.x() - a.x() - share * dx, p.y() - a.y() - share * dy);
                if (apart < nearest) {
                    nearest = apart;
                    z[i] = a.z() + share * (b.z() - a.z());
                }
            }
            if (!(nearest <= FARTHEST)) {
                throw new InvalidValueException(
                        "elevation",
                        "point " + (i + 1) + " of the survey lies " + Math.round(nearest)
                                + " m from all positions whose altitude is given",
                        "give altitudes along the whole road, in the same coordinates");
            }
        }
        return z;
    }
}
