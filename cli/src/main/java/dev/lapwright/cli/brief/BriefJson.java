package dev.lapwright.cli.brief;

import dev.lapwright.report.JsonLayout;
import dev.lapwright.results.BriefSummary;
import java.util.Map;

/** A brief as JSON: the library's summary, with the setup and the cautions. */
public final class BriefJson {
    private BriefJson() {}

    public static String text(BriefOutcome outcome) {
        Map<String, Object> tree = BriefSummary.tree(outcome.result(), BriefTyresAndFuel.KG_PER_LITRE, outcome.log());
        tree.put("setup", outcome.subject().setup().name());
        tree.put("cautions", BriefCautions.of(outcome));
        return JsonLayout.text(tree);
    }
}
