package dev.lapwright.documents;

import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackLimit;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Writer of a circuit document made of stations, which holds the whole of any track however it was made. */
final class CircuitWriter {
    /** A doubt needs no more digits, 1/m. */
    private static final double DEVIATION_STEP = 1e-6;

    private CircuitWriter() {}

    /** The document as maps and lists in its order. */
    static Map<String, Object> tree(Track track) {
        Map<String, Object> document = DocumentWriter.header(DocumentKind.CIRCUIT, track.name(), "");
        document.put("closed", track.isClosed());
        document.put(CircuitReader.PATH, track.path().word());
        put(document, RoadFields.START_HEADING, compass(track.startHeading()));
        put(document, RoadFields.START_ALTITUDE, track.startAltitude());
        if (track.isClosed()) {
            put(document, RoadFields.CLOSURE_TOLERANCE, tolerance(track));
        } else {
            put(document, RoadFields.ENTRY_SPEED, track.entrySpeed());
        }
        List<Double> sectors = new ArrayList<>();
        for (double end : track.sectorEnds()) {
            sectors.add(end);
        }
        document.put(RoadFields.SECTOR_ENDS.name(), sectors);
        double[] deviation = track.curvatureDeviation();
        if (deviation.length > 0) {
            put(document, RoadFields.CURVATURE_ERROR_LENGTH, rounded(track.curvatureErrorLength()));
        }
        DocumentWriter.putStated(
                document, RoadFields.CURVATURE_DOUBT, track.doubt().curvaturePercent());
        DocumentWriter.putStated(document, RoadFields.WIDTH_DOUBT, track.doubt().width());
        DocumentWriter.putStated(document, RoadFields.GRIP_DOUBT, track.doubt().gripPercent());
        List<Map<String, Object>> stations = new ArrayList<>();
        for (int i = 0; i < track.points().size(); i++) {
            Map<String, Object> station = station(track.points().get(i));
            if (deviation.length > 0) {
                put(station, RoadFields.CURVATURE_DEVIATION, Math.rint(deviation[i] / DEVIATION_STEP) * DEVIATION_STEP);
            }
            stations.add(station);
        }
        document.put("stations", stations);
        if (!track.cornerNames().isEmpty()) {
            List<Map<String, Object>> corners = new ArrayList<>();
            for (Track.NamedPlace place : track.cornerNames()) {
                Map<String, Object> corner = new LinkedHashMap<>();
                put(corner, RoadFields.CORNER_AT, place.s());
                if (!place.name().isEmpty()) {
                    corner.put("name", place.name());
                }
                CircuitReader.MARKS.forEach((word, mark) -> {
                    if (mark == place.mark()) {
                        corner.put(CircuitReader.MARK, word);
                    }
                });
                corners.add(corner);
            }
            document.put("corners", corners);
        }
        if (!track.limits().isEmpty()) {
            document.put(
                    CircuitReader.TRACK_LIMITS,
                    track.limits().stream().map(CircuitWriter::limit).toList());
        }
        return document;
    }

    private static Map<String, Object> limit(TrackLimit limit) {
        Map<String, Object> fields = new LinkedHashMap<>();
        put(fields, RoadFields.LIMIT_FROM, limit.from());
        put(fields, RoadFields.LIMIT_TO, limit.to());
        limit.beyondLeft().ifPresent(beyond -> put(fields, RoadFields.BEYOND_LEFT, beyond));
        limit.beyondRight().ifPresent(beyond -> put(fields, RoadFields.BEYOND_RIGHT, beyond));
        return fields;
    }

    /**
     * The gap was accepted when the track was made; its document must not be stricter than that, nor laxer than needed,
     * m.
     */
    private static double tolerance(Track track) {
        Stations laid = track.stations(StationSpacing.DEFAULT);
        double gap = Math.max(laid.planeGap(), Math.abs(laid.altitudeGap()));
        return Math.max(1, Math.ceil(gap + 1e-3));
    }

    private static double compass(double heading) {
        return Math.IEEEremainder(Math.PI / 2 - heading, 2 * Math.PI);
    }

    private static Map<String, Object> station(TrackPoint point) {
        Map<String, Object> fields = new LinkedHashMap<>();
        put(fields, RoadFields.DISTANCE, point.s());
        put(fields, RoadFields.CURVATURE, point.curvature());
        put(fields, RoadFields.SLOPE, point.slope());
        put(fields, RoadFields.VERTICAL_CURVATURE, point.verticalCurvature());
        put(fields, RoadFields.BANK, point.bank());
        put(fields, RoadFields.GRIP, point.grip());
        put(fields, RoadFields.WIDTH_LEFT, point.widthLeft());
        put(fields, RoadFields.WIDTH_RIGHT, point.widthRight());
        if (Double.isFinite(point.speedLimit())) {
            put(fields, RoadFields.SPEED_LIMIT, point.speedLimit());
        }
        return fields;
    }

    /** To a hundredth: it is known to a twentieth at best. */
    private static double rounded(double length) {
        return Math.max(1e-2, Math.rint(100 * length) / 100);
    }

    private static void put(Map<String, Object> fields, NumberField field, double value) {
        fields.put(field.name(), field.fromModel(value));
    }
}
