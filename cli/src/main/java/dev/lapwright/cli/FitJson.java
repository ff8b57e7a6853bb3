package dev.lapwright.cli;

import dev.lapwright.logs.DrivenLog;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.results.FitTable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A fit as JSON: the library's table, with how the logs were read, the setup and the cautions. */
final class FitJson {
    private FitJson() {}

    static String text(FitOutcome outcome) {
        Map<String, Object> tree = FitTable.tree(outcome.result());
        tree.put("setup", outcome.subject().setup().name());
        tree.put("line", outcome.line().tree());
        List<Object> logs = new ArrayList<>();
        for (DrivenLog log : outcome.logs()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", log.name());
            one.put("columns", log.columns());
            one.put("remarks", log.remarks());
            logs.add(one);
        }
        tree.put("logs", logs);
        tree.put("leftOut", outcome.pick().leftOut());
        tree.put(
                "tiesInWords",
                outcome.result().collinearities().stream().map(FitWords::tie).toList());
        tree.put("cautions", FitReport.cautions(outcome.result()));
        return JsonLayout.text(tree);
    }
}
