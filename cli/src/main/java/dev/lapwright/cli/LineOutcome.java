package dev.lapwright.cli;

import dev.lapwright.documents.LineKind;
import dev.lapwright.documents.StoredLine;
import dev.lapwright.line.LineChoices;
import dev.lapwright.results.LineTable;
import dev.lapwright.results.Subject;
import java.util.List;

/**
 * Lines found, and what was asked.
 *
 * @param subject car, setup, road and day
 * @param choices margin and nodes
 * @param rows the road's own path, the smoothest line and the fastest, each with its lap
 */
record LineOutcome(Subject subject, LineChoices choices, List<LineTable.Row> rows) {
    LineOutcome {
        rows = List.copyOf(rows);
    }

    /** One of the lines. */
    LineTable.Row row(LineKind kind) {
        return rows.stream().filter(row -> row.kind() == kind).findFirst().orElseThrow();
    }

    /** One of those found, as a document. */
    StoredLine stored(LineKind kind) {
        LineTable.Row row = row(kind);
        return StoredLine.of(
                row.line(), kind, subject.car(), subject.setupText(), row.lap().time(), choices.margin());
    }
}
