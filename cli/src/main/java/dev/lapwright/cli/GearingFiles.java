package dev.lapwright.cli;

import dev.lapwright.documents.GearingTables;

/** Which files a study of gearing is written to. */
final class GearingFiles {
    private GearingFiles() {}

    /** Plans and checks them. */
    static ResultFiles<GearingOutcome> plan(GearingOutputOptions options) {
        ResultFiles<GearingOutcome> files = new ResultFiles<>(options.force);
        String name = options.out;
        if (name == null) {
            return files;
        }
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, GearingJson::text);
        } else if (Outputs.isNamed(name, ".csv")) {
            files.text(name, outcome -> GearingTables.choices(outcome.result()));
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv");
            files.textIn(name, "gearing.json", GearingJson::text);
            files.textIn(name, "gearing.csv", outcome -> GearingTables.choices(outcome.result()));
            files.textIn(name, "shifts.csv", outcome -> GearingTables.shifts(outcome.result()));
            files.textIn(name, "traction.csv", outcome -> GearingTables.traction(outcome.result()));
        }
        return files;
    }
}
