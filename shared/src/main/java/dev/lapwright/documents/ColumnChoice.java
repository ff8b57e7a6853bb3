package dev.lapwright.documents;

import dev.lapwright.fault.InvalidValueException;

/**
 * Which column of a file of comma-separated values holds what, where its heading does not tell.
 *
 * @param column what it holds, such as speed
 * @param heading as it stands in the file
 * @param unit of its numbers; empty if the heading says it, or it is SI
 */
public record ColumnChoice(String column, String heading, String unit) {
    /**
     * Reads {@code speed=GPS Geschw.} or {@code speed=GPS Geschw.:km/h}.
     *
     * @throws InvalidValueException if there is no equals sign, the column or the unit is not known
     */
    public static ColumnChoice of(String text) {
        int equals = text.indexOf('=');
        if (equals < 1 || equals == text.length() - 1) {
            throw new InvalidValueException(
                    "column",
                    "'" + text + "' names no column",
                    "write it like speed=GPS speed or speed=GPS speed:km/h");
        }
        CsvColumn column = CsvColumn.named(text.substring(0, equals));
        String heading = text.substring(equals + 1).trim();
        String unit = "";
        int colon = heading.lastIndexOf(':');
        if (colon > 0) {
            unit = heading.substring(colon + 1).trim();
            if (!column.knows(unit)) {
                throw new InvalidValueException(
                        "column",
                        "'" + unit + "' is no unit of " + column.title(),
                        "use one of: " + String.join(", ", column.units()));
            }
            heading = heading.substring(0, colon).trim();
        }
        return new ColumnChoice(column.title(), heading, unit);
    }
}
