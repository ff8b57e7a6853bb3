package dev.lapwright.cli;

import dev.lapwright.documents.JsonLayout;
import java.util.LinkedHashMap;
import java.util.Map;

/** A brief as JSON: the library's table, with the setup and the cautions. */
final class BriefJson {
    private BriefJson() {}

    static String text(BriefOutcome outcome) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("setup", outcome.choice().setup().name());
        tree.put("cautions", BriefCautions.of(outcome));
        return JsonLayout.text(tree);
    }
}
