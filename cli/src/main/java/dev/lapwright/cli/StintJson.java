package dev.lapwright.cli;

import dev.lapwright.report.JsonLayout;
import dev.lapwright.results.StintTable;
import java.util.List;
import java.util.Map;

/** A stint as JSON: the library's table, with the setup and the cautions. */
final class StintJson {
    private StintJson() {}

    static String text(StintOutcome outcome) {
        Map<String, Object> tree = StintTable.tree(outcome.result(), outcome.density());
        tree.put("setup", outcome.choice().setup().name());
        tree.put("cautions", List.of(StintReport.CAUTION));
        return JsonLayout.text(tree);
    }
}
