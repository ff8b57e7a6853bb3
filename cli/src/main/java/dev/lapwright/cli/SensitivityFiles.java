package dev.lapwright.cli;

import dev.lapwright.results.SensitivityTable;

/** Which files a study of sensitivities is written to. */
final class SensitivityFiles {
    private static final String CHART = "sensitivity.svg";

    private SensitivityFiles() {}

    /** Plans and checks them. */
    static ResultFiles<SensitivityOutcome> plan(SensitivityOutputOptions options) {
        ResultFiles<SensitivityOutcome> files = new ResultFiles<>(options.force);
        if (options.chart != null) {
            String name = Outputs.checkEnding("--chart", options.chart, ".svg", ".png");
            files.picture(name, outcome -> SensitivityCharts.ranked(name, outcome));
        }
        if (options.out != null) {
            out(files, options.out);
        }
        return files;
    }

    private static void out(ResultFiles<SensitivityOutcome> files, String name) {
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, SensitivityJson::text);
        } else if (Outputs.isNamed(name, ".csv")) {
            files.text(name, outcome -> SensitivityTable.csv(outcome.result()));
        } else if (Outputs.isNamed(name, ".svg") || Outputs.isNamed(name, ".png")) {
            files.picture(name, outcome -> SensitivityCharts.ranked(name, outcome));
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv", ".svg", ".png");
            files.textIn(name, "sensitivity.json", SensitivityJson::text);
            files.textIn(name, "sensitivity.csv", outcome -> SensitivityTable.csv(outcome.result()));
            files.pictureIn(name, CHART, outcome -> SensitivityCharts.ranked(CHART, outcome));
        }
    }
}
