package dev.lapwright.cli;

import dev.lapwright.report.JsonLayout;
import dev.lapwright.results.OptimisationSummary;
import java.util.Map;

/** An optimisation as JSON: the library's summary, with the reading and the cautions. */
final class OptimiseJson {
    private OptimiseJson() {}

    static String text(OptimiseOutcome outcome) {
        Map<String, Object> tree = OptimisationSummary.tree(outcome.result());
        tree.put("setup", outcome.subject().setup().name());
        tree.put("reading", OptimiseReading.of(outcome.result()));
        tree.put("cautions", OptimiseCautions.of(outcome));
        return JsonLayout.text(tree);
    }
}
