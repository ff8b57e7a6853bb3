package dev.lapwright.results;

import dev.lapwright.documents.LineKind;
import dev.lapwright.lap.Lap;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.report.CsvText;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Lines along one road: the road's own path, which comes first, and those found; as a table over the distance along the road,
 * and in short as JSON.
 */
public final class LineTable {
    private LineTable() {}

    /**
     * A line and the lap on it.
     *
     * @param line null for the road's own path
     */
    public record Row(LineKind kind, Line line, Lap lap) {
        /** Its shape. */
        public Line.Figures figures() {
            return line == null ? Line.Figures.of(lap.track()) : line.figures();
        }
    }

    /**
     * Comma-separated values under one line of names, the unit in each; a row for each node. Coordinates are those of the
     * road: from its start, east and north.
     */
    public static String csv(List<Row> rows) {
        Track road = rows.get(0).lap().track();
        double[] distances = distances(rows);
        Map<String, double[]> columns = new LinkedHashMap<>();
        columns.put("distanceM", distances);
        for (Row row : rows) {
            columns(columns, row, road, distances);
        }
        CsvText csv = new CsvText();
        csv.row(new ArrayList<>(columns.keySet()));
        for (int i = 0; i < distances.length; i++) {
            List<String> cells = new ArrayList<>(columns.size());
            for (double[] column : columns.values()) {
                cells.add(CsvText.number(column[i]));
            }
            csv.row(cells);
        }
        return csv.text();
    }

    /** All lines of one search have the same nodes. */
    private static double[] distances(List<Row> rows) {
        for (Row row : rows) {
            if (row.line() != null) {
                return row.line().distances();
            }
        }
        throw new IllegalArgumentException("there is no line but the road's own path");
    }

    private static void columns(Map<String, double[]> columns, Row row, Track road, double[] distances) {
        int n = distances.length;
        double[] curvature = new double[n];
        double[] speed = new double[n];
        double[] x = new double[n];
        double[] y = new double[n];
        Line line = row.line();
        Stations laid = road.stations(StationSpacing.DEFAULT);
        for (int i = 0; i < n; i++) {
            double along = line == null ? distances[i] : line.along(distances[i]);
            double within = Math.min(along, row.lap().track().length());
            curvature[i] = row.lap().track().pointAt(within).curvature();
            speed[i] = LapTrace.kmh(row.lap().speedAt(within));
            if (line == null) {
                Stations.Place place = laid.placeAt(distances[i]);
                x[i] = place.x();
                y[i] = place.y();
            }
        }
        String word = row.kind().word();
        columns.put(word + "OffsetM", line == null ? new double[n] : line.offsets());
        columns.put(word + "EastM", line == null ? x : line.x());
        columns.put(word + "NorthM", line == null ? y : line.y());
        columns.put(word + "CurvaturePerM", curvature);
        columns.put(word + "SpeedKmh", speed);
    }

    /** The lines in short as maps and lists, for {@link JsonLayout}; new each time, so that more may be added to it. */
    public static Map<String, Object> tree(List<Row> rows, LineChoices choices) {
        Lap first = rows.get(0).lap();
        Map<String, Object> tree = ResultHeader.of(
                "lines/1",
                InputHash.of(first.vehicle().car(), first.vehicle().conditions(), first.track())
                        .with("marginM", choices.margin())
                        .with("spacingM", choices.spacing())
                        .sha256(),
                first.vehicle().car(),
                first.track(),
                first.vehicle().conditions());
        tree.put("marginM", choices.margin());
        tree.put("spacingM", choices.spacing());
        List<Object> lines = new ArrayList<>();
        for (Row row : rows) {
            Line.Figures figures = row.figures();
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("line", row.kind().word());
            one.put("lengthM", figures.length());
            one.put("lapTimeS", row.lap().time());
            one.put("gainS", first.time() - row.lap().time());
            one.put("leastRadiusM", figures.leastRadius());
            one.put("leastRadiusAtM", figures.leastRadiusAt());
            one.put("largestOffsetM", figures.largestOffset());
            one.put("largestOffsetAtM", figures.largestOffsetAt());
            lines.add(one);
        }
        tree.put("lines", lines);
        return tree;
    }
}
