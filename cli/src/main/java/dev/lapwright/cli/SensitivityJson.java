package dev.lapwright.cli;

import dev.lapwright.report.JsonLayout;
import dev.lapwright.results.SensitivitySummary;
import java.util.Map;

/** A study of sensitivities as JSON: the library's summary, with the reading and the cautions. */
final class SensitivityJson {
    private SensitivityJson() {}

    static String text(SensitivityOutcome outcome) {
        Map<String, Object> tree = SensitivitySummary.tree(outcome.result());
        tree.put("setup", outcome.subject().setup().name());
        tree.put("line", outcome.line().tree());
        tree.put("reading", SensitivityReading.of(outcome));
        tree.put("cautions", SensitivityReading.cautions(outcome));
        return JsonLayout.text(tree);
    }
}
