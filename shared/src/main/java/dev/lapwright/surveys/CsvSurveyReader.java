package dev.lapwright.surveys;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.ColumnChoice;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.samples.SampleColumn;
import dev.lapwright.samples.SampleHeader;
import dev.lapwright.samples.SampleRows;
import dev.lapwright.text.CsvTable;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.TextPlace;
import dev.lapwright.track.survey.ElevationProfile;
import dev.lapwright.track.survey.Survey;
import dev.lapwright.track.survey.SurveyPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Reader of comma-separated values under a line that names the columns, in any order: points in metres or degrees, or a logged
 * lap. Lines above the headings, as loggers write them, are passed over.
 */
final class CsvSurveyReader {
    private static final String REMEDY = "begin the file with a line such as x,y,z,width_left,width_right, in metres;"
            + " for a logged lap distance,speed,lateral_acceleration";

    private static final String ELEVATION_REMEDY =
            "begin it with a line such as distance,z or x,y,z or longitude,latitude,z";

    private static final List<SampleColumn> OF_POINTS = List.of(
            SampleColumn.X,
            SampleColumn.Y,
            SampleColumn.LONGITUDE,
            SampleColumn.LATITUDE,
            SampleColumn.Z,
            SampleColumn.WIDTH,
            SampleColumn.WIDTH_LEFT,
            SampleColumn.WIDTH_RIGHT,
            SampleColumn.BANK,
            SampleColumn.GRIP,
            SampleColumn.TIME);

    private static final List<SampleColumn> OF_MOVING_POINTS = Stream.concat(
                    OF_POINTS.stream(),
                    Stream.of(SampleColumn.DISTANCE, SampleColumn.SPEED, SampleColumn.LATERAL_ACCELERATION))
            .toList();

    private final DocumentSource source;
    private final List<ColumnChoice> choices;
    private final boolean asLog;
    private final LocalPlane.Origin about;
    private final FaultList faults;

    private CsvSurveyReader(DocumentSource source, List<ColumnChoice> choices, boolean asLog, LocalPlane.Origin about) {
        this.about = about;
        this.source = source;
        this.choices = choices;
        this.asLog = asLog;
        faults = new FaultList(source.name());
    }

    /**
     * Reads points if there are any, and else, or if asked, a log.
     *
     * @param about the origin of the plane of degrees; null for the middle of the points
     */
    static SurveyFile read(DocumentSource source, List<ColumnChoice> choices, boolean asLog, LocalPlane.Origin about) {
        return new CsvSurveyReader(source, choices, asLog, about).file();
    }

    /** Reads altitudes by distance; empty if the file has no distance, or positions beside it. */
    static Optional<ElevationProfile> profile(DocumentSource source, List<ColumnChoice> choices) {
        CsvSurveyReader reader = new CsvSurveyReader(source, choices, false, null);
        List<CsvTable.Row> rows = CsvTable.rows(source, ELEVATION_REMEDY);
        for (int i = 0; i < Math.min(CsvTable.PREAMBLE, rows.size()); i++) {
            SampleHeader header =
                    new SampleHeader(rows.get(i), choices, SampleColumn.OF_SURVEYS, new FaultList(source.name()));
            if (header.isSurvey()) {
                return Optional.empty();
            }
            if (header.has(SampleColumn.DISTANCE, SampleColumn.Z)) {
                SampleRows values = reader.values(rows, i);
                double[] distance = values.numbers(SampleColumn.DISTANCE);
                double[] z = values.numbers(SampleColumn.Z);
                reader.faults.throwIfAny();
                return Optional.of(ElevationProfile.along(distance, z));
            }
        }
        throw new DocumentException(source.name(), "it names no altitudes along the road", ELEVATION_REMEDY);
    }

    /** The rows under a row of headings and, if it has one, its row of units. */
    private SampleRows values(List<CsvTable.Row> rows, int at) {
        SampleHeader header = new SampleHeader(rows.get(at), choices, SampleColumn.OF_SURVEYS, faults);
        checkHeader(header, rows.get(at).line());
        int first = at + 1;
        if (first < rows.size() && header.takeUnits(rows.get(first), faults)) {
            first++;
        }
        checkCells(rows.get(at), rows, first);
        faults.throwIfAny();
        return new SampleRows(header, rows.subList(first, rows.size()), faults);
    }

    /** Decimal commas between commas: nobody can tell where a number ends. */
    private void checkCells(CsvTable.Row header, List<CsvTable.Row> rows, int first) {
        if (first >= rows.size()) {
            return;
        }
        long headings = header.values().stream().filter(cell -> !cell.isBlank()).count();
        long cells = rows.get(first).values().stream()
                .filter(cell -> !cell.isBlank())
                .count();
        if (cells >= 2 * headings) {
            faults.form(
                    rows.get(first).line(),
                    "",
                    "there are " + cells + " values under " + headings
                            + " headings, as where decimal commas part the numbers themselves",
                    "part the columns by semicolons or tabs, or write decimal points");
        }
    }

    private SurveyFile file() {
        List<CsvTable.Row> rows = CsvTable.rows(source, REMEDY);
        int at = headerAt(rows);
        SampleRows values = values(rows, at);
        SampleHeader header = values.header();
        if (asLog || !header.isSurvey()) {
            return new LoggedLapReader(source.name(), header, values).file();
        }
        return points(header, values);
    }

    /** The first row that names what is needed, or else the first. */
    private int headerAt(List<CsvTable.Row> rows) {
        for (int i = 0; i < Math.min(CsvTable.PREAMBLE, rows.size()); i++) {
            SampleHeader header =
                    new SampleHeader(rows.get(i), choices, SampleColumn.OF_SURVEYS, new FaultList(source.name()));
            if (header.isSurvey() || header.isLog()) {
                return i;
            }
        }
        return 0;
    }

    private void checkHeader(SampleHeader header, TextPlace line) {
        boolean logWanted = asLog || header.has(SampleColumn.SPEED) || header.has(SampleColumn.LATERAL_ACCELERATION);
        if (logWanted && !header.isLog() && (asLog || !header.isSurvey())) {
            List<String> missing = new ArrayList<>();
            if (!header.has(SampleColumn.DISTANCE) && !header.has(SampleColumn.TIME)) {
                missing.add("distance or time");
            }
            for (SampleColumn column : List.of(SampleColumn.SPEED, SampleColumn.LATERAL_ACCELERATION)) {
                if (!header.has(column)) {
                    missing.add(column.title());
                }
            }
            faults.form(
                    line,
                    "",
                    "no heading is known for " + String.join(" and ", missing),
                    "head the column so, or say which it is, as in --column "
                            + (missing.get(0).equals("distance or time") ? "distance" : missing.get(0)) + "=HEADING");
        } else if (!header.isSurvey() && !header.isLog() && !header.has(SampleColumn.DISTANCE, SampleColumn.Z)) {
            faults.form(line, "", "the file does not name the columns x and y", REMEDY);
        }
        if (header.has(SampleColumn.WIDTH_LEFT) != header.has(SampleColumn.WIDTH_RIGHT)) {
            faults.form(line, "", "there is a width to one side only", "give width_left and width_right, or width");
        }
        if (header.has(SampleColumn.WIDTH) && header.has(SampleColumn.WIDTH_LEFT)) {
            faults.form(
                    line,
                    "",
                    "the width is given twice: whole, and to each side",
                    "keep width_left and width_right, or width alone");
        }
        faults.throwIfAny();
    }

    private SurveyFile points(SampleHeader header, SampleRows values) {
        boolean degrees = !header.has(SampleColumn.X, SampleColumn.Y);
        double[] x = values.numbers(degrees ? SampleColumn.LONGITUDE : SampleColumn.X);
        double[] y = values.numbers(degrees ? SampleColumn.LATITUDE : SampleColumn.Y);
        double[] z = values.numbers(SampleColumn.Z);
        double[] whole = values.numbers(SampleColumn.WIDTH);
        double[] left = values.numbers(SampleColumn.WIDTH_LEFT);
        double[] right = values.numbers(SampleColumn.WIDTH_RIGHT);
        double[] bank = values.angles(SampleColumn.BANK);
        double[] grip = values.numbers(SampleColumn.GRIP);
        double[] times = header.has(SampleColumn.TIME) ? values.times() : new double[0];
        List<SurveyPoint.Motion> motions = motions(header, values, times);
        faults.throwIfAny();
        List<SurveyPoint> plane;
        LocalPlane.Origin origin = null;
        if (degrees) {
            List<LocalPlane.Position> positions = new ArrayList<>(x.length);
            for (int i = 0; i < x.length; i++) {
                positions.add(new LocalPlane.Position(
                        values.line(i), x[i], y[i], header.has(SampleColumn.Z) ? z[i] : Double.NaN));
            }
            LocalPlane.Placed placed = LocalPlane.survey(source.name(), positions, about);
            plane = placed.survey().points();
            origin = placed.origin();
        } else {
            plane = new ArrayList<>(x.length);
            for (int i = 0; i < x.length; i++) {
                plane.add(new SurveyPoint(x[i], y[i], z[i], 0, 0));
            }
        }
        List<SurveyPoint> points = new ArrayList<>(x.length);
        for (int i = 0; i < x.length; i++) {
            SurveyPoint p = plane.get(i);
            points.add(new SurveyPoint(
                    p.x(),
                    p.y(),
                    p.z(),
                    left[i] + whole[i] / 2,
                    right[i] + whole[i] / 2,
                    bank[i],
                    header.has(SampleColumn.GRIP) ? grip[i] : 1,
                    motions.isEmpty() ? null : motions.get(i)));
        }
        boolean widths = header.has(SampleColumn.WIDTH_LEFT) || header.has(SampleColumn.WIDTH);
        Survey survey = new Survey(points, header.has(SampleColumn.Z), widths);
        return new SurveyFile(
                survey,
                times,
                List.of(),
                header.said(motions.isEmpty() ? OF_POINTS : OF_MOVING_POINTS),
                header.passedOver(motions.isEmpty() ? OF_POINTS : OF_MOVING_POINTS),
                SurveyFile.plane(origin));
    }

    /** Speeds and lateral accelerations beside the positions, by the way gone; empty where the file has not both. */
    private List<SurveyPoint.Motion> motions(SampleHeader header, SampleRows values, double[] times) {
        if (!header.isLog()) {
            return List.of();
        }
        double[] distance = values.numbers(SampleColumn.DISTANCE);
        double[] speed = values.held(SampleColumn.SPEED);
        double[] lateral = values.held(SampleColumn.LATERAL_ACCELERATION);
        List<SurveyPoint.Motion> motions = new ArrayList<>(speed.length);
        double way = 0;
        for (int i = 0; i < speed.length; i++) {
            // What begins anew at a lap's line goes on here.
            if (i > 0) {
                way += header.has(SampleColumn.DISTANCE)
                        ? Math.max(0, distance[i] - distance[i - 1])
                        : Math.max(0, (speed[i - 1] + speed[i]) / 2 * Math.max(0, times[i] - times[i - 1]));
            }
            try {
                motions.add(new SurveyPoint.Motion(way, speed[i], lateral[i]));
            } catch (InvalidValueException e) {
                faults.meaning(values.line(i), "", e);
            }
        }
        return motions;
    }
}
