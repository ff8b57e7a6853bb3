package dev.lapwright.cli;

import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.lap.StintLaps;
import dev.lapwright.results.StintTable;

/** Which files a stint is written to. */
final class StintFiles {
    private static final String CHART = "laps.svg";

    private StintFiles() {}

    /** Plans and checks them. */
    static ResultFiles<StintOutcome> plan(StintOutputOptions options) {
        ResultFiles<StintOutcome> files = new ResultFiles<>(options.force);
        if (options.chart != null) {
            String name = Outputs.checkEnding("--chart", options.chart, ".svg", ".png");
            files.picture(name, outcome -> chart(name, outcome));
        }
        if (options.out != null) {
            out(files, options.out);
        }
        return files;
    }

    private static void out(ResultFiles<StintOutcome> files, String name) {
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, StintJson::text);
        } else if (Outputs.isNamed(name, ".csv")) {
            files.text(name, outcome -> StintTable.csv(outcome.result()));
        } else if (Outputs.isNamed(name, ".svg") || Outputs.isNamed(name, ".png")) {
            files.picture(name, outcome -> chart(name, outcome));
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv", ".svg", ".png");
            files.textIn(name, "stint.json", StintJson::text);
            files.textIn(name, "stint.csv", outcome -> StintTable.csv(outcome.result()));
            files.pictureIn(name, CHART, outcome -> chart(CHART, outcome));
        }
    }

    private static byte[] chart(String fileName, StintOutcome outcome) {
        return ChartImage.forFile(
                fileName, StintLaps.of(outcome.result(), ChartStyle.STANDARD), StintLaps.SIZE, LapCharts.PNG_SCALE);
    }
}
