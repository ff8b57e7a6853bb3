package dev.lapwright.cli;

import dev.lapwright.documents.PressureTable;

/** Which files a study of pressures is written to. */
final class PressuresFiles {
    private PressuresFiles() {}

    /** Plans and checks them. */
    static ResultFiles<PressuresOutcome> plan(PressuresOutputOptions options) {
        ResultFiles<PressuresOutcome> files = new ResultFiles<>(options.force);
        String name = options.out;
        if (name == null) {
            return files;
        }
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, PressuresJson::text);
        } else if (Outputs.isNamed(name, ".csv")) {
            files.text(name, outcome -> PressureTable.csv(outcome.result()));
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv");
            files.textIn(name, "pressures.json", PressuresJson::text);
            files.textIn(name, "pressures.csv", outcome -> PressureTable.csv(outcome.result()));
        }
        return files;
    }
}
