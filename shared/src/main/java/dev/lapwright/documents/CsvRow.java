package dev.lapwright.documents;

import org.apache.commons.csv.CSVRecord;

/** A row of values and the line of the file that it stands in. */
record CsvRow(CSVRecord values, Node.Place line) {
    /** A value by its column, from 0; empty where the row is shorter. */
    String text(int index) {
        return index < values.size() ? values.get(index) : "";
    }
}
