package dev.lapwright.documents;

import dev.lapwright.fault.Check;

/** Tables whose first column must rise from row to row. */
final class Rising {
    private Rising() {}

    /** Reports a value that does not exceed the one in the row above; NaN stands for a value already reported. */
    static void check(Fields row, NumberField column, double above, double value) {
        if (value <= above) {
            Scale usual = column.usual();
            String unit = usual.symbol().isEmpty() ? "" : " " + usual.symbol();
            row.meaning(
                    row.nameGiven(column),
                    Check.text(column.fromModel(value)) + unit + " does not exceed the row above it, "
                            + Check.text(column.fromModel(above)) + unit,
                    "list the rows in rising order");
        }
    }
}
