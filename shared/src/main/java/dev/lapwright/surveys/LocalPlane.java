package dev.lapwright.surveys;

import dev.lapwright.fault.Check;
import dev.lapwright.files.DocumentException;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.TextPlace;
import dev.lapwright.track.survey.Survey;
import dev.lapwright.track.survey.SurveyPoint;
import java.util.ArrayList;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicMask;

/**
 * Longitudes and latitudes on the WGS 84 ellipsoid, put on a plane by the azimuthal equidistant projection about their
 * middle: x is to the east, y to the north, and distance and direction from the middle are true. Across it lengths err by
 * (r/R)²/6, where R is the earth's radius: 1e-7 at r = 5 km. Geodesics by GeographicLib (C. F. F. Karney, Journal of
 * Geodesy 87, 2013). Lengths are those at the ellipsoid; at 1000 m of altitude a road is longer by 1.6e-4, which is left
 * out.
 */
final class LocalPlane {
    private static final double FARTHEST = 100_000;
    /** Altitudes of roads, m; those of {@link Survey}, asked here while the line of the file is known. */
    private static final double LOWEST = -500;

    private static final double HIGHEST = 6000;

    /** Degrees east and north, and the altitude in metres or NaN. */
    record Position(TextPlace place, double longitude, double latitude, double altitude) {}

    /** Where a plane touches the ellipsoid, degrees. */
    record Origin(double longitude, double latitude) {}

    /** A survey on its plane. */
    record Placed(Survey survey, Origin origin) {}

    private LocalPlane() {}

    /**
     * The survey on a plane.
     *
     * @param about where the plane touches; null for the middle of the positions
     * @throws DocumentException if they are no longitudes and latitudes or lie too far apart
     */
    static Placed survey(String source, List<Position> positions, Origin about) {
        FaultList faults = new FaultList(source);
        double east = 0;
        double north = 0;
        int altitudes = 0;
        for (Position p : positions) {
            if (!(Math.abs(p.longitude) <= 180 && Math.abs(p.latitude) <= 90)) {
                boolean swapped = Math.abs(p.longitude) <= 90 && Math.abs(p.latitude) <= 180;
                faults.form(
                        p.place,
                        "",
                        Check.text(p.longitude) + ", " + Check.text(p.latitude) + " is no longitude and latitude",
                        swapped
                                ? "it looks like latitude first; put longitude first in each position"
                                : "give degrees, longitude first; coordinates in metres belong into a CSV file");
            }
            if (p.altitude < LOWEST || p.altitude > HIGHEST) {
                faults.form(
                        p.place,
                        "",
                        Check.text(p.altitude) + " m is no elevation of a road",
                        "give metres above the sea, " + Check.text(LOWEST) + " to " + Check.text(HIGHEST)
                                + ", or take the point out");
            }
            // Counted from the first, so that the date line does not matter.
            east += Math.IEEEremainder(p.longitude - positions.get(0).longitude, 360);
            north += p.latitude;
            altitudes += Double.isNaN(p.altitude) ? 0 : 1;
        }
        faults.throwIfAny();
        if (positions.isEmpty()) {
            return new Placed(new Survey(List.of(), false, false), about);
        }
        if (altitudes > 0 && altitudes < positions.size()) {
            throw new DocumentException(
                    source,
                    positions.size() - altitudes + " of " + positions.size() + " points have no elevation",
                    "give it to all points or to none");
        }
        double middleEast = about == null ? positions.get(0).longitude + east / positions.size() : about.longitude;
        double middleNorth = about == null ? north / positions.size() : about.latitude;
        List<SurveyPoint> points = new ArrayList<>(positions.size());
        for (Position p : positions) {
            GeodesicData line = Geodesic.WGS84.Inverse(
                    middleNorth, middleEast, p.latitude, p.longitude, GeodesicMask.DISTANCE | GeodesicMask.AZIMUTH);
            if (!(line.s12 <= FARTHEST)) {
                throw new DocumentException(
                        source,
                        "its points lie more than " + Math.round(FARTHEST / 1000) + " km from their middle",
                        "check longitudes and latitudes; longitude comes first in GeoJSON");
            }
            double azimuth = Math.toRadians(line.azi1);
            points.add(new SurveyPoint(
                    line.s12 * Math.sin(azimuth), line.s12 * Math.cos(azimuth), altitudes > 0 ? p.altitude : 0, 0, 0));
        }
        return new Placed(new Survey(points, altitudes > 0, false), new Origin(middleEast, middleNorth));
    }
}
