package dev.lapwright.text;

import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Rows of comma-separated values, which may be parted by semicolons or tabs. */
public final class CsvTable {
    /** How far down the headings may stand. */
    public static final int PREAMBLE = 40;

    private CsvTable() {}

    /** All rows that are not empty. */
    public static List<Row> rows(DocumentSource source, String remedy) {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(delimiter(source.text()))
                .setTrim(true)
                .setIgnoreEmptyLines(true)
                .get();
        try (CSVParser parser = CSVParser.parse(source.text(), format)) {
            List<Row> rows = new ArrayList<>();
            for (CSVRecord row : parser) {
                rows.add(new Row(row, new TextPlace((int) parser.getCurrentLineNumber(), 0)));
            }
            if (rows.isEmpty()) {
                throw new DocumentException(source.name(), "it is empty", remedy);
            }
            return rows;
        } catch (IOException | UncheckedIOException e) {
            throw new DocumentException(
                    source.name(), "it cannot be read as comma-separated values", "check its quotation marks");
        }
    }

    /** A semicolon or tab on most of the first lines. */
    private static char delimiter(String text) {
        List<String> lines =
                text.lines().limit(PREAMBLE).filter(l -> !l.isBlank()).toList();
        for (char delimiter : new char[] {';', '\t'}) {
            if (lines.stream().filter(l -> l.indexOf(delimiter) >= 0).count() * 2 > lines.size()) {
                return delimiter;
            }
        }
        return ',';
    }

    /**
     * A row of values.
     *
     * @param values of its cells
     * @param line of the file that it stands in
     */
    public record Row(CSVRecord values, TextPlace line) {
        /** A value by its column, from 0; empty where the row is shorter. */
        public String text(int index) {
            return index < values.size() ? values.get(index) : "";
        }
    }
}
