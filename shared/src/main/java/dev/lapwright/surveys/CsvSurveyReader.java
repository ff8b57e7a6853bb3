package dev.lapwright.surveys;

import dev.lapwright.files.ColumnChoice;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.samples.SampleColumn;
import dev.lapwright.samples.SampleHeader;
import dev.lapwright.samples.SampleRows;
import dev.lapwright.text.CsvTable;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.TextPlace;
import dev.lapwright.track.survey.Survey;
import dev.lapwright.track.survey.SurveyPoint;
import java.util.ArrayList;
import java.util.List;

/**
 * Reader of comma-separated values under a line that names the columns, in any order: points in metres or degrees, or a logged
 * lap. Lines above the headings, as loggers write them, are passed over.
 */
final class CsvSurveyReader {
    private static final String REMEDY = "begin the file with a line such as x,y,z,width_left,width_right, in metres;"
            + " for a logged lap distance,speed,lateral_acceleration";

    private static final List<SampleColumn> OF_POINTS = List.of(
            SampleColumn.X,
            SampleColumn.Y,
            SampleColumn.LONGITUDE,
            SampleColumn.LATITUDE,
            SampleColumn.Z,
            SampleColumn.WIDTH_LEFT,
            SampleColumn.WIDTH_RIGHT,
            SampleColumn.TIME);

    private final DocumentSource source;
    private final List<ColumnChoice> choices;
    private final boolean asLog;
    private final FaultList faults;

    private CsvSurveyReader(DocumentSource source, List<ColumnChoice> choices, boolean asLog) {
        this.source = source;
        this.choices = choices;
        this.asLog = asLog;
        faults = new FaultList(source.name());
    }

    /** Reads points if there are any, and else, or if asked, a log. */
    static SurveyFile read(DocumentSource source, List<ColumnChoice> choices, boolean asLog) {
        return new CsvSurveyReader(source, choices, asLog).file();
    }

    private SurveyFile file() {
        List<CsvTable.Row> rows = CsvTable.rows(source, REMEDY);
        int at = headerAt(rows);
        SampleHeader header = new SampleHeader(rows.get(at), choices, SampleColumn.OF_SURVEYS, faults);
        checkHeader(header, rows.get(at).line());
        int first = at + 1;
        if (first < rows.size() && header.takeUnits(rows.get(first))) {
            first++;
        }
        SampleRows values = new SampleRows(header, rows.subList(first, rows.size()), faults);
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
                    "head the column so, or say which it is, as in --column speed=HEADING:km/h");
        } else if (!header.isSurvey() && !header.isLog()) {
            faults.form(line, "", "the file does not name the columns x and y", REMEDY);
        }
        if (header.has(SampleColumn.WIDTH_LEFT) != header.has(SampleColumn.WIDTH_RIGHT)) {
            faults.form(line, "", "there is a width to one side only", "give width_left and width_right");
        }
        faults.throwIfAny();
    }

    private SurveyFile points(SampleHeader header, SampleRows values) {
        boolean degrees = !header.has(SampleColumn.X, SampleColumn.Y);
        double[] x = values.numbers(degrees ? SampleColumn.LONGITUDE : SampleColumn.X);
        double[] y = values.numbers(degrees ? SampleColumn.LATITUDE : SampleColumn.Y);
        double[] z = values.numbers(SampleColumn.Z);
        double[] left = values.numbers(SampleColumn.WIDTH_LEFT);
        double[] right = values.numbers(SampleColumn.WIDTH_RIGHT);
        double[] times = header.has(SampleColumn.TIME) ? values.times() : new double[0];
        faults.throwIfAny();
        List<SurveyPoint> points = new ArrayList<>(x.length);
        if (degrees) {
            List<LocalPlane.Position> positions = new ArrayList<>(x.length);
            for (int i = 0; i < x.length; i++) {
                positions.add(new LocalPlane.Position(
                        values.line(i), x[i], y[i], header.has(SampleColumn.Z) ? z[i] : Double.NaN));
            }
            List<SurveyPoint> plane =
                    LocalPlane.survey(source.name(), positions).points();
            for (int i = 0; i < x.length; i++) {
                SurveyPoint p = plane.get(i);
                points.add(new SurveyPoint(p.x(), p.y(), p.z(), left[i], right[i]));
            }
        } else {
            for (int i = 0; i < x.length; i++) {
                points.add(new SurveyPoint(x[i], y[i], z[i], left[i], right[i]));
            }
        }
        Survey survey = new Survey(points, header.has(SampleColumn.Z), header.has(SampleColumn.WIDTH_LEFT));
        return new SurveyFile(survey, times, List.of(), header.said(OF_POINTS));
    }
}
