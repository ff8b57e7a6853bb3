package dev.lapwright.results;

import dev.lapwright.car.Unit;
import dev.lapwright.report.CsvText;
import dev.lapwright.track.Corner;
import dev.lapwright.track.Stations;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The corners of a track with what the road is like at each apex, as rows, CSV and JSON. */
public final class CornerTable {
    private static final List<String> COLUMNS = List.of(
            "number",
            "name",
            "turn",
            "entryM",
            "apexM",
            "exitM",
            "minimumRadiusM",
            "turningDeg",
            "slopeDeg",
            "helpingBankDeg",
            "grip");

    /**
     * A corner.
     *
     * @param corner which, and where
     * @param turning change of heading, rad, positive to the left
     * @param slope at the apex, rad, positive uphill
     * @param helpingBank bank at the apex, rad, positive where it helps the corner, whichever way that turns
     * @param grip at the apex, relative to the reference surface
     */
    public record Row(Corner corner, double turning, double slope, double helpingBank, double grip) {}

    private CornerTable() {}

    /** A row for each corner in driving order. */
    public static List<Row> rows(Stations stations) {
        List<Row> rows = new ArrayList<>();
        for (Corner corner : stations.corners()) {
            double apex = Math.max(0, Math.min(corner.apex(), stations.track().length()));
            TrackPoint road = stations.track().pointAt(apex);
            rows.add(new Row(
                    corner,
                    stations.turning(corner),
                    road.slope(),
                    corner.left() ? road.bank() : -road.bank(),
                    road.grip()));
        }
        return rows;
    }

    /** The rows as comma-separated values under a line of names; distances in m, angles in degrees. */
    public static String csv(Stations stations) {
        CsvText csv = new CsvText();
        csv.row(COLUMNS);
        for (Row row : rows(stations)) {
            List<String> cells = new ArrayList<>();
            for (Object value : values(row)) {
                cells.add(value instanceof Double number ? CsvText.number(number) : value.toString());
            }
            csv.row(cells);
        }
        return csv.text();
    }

    /** The rows for JSON, with the names of the columns. */
    public static List<Map<String, Object>> tree(Stations stations) {
        List<Map<String, Object>> tree = new ArrayList<>();
        for (Row row : rows(stations)) {
            Map<String, Object> one = new LinkedHashMap<>();
            List<Object> values = values(row);
            for (int i = 0; i < values.size(); i++) {
                one.put(COLUMNS.get(i), values.get(i));
            }
            tree.add(one);
        }
        return tree;
    }

    private static List<Object> values(Row row) {
        Corner corner = row.corner;
        return List.of(
                corner.number(),
                corner.name(),
                corner.left() ? "left" : "right",
                corner.entry(),
                corner.apex(),
                corner.exit(),
                corner.minimumRadius(),
                degrees(row.turning),
                degrees(row.slope),
                degrees(row.helpingBank),
                row.grip);
    }

    private static double degrees(double radians) {
        return Unit.RADIAN.convert(radians, Unit.DEGREE);
    }
}
