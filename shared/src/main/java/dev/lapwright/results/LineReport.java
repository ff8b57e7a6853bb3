package dev.lapwright.results;

import dev.lapwright.car.Quantity;
import dev.lapwright.documents.LineKind;
import dev.lapwright.documents.StoredLine;
import dev.lapwright.lap.Lap;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Report of a search for lines: what each makes faster than the circuit's own path, and where it runs.
 *
 * @param subject car, setup, road and day
 * @param choices margin and nodes
 * @param rows the road's own path, the smoothest line and the fastest, each with its lap
 */
public record LineReport(Subject subject, LineChoices choices, List<Row> rows) {
    /** What to think of before a line is driven. */
    public static final String CAUTION =
            "A line runs as near to the road's edges as its margin lets it, at the model's limit of grip"
                    + " all the way. Kerbs, bumps, dirt, water, walls and other cars are not in it. It is no advice to drive there or"
                    + " so fast: find the limit from the safe side, within the rules of the event and licensed practice.";

    /** Name of the table's file. */
    public static final String TABLE = "lines.csv";

    public LineReport {
        rows = List.copyOf(rows);
    }

    /**
     * A line and the lap on it.
     *
     * @param line null for the road's own path
     */
    public record Row(LineKind kind, Line line, Lap lap) {
        /** Its shape. */
        Line.Figures figures() {
            return line == null ? Line.Figures.of(lap.track()) : line.figures();
        }
    }

    /** One of the lines. */
    public Row row(LineKind kind) {
        return rows.stream().filter(row -> row.kind() == kind).findFirst().orElseThrow();
    }

    /** One of those found, as a document. */
    public StoredLine stored(LineKind kind) {
        Row row = row(kind);
        return StoredLine.of(
                row.line(), kind, subject.car(), subject.setupText(), row.lap().time(), choices);
    }

    /** All that was found, for people, machines and files. */
    public Report report() {
        Table<Row> table = table();
        double[] distances = distances();
        return subject.heading()
                .item(
                        "Room",
                        "a car " + Numbers.plain(subject.car().value(Quantity.WIDTH)) + " m wide, "
                                + free() + "; nodes every "
                                + Numbers.plain(choices.spacing()) + " m")
                .gap()
                .rows(table, rows)
                .gap()
                .paragraph(reading())
                .caution(CAUTION)
                .fields(ResultHeader.of("lines/2", hash(), row(LineKind.MIDDLE).lap()))
                .fields(ChosenLine.margins(choices))
                .field("spacingM", choices.spacing())
                .field("lines", table, rows)
                .field("setup", subject.setup().name())
                .field("reading", reading())
                .field("caution", CAUTION)
                .csv(TABLE, Table.of("Lines along the road", columns(distances)), Table.places(distances.length));
    }

    /** The room that is left free. */
    private String free() {
        String limits = subject.track().limits().isEmpty() ? "" : " but where the track has limits of its own";
        return (choices.isEven()
                        ? Numbers.plain(choices.marginLeft()) + " m free on each side"
                        : Numbers.plain(choices.marginLeft()) + " m free on its left, "
                                + Numbers.plain(choices.marginRight()) + " m on its right")
                + limits;
    }

    private String hash() {
        InputHash hash = InputHash.of(subject.car(), subject.day(), subject.track());
        ChosenLine.margins(choices).forEach(hash::with);
        return hash.with("spacingM", choices.spacing()).sha256();
    }

    private Table<Row> table() {
        double middle = row(LineKind.MIDDLE).lap().time();
        return Table.<Row>of("Lines")
                .words("line", "line", row -> row.kind().word())
                .number(
                        "lengthM",
                        "length",
                        "m",
                        Numbers.fixed(1),
                        row -> row.figures().length())
                .number(
                        "lapTimeS",
                        subject.track().isClosed() ? "lap time" : "run time",
                        "m:ss.mmm",
                        Numbers::lapTime,
                        row -> row.lap().time())
                .number(
                        "differenceS",
                        "delta",
                        "s",
                        Numbers.signed(3),
                        row -> row.lap().time() - middle)
                .number(
                        "leastRadiusM",
                        "least radius",
                        "m",
                        Numbers.fixed(1),
                        row -> row.figures().leastRadius())
                .value("leastRadiusAtM", row -> row.figures().leastRadiusAt())
                .number(
                        "largestOffsetM",
                        "largest offset",
                        "m",
                        Numbers.signed(2),
                        row -> row.figures().largestOffset())
                .value("largestOffsetAtM", row -> row.figures().largestOffsetAt())
                .number(
                        "",
                        "at",
                        "m",
                        Numbers.fixed(0),
                        row -> row.kind() == LineKind.MIDDLE
                                ? null
                                : row.figures().largestOffsetAt())
                .marking(row -> row.kind() == LineKind.FASTEST);
    }

    /** What was found in a sentence or two. */
    private String reading() {
        double fastest = row(LineKind.FASTEST).lap().time();
        double smoothest = row(LineKind.SMOOTHEST).lap().time();
        double middle = row(LineKind.MIDDLE).lap().time();
        return "The fastest line found is " + DifferenceWords.than(fastest - middle, "the circuit's own path (middle)")
                + " and "
                + DifferenceWords.than(fastest - smoothest, "the line that bends least (smoothest)")
                + ". Offsets are positive to the left, at a distance along the circuit's own path.";
    }

    /**
     * Each line's offset, place, curvature and speed at the nodes, by name of the column. Coordinates are those of the road:
     * from its start, east and north.
     */
    private Map<String, double[]> columns(double[] distances) {
        Map<String, double[]> columns = new LinkedHashMap<>();
        columns.put("distanceM", distances);
        rows.forEach(row -> columns(columns, row, distances));
        return columns;
    }

    /** All lines of one search have the same nodes. */
    private double[] distances() {
        for (Row row : rows) {
            if (row.line() != null) {
                return row.line().distances();
            }
        }
        throw new IllegalArgumentException("there is no line but the road's own path");
    }

    private void columns(Map<String, double[]> columns, Row row, double[] distances) {
        int n = distances.length;
        double[] curvature = new double[n];
        double[] speed = new double[n];
        double[] x = new double[n];
        double[] y = new double[n];
        Line line = row.line();
        Stations laid = subject.track().stations(StationSpacing.DEFAULT);
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
}
