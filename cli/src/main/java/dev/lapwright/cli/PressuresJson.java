package dev.lapwright.cli;

import dev.lapwright.report.JsonLayout;
import dev.lapwright.results.PressureTable;
import java.util.List;
import java.util.Map;

/** A study of pressures as JSON: the library's table, with the setup and the cautions. */
final class PressuresJson {
    private PressuresJson() {}

    static String text(PressuresOutcome outcome) {
        Map<String, Object> tree = PressureTable.tree(outcome.result());
        tree.put("setup", outcome.subject().setup().name());
        tree.put("cautions", List.of(PressuresReport.CAUTION));
        return JsonLayout.text(tree);
    }
}
