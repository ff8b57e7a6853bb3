package dev.lapwright.cli;

import dev.lapwright.report.JsonLayout;
import dev.lapwright.results.SweepTable;
import dev.lapwright.study.sweep.SweepAxis;
import java.util.LinkedHashMap;
import java.util.Map;

/** A sweep's result as JSON: the library's table, with the baseline's settings and the reading. */
final class SweepJson {
    private SweepJson() {}

    static String text(SweepOutcome outcome) {
        Map<String, Object> tree = SweepTable.tree(outcome.result());
        tree.put("setup", outcome.subject().setup().name());
        tree.put("line", outcome.line().tree());
        Map<String, Object> baseline = new LinkedHashMap<>();
        for (SweepAxis axis : outcome.result().axes()) {
            baseline.put(axis.name(), outcome.subject().valueOf(axis.name()));
        }
        tree.put("baselineSettings", baseline);
        tree.put("reading", SweepReading.of(outcome));
        return JsonLayout.text(tree);
    }
}
