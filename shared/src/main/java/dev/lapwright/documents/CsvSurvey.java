package dev.lapwright.documents;

import dev.lapwright.track.survey.Survey;
import dev.lapwright.track.survey.SurveyPoint;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Reads comma-separated values in metres under a line that names the columns, in any order. */
final class CsvSurvey {
    private static final String REMEDY = "begin the file with a line such as x,y,z,width_left,width_right, in metres";

    private enum Column {
        X("x"),
        Y("y"),
        Z("z"),
        WIDTH_LEFT("width_left"),
        WIDTH_RIGHT("width_right");

        private final String title;

        Column(String title) {
            this.title = title;
        }

        /** The column of a title, which may be in capitals, with its unit, and with or without underscores. */
        static Column of(String title) {
            String plain = title.toLowerCase(Locale.ROOT)
                    .replaceAll("[(\\[]m[)\\]]", "")
                    .replaceAll("_m$", "")
                    .replaceAll("[^a-z]", "");
            return switch (plain) {
                case "x" -> X;
                case "y" -> Y;
                case "z", "elevation", "altitude" -> Z;
                case "widthleft", "leftwidth" -> WIDTH_LEFT;
                case "widthright", "rightwidth" -> WIDTH_RIGHT;
                default -> null;
            };
        }
    }

    private final DocumentSource source;
    private final Faults faults;
    private final Map<Column, Integer> columns = new EnumMap<>(Column.class);

    private CsvSurvey(DocumentSource source) {
        this.source = source;
        faults = new Faults(source.name());
    }

    static Survey read(DocumentSource source) {
        return new CsvSurvey(source).survey();
    }

    private Survey survey() {
        String header = source.text().lines().findFirst().orElse("");
        char delimiter = header.indexOf(';') >= 0 ? ';' : header.indexOf('\t') >= 0 ? '\t' : ',';
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(delimiter)
                .setTrim(true)
                .setIgnoreEmptyLines(true)
                .get();
        List<SurveyPoint> points = new ArrayList<>();
        try (CSVParser parser = CSVParser.parse(source.text(), format)) {
            boolean first = true;
            for (CSVRecord row : parser) {
                if (first) {
                    header(row);
                    first = false;
                } else {
                    points.add(point(row, parser.getCurrentLineNumber()));
                }
            }
            if (first) {
                throw new DocumentException(source.name(), "it is empty", REMEDY);
            }
        } catch (IOException | UncheckedIOException e) {
            throw new DocumentException(
                    source.name(), "it cannot be read as comma-separated values", "check its quotation marks");
        }
        faults.throwIfAny();
        return new Survey(points, columns.containsKey(Column.Z), columns.containsKey(Column.WIDTH_LEFT));
    }

    private void header(CSVRecord row) {
        for (int i = 0; i < row.size(); i++) {
            Column column = Column.of(row.get(i));
            if (column != null && columns.put(column, i) != null) {
                faults.form(new Node.Place(1, 0), column.title, "two columns have this name", "keep one");
            }
        }
        if (!columns.containsKey(Column.X) || !columns.containsKey(Column.Y)) {
            faults.form(new Node.Place(1, 0), "", "the first line does not name the columns x and y", REMEDY);
        }
        if (columns.containsKey(Column.WIDTH_LEFT) != columns.containsKey(Column.WIDTH_RIGHT)) {
            faults.form(
                    new Node.Place(1, 0), "", "there is a width to one side only", "give width_left and width_right");
        }
        faults.throwIfAny();
    }

    private SurveyPoint point(CSVRecord row, long line) {
        return new SurveyPoint(
                number(row, line, Column.X),
                number(row, line, Column.Y),
                number(row, line, Column.Z),
                number(row, line, Column.WIDTH_LEFT),
                number(row, line, Column.WIDTH_RIGHT));
    }

    private double number(CSVRecord row, long line, Column column) {
        Integer index = columns.get(column);
        if (index == null) {
            return 0;
        }
        String text = index < row.size() ? row.get(index) : "";
        try {
            double value = Double.parseDouble(text);
            if (Double.isFinite(value)) {
                return value;
            }
        } catch (NumberFormatException e) {
            // Told below, like a number that is not finite.
        }
        faults.form(
                new Node.Place((int) line, 0),
                column.title,
                text.isEmpty() ? "there is no value" : "'" + Node.Text.shown(text) + "' is not a number",
                "give metres with a decimal point");
        return 0;
    }
}
