package dev.lapwright.cli;

import dev.lapwright.report.JsonLayout;
import dev.lapwright.results.BalanceTable;
import dev.lapwright.results.Cautions;
import dev.lapwright.results.RemedyTable;
import java.util.Map;

/** A balance as JSON: the library's tables, with the setup and the cautions. */
final class BalanceJson {
    private BalanceJson() {}

    static String text(BalanceOutcome outcome) {
        Map<String, Object> tree = BalanceTable.tree(outcome.balance());
        tree.put("setup", outcome.subject().setup().name());
        tree.put("cautions", Cautions.of(outcome.balance().lap()));
        outcome.remedies().ifPresent(remedies -> tree.put("complaint", RemedyTable.tree(remedies)));
        return JsonLayout.text(tree);
    }
}
