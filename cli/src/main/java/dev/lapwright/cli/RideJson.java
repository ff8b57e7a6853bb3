package dev.lapwright.cli;

import dev.lapwright.report.JsonLayout;
import dev.lapwright.results.RideSummary;
import java.util.Map;

/** A study of the ride as JSON: the library's summary, with the reading and the cautions. */
final class RideJson {
    private RideJson() {}

    static String text(RideOutcome outcome) {
        Map<String, Object> tree = RideSummary.tree(outcome.result());
        tree.put("setup", outcome.subject().setup().name());
        tree.put("speedFrom", outcome.place().isEmpty() ? null : outcome.place());
        tree.put("reading", RideReading.of(outcome));
        tree.put("cautions", RideReading.cautions(outcome));
        return JsonLayout.text(tree);
    }
}
