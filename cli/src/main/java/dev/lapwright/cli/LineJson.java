package dev.lapwright.cli;

import dev.lapwright.report.JsonLayout;
import dev.lapwright.results.LineTable;
import java.util.Map;

/** Lines as JSON: the library's table in short, with the setup's name and the caution. */
final class LineJson {
    private LineJson() {}

    static String text(LineOutcome outcome) {
        Map<String, Object> tree = LineTable.tree(outcome.rows(), outcome.choices());
        tree.put("setup", outcome.subject().setup().name());
        tree.put("reading", LineReport.reading(outcome));
        tree.put("caution", LineReport.CAUTION);
        return JsonLayout.text(tree);
    }
}
