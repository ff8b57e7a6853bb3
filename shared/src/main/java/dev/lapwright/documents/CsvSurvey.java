package dev.lapwright.documents;

import dev.lapwright.track.survey.Survey;
import dev.lapwright.track.survey.SurveyPoint;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads comma-separated values under a line that names the columns, in any order: points in metres or degrees, or a logged
 * lap. Lines above the headings, as loggers write them, are passed over.
 */
final class CsvSurvey {
    private static final String REMEDY = "begin the file with a line such as x,y,z,width_left,width_right, in metres;"
            + " for a logged lap distance,speed,lateral_acceleration";

    private static final List<CsvColumn> OF_POINTS = List.of(
            CsvColumn.X,
            CsvColumn.Y,
            CsvColumn.LONGITUDE,
            CsvColumn.LATITUDE,
            CsvColumn.Z,
            CsvColumn.WIDTH_LEFT,
            CsvColumn.WIDTH_RIGHT,
            CsvColumn.TIME);

    private final DocumentSource source;
    private final List<ColumnChoice> choices;
    private final boolean asLog;
    private final Faults faults;

    private CsvSurvey(DocumentSource source, List<ColumnChoice> choices, boolean asLog) {
        this.source = source;
        this.choices = choices;
        this.asLog = asLog;
        faults = new Faults(source.name());
    }

    /** Reads points if there are any, and else, or if asked, a log. */
    static SurveyFile read(DocumentSource source, List<ColumnChoice> choices, boolean asLog) {
        return new CsvSurvey(source, choices, asLog).file();
    }

    private SurveyFile file() {
        List<CsvRow> rows = CsvTable.rows(source, REMEDY);
        int at = headerAt(rows);
        CsvHeader header = new CsvHeader(rows.get(at), choices, CsvColumn.OF_SURVEYS, faults);
        checkHeader(header, rows.get(at).line());
        int first = at + 1;
        if (first < rows.size() && header.takeUnits(rows.get(first))) {
            first++;
        }
        CsvRows values = new CsvRows(header, rows.subList(first, rows.size()), faults);
        if (asLog || !header.isSurvey()) {
            return new CsvLog(source.name(), header, values).file();
        }
        return points(header, values);
    }

    /** The first row that names what is needed, or else the first. */
    private int headerAt(List<CsvRow> rows) {
        for (int i = 0; i < Math.min(CsvTable.PREAMBLE, rows.size()); i++) {
            CsvHeader header = new CsvHeader(rows.get(i), choices, CsvColumn.OF_SURVEYS, new Faults(source.name()));
            if (header.isSurvey() || header.isLog()) {
                return i;
            }
        }
        return 0;
    }

    private void checkHeader(CsvHeader header, Node.Place line) {
        boolean logWanted = asLog || header.has(CsvColumn.SPEED) || header.has(CsvColumn.LATERAL_ACCELERATION);
        if (logWanted && !header.isLog() && (asLog || !header.isSurvey())) {
            List<String> missing = new ArrayList<>();
            if (!header.has(CsvColumn.DISTANCE) && !header.has(CsvColumn.TIME)) {
                missing.add("distance or time");
            }
            for (CsvColumn column : List.of(CsvColumn.SPEED, CsvColumn.LATERAL_ACCELERATION)) {
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
        if (header.has(CsvColumn.WIDTH_LEFT) != header.has(CsvColumn.WIDTH_RIGHT)) {
            faults.form(line, "", "there is a width to one side only", "give width_left and width_right");
        }
        faults.throwIfAny();
    }

    private SurveyFile points(CsvHeader header, CsvRows values) {
        boolean degrees = !header.has(CsvColumn.X, CsvColumn.Y);
        double[] x = values.numbers(degrees ? CsvColumn.LONGITUDE : CsvColumn.X);
        double[] y = values.numbers(degrees ? CsvColumn.LATITUDE : CsvColumn.Y);
        double[] z = values.numbers(CsvColumn.Z);
        double[] left = values.numbers(CsvColumn.WIDTH_LEFT);
        double[] right = values.numbers(CsvColumn.WIDTH_RIGHT);
        double[] times = header.has(CsvColumn.TIME) ? values.times() : new double[0];
        faults.throwIfAny();
        List<SurveyPoint> points = new ArrayList<>(x.length);
        if (degrees) {
            List<LocalPlane.Position> positions = new ArrayList<>(x.length);
            for (int i = 0; i < x.length; i++) {
                positions.add(new LocalPlane.Position(
                        values.line(i), x[i], y[i], header.has(CsvColumn.Z) ? z[i] : Double.NaN));
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
        Survey survey = new Survey(points, header.has(CsvColumn.Z), header.has(CsvColumn.WIDTH_LEFT));
        return new SurveyFile(survey, times, List.of(), header.said(OF_POINTS));
    }
}
