package dev.lapwright.cli;

import dev.lapwright.results.BalanceTable;
import dev.lapwright.results.RemedyTable;

/** Which files a balance is written to. */
final class BalanceFiles {
    private static final String CHART = "balance.svg";

    private BalanceFiles() {}

    /** Plans and checks them. */
    static ResultFiles<BalanceOutcome> plan(BalanceOutputOptions options, boolean complaint) {
        ResultFiles<BalanceOutcome> files = new ResultFiles<>(options.force);
        if (options.chart != null) {
            String name = Outputs.checkEnding("--chart", options.chart, ".svg", ".png");
            files.picture(name, outcome -> BalanceCharts.phases(name, outcome));
        }
        if (options.out != null) {
            out(files, options.out, complaint);
        }
        return files;
    }

    private static void out(ResultFiles<BalanceOutcome> files, String name, boolean complaint) {
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, BalanceJson::text);
        } else if (Outputs.isNamed(name, ".csv")) {
            files.text(name, outcome -> BalanceTable.csv(outcome.balance()));
        } else if (Outputs.isNamed(name, ".svg") || Outputs.isNamed(name, ".png")) {
            files.picture(name, outcome -> BalanceCharts.phases(name, outcome));
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv", ".svg", ".png");
            files.textIn(name, "balance.json", BalanceJson::text);
            files.textIn(name, "balance.csv", outcome -> BalanceTable.csv(outcome.balance()));
            files.pictureIn(name, CHART, outcome -> BalanceCharts.phases(CHART, outcome));
            if (complaint) {
                files.textIn(
                        name,
                        "remedies.csv",
                        outcome -> RemedyTable.csv(outcome.remedies().orElseThrow()));
            }
        }
    }
}
