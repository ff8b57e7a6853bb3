package dev.lapwright.documents;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** The rows of comma-separated values, which may be parted by semicolons or tabs. */
final class CsvTable {
    /** How far down the headings may stand. */
    static final int PREAMBLE = 40;

    private CsvTable() {}

    /** All rows that are not empty. */
    static List<CsvRow> rows(DocumentSource source, String remedy) {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(delimiter(source.text()))
                .setTrim(true)
                .setIgnoreEmptyLines(true)
                .get();
        try (CSVParser parser = CSVParser.parse(source.text(), format)) {
            List<CsvRow> rows = new ArrayList<>();
            for (CSVRecord row : parser) {
                rows.add(new CsvRow(row, new Node.Place((int) parser.getCurrentLineNumber(), 0)));
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
}
