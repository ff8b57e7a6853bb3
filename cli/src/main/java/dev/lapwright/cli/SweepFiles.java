package dev.lapwright.cli;

import dev.lapwright.documents.SweepTable;
import java.nio.file.Path;

/** Which files a sweep is written to. */
final class SweepFiles {
    private static final String TABLE = "sweep.csv";

    private SweepFiles() {}

    /** Plans and checks them. */
    static ResultFiles<SweepOutcome> plan(SweepOutputOptions options) {
        ResultFiles<SweepOutcome> files = new ResultFiles<>(options.force);
        if (options.chart != null) {
            String name = Outputs.checkEnding("--chart", options.chart, ".svg", ".png");
            files.picture(name, outcome -> SweepCharts.lapTime(name, outcome));
        }
        if (options.tradeOff != null) {
            String name = Outputs.checkEnding("--trade-off", options.tradeOff, ".svg", ".png");
            files.picture(name, outcome -> SweepCharts.tradeOff(name, outcome));
        }
        if (options.out != null) {
            out(files, options.out);
        }
        return files;
    }

    private static void out(ResultFiles<SweepOutcome> files, String name) {
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, SweepJson::text);
        } else if (Outputs.isNamed(name, ".csv")) {
            files.text(name, outcome -> SweepTable.csv(outcome.result()));
        } else if (Outputs.isNamed(name, ".svg") || Outputs.isNamed(name, ".png")) {
            files.picture(name, outcome -> SweepCharts.lapTime(name, outcome));
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv", ".svg", ".png");
            files.textIn(name, "sweep.json", SweepJson::text);
            files.textIn(name, TABLE, outcome -> SweepTable.csv(outcome.result()));
            files.pictureIn(name, "lap-time.svg", outcome -> SweepCharts.lapTime("lap-time.svg", outcome));
            files.pictureIn(name, "trade-off.svg", outcome -> SweepCharts.tradeOff("trade-off.svg", outcome));
        }
    }

    /** Where the whole table goes; empty if nowhere. */
    static String tableFile(SweepOutputOptions options) {
        String name = options.out;
        if (name == null
                || Outputs.isNamed(name, ".json")
                || Outputs.isNamed(name, ".svg")
                || Outputs.isNamed(name, ".png")) {
            return "";
        }
        return Outputs.isNamed(name, ".csv")
                ? name
                : Path.of(name).resolve(TABLE).toString();
    }
}
