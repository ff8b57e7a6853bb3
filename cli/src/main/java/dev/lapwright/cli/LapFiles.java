package dev.lapwright.cli;

import dev.lapwright.documents.LapTrace;

/** Which files a lap is written to. */
final class LapFiles {
    private LapFiles() {}

    /**
     * Plans and checks them.
     *
     * @param comparing whether there will be several laps
     */
    static ResultFiles<LapResult> plan(LapOutputOptions options, boolean comparing) {
        ResultFiles<LapResult> files = new ResultFiles<>(options.force);
        if (options.trace != null) {
            trace(files, Outputs.checkEnding("--trace", options.trace, ".csv", ".json"));
        }
        if (options.chart != null) {
            chart(files, Outputs.checkEnding("--chart", options.chart, ".svg", ".png"), comparing);
        }
        if (options.out != null) {
            out(files, options.out, comparing);
        }
        return files;
    }

    private static void out(ResultFiles<LapResult> files, String name, boolean comparing) {
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, LapJson::text);
        } else if (Outputs.isNamed(name, ".csv")) {
            trace(files, name);
        } else if (Outputs.isNamed(name, ".svg") || Outputs.isNamed(name, ".png")) {
            chart(files, name, comparing);
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv", ".svg", ".png");
            files.textIn(name, "lap.json", LapJson::text);
            files.textIn(name, "trace.csv", result -> LapTrace.csv(result.lap()));
            files.pictureIn(name, "speed.svg", result -> LapCharts.speed("speed.svg", result));
            files.pictureIn(name, "map.svg", result -> LapCharts.map("map.svg", result));
            files.pictureIn(name, "gg.svg", result -> LapCharts.gg("gg.svg", result));
            if (comparing) {
                files.pictureIn(name, "comparison.svg", result -> LapCharts.comparison("comparison.svg", result));
            }
        }
    }

    private static void trace(ResultFiles<LapResult> files, String name) {
        boolean json = Outputs.isNamed(name, ".json");
        files.text(name, result -> json ? LapTrace.json(result.lap()) : LapTrace.csv(result.lap()));
    }

    private static void chart(ResultFiles<LapResult> files, String name, boolean comparing) {
        files.picture(name, result -> comparing ? LapCharts.comparison(name, result) : LapCharts.speed(name, result));
    }
}
