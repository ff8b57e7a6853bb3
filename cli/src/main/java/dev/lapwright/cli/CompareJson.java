package dev.lapwright.cli;

import dev.lapwright.report.JsonLayout;
import dev.lapwright.results.Cautions;
import dev.lapwright.results.ComparisonSummary;
import java.util.Map;

/** A comparison as JSON: the library's summary, with names, cautions and the reading. */
final class CompareJson {
    private CompareJson() {}

    static String text(CompareOutcome outcome) {
        Map<String, Object> tree = ComparisonSummary.tree(outcome.comparison());
        tree.put("setup", outcome.subject().setup().name());
        tree.put("other", outcome.name());
        tree.put("otherSetup", outcome.other().setup().name());
        tree.put("cautions", Cautions.of(outcome.comparison().first()));
        tree.put("otherCautions", Cautions.of(outcome.comparison().second()));
        tree.put("reading", CompareReading.of(outcome));
        return JsonLayout.text(tree);
    }
}
