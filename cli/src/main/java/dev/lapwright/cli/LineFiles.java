package dev.lapwright.cli;

import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.documents.LineKind;
import dev.lapwright.results.LineTable;

/** Which files lines are written to. */
final class LineFiles {
    private static final String LINES = "lines.svg";

    private LineFiles() {}

    /** Plans and checks them. */
    static ResultFiles<LineOutcome> plan(LineCommand.Output options) {
        ResultFiles<LineOutcome> files = new ResultFiles<>(options.force);
        if (options.out == null) {
            return files;
        }
        String name = options.out;
        if (Outputs.isNamed(name, ".csv")) {
            files.text(name, outcome -> LineTable.csv(outcome.rows()));
            return files;
        }
        if (LapFiles.isChart(name)) {
            files.picture(name, outcome -> LineCharts.lines(name, outcome));
            return files;
        }
        Outputs.checkFolder("--out", name, ".csv", ".svg", ".png");
        files.textIn(name, "lines.json", LineJson::text);
        files.textIn(name, "lines.csv", outcome -> LineTable.csv(outcome.rows()));
        document(files, name, LineKind.SMOOTHEST);
        document(files, name, LineKind.FASTEST);
        files.pictureIn(name, LINES, outcome -> LineCharts.lines(LINES, outcome));
        files.pictureIn(name, "speed-map.svg", outcome -> LineCharts.speedMap("speed-map.svg", outcome));
        return files;
    }

    private static void document(ResultFiles<LineOutcome> files, String folder, LineKind kind) {
        files.textIn(folder, kind.word() + ".json", outcome -> DocumentWriter.text(outcome.stored(kind)));
    }
}
