package dev.lapwright.cli;

import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.results.OptimisationSummary;

/** Which files an optimisation is written to. */
final class OptimiseFiles {
    private static final String CHART = "lap-time-top-speed.svg";

    private OptimiseFiles() {}

    /** Plans and checks them. */
    static ResultFiles<OptimiseOutcome> plan(OptimiseOutputOptions options) {
        ResultFiles<OptimiseOutcome> files = new ResultFiles<>(options.force);
        if (options.chart != null) {
            String name = Outputs.checkEnding("--chart", options.chart, ".svg", ".png");
            files.picture(name, outcome -> OptimiseCharts.front(name, outcome));
        }
        if (options.out != null) {
            out(files, options.out);
        }
        return files;
    }

    private static void out(ResultFiles<OptimiseOutcome> files, String name) {
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, OptimiseJson::text);
        } else if (Outputs.isNamed(name, ".csv")) {
            files.text(name, outcome -> OptimisationSummary.csv(outcome.result()));
        } else if (Outputs.isNamed(name, ".svg") || Outputs.isNamed(name, ".png")) {
            files.picture(name, outcome -> OptimiseCharts.front(name, outcome));
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv", ".svg", ".png");
            files.textIn(name, "optimisation.json", OptimiseJson::text);
            files.textIn(name, "setups.csv", outcome -> OptimisationSummary.csv(outcome.result()));
            files.textIn(name, "best-setup.json", OptimiseFiles::setup);
            files.pictureIn(name, CHART, outcome -> OptimiseCharts.front(CHART, outcome));
        }
    }

    private static String setup(OptimiseOutcome outcome) {
        String name = "best at " + outcome.subject().track().name();
        return DocumentWriter.text(
                outcome.result().setup(name, outcome.result().best()),
                outcome.subject().bare());
    }
}
