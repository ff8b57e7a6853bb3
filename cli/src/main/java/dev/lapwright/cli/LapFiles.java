package dev.lapwright.cli;

import dev.lapwright.results.LapTrace;

/** Which files a lap is written to. */
final class LapFiles {
    private static final String LINE = "line.svg";
    private static final String COMPARISON = "comparison.svg";

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

    /** Whether a file of that name holds a chart. */
    static boolean isChart(String name) {
        return name != null && (Outputs.isNamed(name, ".svg") || Outputs.isNamed(name, ".png"));
    }

    private static void out(ResultFiles<LapResult> files, String name, boolean comparing) {
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, LapJson::text);
        } else if (Outputs.isNamed(name, ".csv")) {
            trace(files, name);
        } else if (isChart(name)) {
            chart(files, name, comparing);
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv", ".svg", ".png");
            files.textIn(name, "lap.json", LapJson::text);
            files.textIn(name, "trace.csv", LapFiles::csv);
            files.pictureIn(name, "speed.svg", result -> LapCharts.speed("speed.svg", result));
            files.pictureIn(name, "map.svg", result -> LapCharts.map("map.svg", result));
            files.pictureIn(
                    name, LINE, result -> result.line().line().isEmpty() ? null : LineCharts.line(LINE, result));
            files.pictureIn(name, "gg.svg", result -> LapCharts.gg("gg.svg", result));
            if (comparing) {
                files.pictureIn(
                        name,
                        COMPARISON,
                        result -> result.line().isRefreshed() ? null : LapCharts.comparison(COMPARISON, result));
            }
        }
    }

    private static void trace(ResultFiles<LapResult> files, String name) {
        boolean json = Outputs.isNamed(name, ".json");
        files.text(name, result -> json ? json(result) : csv(result));
    }

    private static String csv(LapResult result) {
        return result.line()
                .line()
                .map(line -> LapTrace.csv(result.lap(), line))
                .orElseGet(() -> LapTrace.csv(result.lap()));
    }

    private static String json(LapResult result) {
        return result.line()
                .line()
                .map(line -> LapTrace.json(result.lap(), line))
                .orElseGet(() -> LapTrace.json(result.lap()));
    }

    private static void chart(ResultFiles<LapResult> files, String name, boolean comparing) {
        files.picture(name, result -> comparing ? LapCharts.comparison(name, result) : LapCharts.speed(name, result));
    }
}
