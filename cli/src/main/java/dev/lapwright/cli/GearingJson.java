package dev.lapwright.cli;

import dev.lapwright.report.JsonLayout;
import dev.lapwright.results.GearingSummary;
import java.util.Map;

/** A study of gearing as JSON: the library's summary, with the reading. */
final class GearingJson {
    private GearingJson() {}

    static String text(GearingOutcome outcome) {
        Map<String, Object> tree = GearingSummary.tree(outcome.result());
        tree.put("setup", outcome.subject().setup().name());
        tree.put("beforeBrakingS", outcome.beforeBraking());
        tree.put("reading", GearingReading.of(outcome));
        return JsonLayout.text(tree);
    }
}
