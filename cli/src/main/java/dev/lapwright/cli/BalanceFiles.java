package dev.lapwright.cli;

import dev.lapwright.documents.BalanceTable;
import dev.lapwright.documents.RemedyTable;

/** Which files a balance is written to. */
final class BalanceFiles {
    private BalanceFiles() {}

    /** Plans and checks them. */
    static ResultFiles<BalanceOutcome> plan(BalanceOutputOptions options, boolean complaint) {
        ResultFiles<BalanceOutcome> files = new ResultFiles<>(options.force);
        String name = options.out;
        if (name == null) {
            return files;
        }
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, BalanceJson::text);
        } else if (Outputs.isNamed(name, ".csv")) {
            files.text(name, outcome -> BalanceTable.csv(outcome.balance()));
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv");
            files.textIn(name, "balance.json", BalanceJson::text);
            files.textIn(name, "balance.csv", outcome -> BalanceTable.csv(outcome.balance()));
            if (complaint) {
                files.textIn(
                        name,
                        "remedies.csv",
                        outcome -> RemedyTable.csv(outcome.remedies().orElseThrow()));
            }
        }
        return files;
    }
}
