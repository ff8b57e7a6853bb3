package dev.lapwright.cli;

import dev.lapwright.results.ComparisonSummary;

/** Which files a comparison is written to. */
final class CompareFiles {
    private CompareFiles() {}

    /** Plans and checks them. */
    static ResultFiles<CompareOutcome> plan(CompareOutputOptions options) {
        ResultFiles<CompareOutcome> files = new ResultFiles<>(options.force);
        if (options.trace != null) {
            trace(files, Outputs.checkEnding("--trace", options.trace, ".csv", ".json"));
        }
        if (options.chart != null) {
            String name = Outputs.checkEnding("--chart", options.chart, ".svg", ".png");
            files.picture(name, outcome -> LapCharts.comparison(name, outcome));
        }
        if (options.out != null) {
            out(files, options.out);
        }
        return files;
    }

    private static void out(ResultFiles<CompareOutcome> files, String name) {
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, CompareJson::text);
        } else if (Outputs.isNamed(name, ".csv")) {
            trace(files, name);
        } else if (Outputs.isNamed(name, ".svg") || Outputs.isNamed(name, ".png")) {
            files.picture(name, outcome -> LapCharts.comparison(name, outcome));
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv", ".svg", ".png");
            files.textIn(name, "comparison.json", CompareJson::text);
            files.textIn(name, "trace.csv", outcome -> ComparisonSummary.csv(outcome.comparison()));
            files.pictureIn(name, "comparison.svg", outcome -> LapCharts.comparison("comparison.svg", outcome));
        }
    }

    private static void trace(ResultFiles<CompareOutcome> files, String name) {
        boolean json = Outputs.isNamed(name, ".json");
        files.text(
                name,
                outcome -> json
                        ? ComparisonSummary.traceJson(outcome.comparison())
                        : ComparisonSummary.csv(outcome.comparison()));
    }
}
