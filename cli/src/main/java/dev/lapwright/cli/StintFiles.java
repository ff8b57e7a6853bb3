package dev.lapwright.cli;

import dev.lapwright.documents.StintTable;

/** Which files a stint is written to. */
final class StintFiles {
    private StintFiles() {}

    /** Plans and checks them. */
    static ResultFiles<StintOutcome> plan(StintOutputOptions options) {
        ResultFiles<StintOutcome> files = new ResultFiles<>(options.force);
        String name = options.out;
        if (name == null) {
            return files;
        }
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, StintJson::text);
        } else if (Outputs.isNamed(name, ".csv")) {
            files.text(name, outcome -> StintTable.csv(outcome.result()));
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv");
            files.textIn(name, "stint.json", StintJson::text);
            files.textIn(name, "stint.csv", outcome -> StintTable.csv(outcome.result()));
        }
        return files;
    }
}
