package dev.lapwright.cli;

import dev.lapwright.results.GearingTables;

/** Which files a study of gearing is written to. */
final class GearingFiles {
    private static final String SAWTOOTH = "gears.svg";
    private static final String TRACTION = "traction.svg";

    private GearingFiles() {}

    /** Plans and checks them. */
    static ResultFiles<GearingOutcome> plan(GearingOutputOptions options) {
        ResultFiles<GearingOutcome> files = new ResultFiles<>(options.force);
        if (options.chart != null) {
            String name = Outputs.checkEnding("--chart", options.chart, ".svg", ".png");
            files.picture(name, outcome -> GearingCharts.sawtooth(name, outcome));
        }
        if (options.tractionChart != null) {
            String name = Outputs.checkEnding("--traction-chart", options.tractionChart, ".svg", ".png");
            files.picture(name, outcome -> GearingCharts.traction(name, outcome));
        }
        if (options.out != null) {
            out(files, options.out);
        }
        return files;
    }

    private static void out(ResultFiles<GearingOutcome> files, String name) {
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, GearingJson::text);
        } else if (Outputs.isNamed(name, ".csv")) {
            files.text(name, outcome -> GearingTables.choices(outcome.result()));
        } else if (Outputs.isNamed(name, ".svg") || Outputs.isNamed(name, ".png")) {
            files.picture(name, outcome -> GearingCharts.sawtooth(name, outcome));
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv", ".svg", ".png");
            files.textIn(name, "gearing.json", GearingJson::text);
            files.textIn(name, "gearing.csv", outcome -> GearingTables.choices(outcome.result()));
            files.textIn(name, "shifts.csv", outcome -> GearingTables.shifts(outcome.result()));
            files.textIn(name, "traction.csv", outcome -> GearingTables.traction(outcome.result()));
            files.pictureIn(name, SAWTOOTH, outcome -> GearingCharts.sawtooth(SAWTOOTH, outcome));
            files.pictureIn(name, TRACTION, outcome -> GearingCharts.traction(TRACTION, outcome));
        }
    }
}
