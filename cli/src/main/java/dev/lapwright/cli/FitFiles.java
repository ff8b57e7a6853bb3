package dev.lapwright.cli;

import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.log.FitSpeedChart;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.results.FitTable;

/** Which files a fit is written to. */
final class FitFiles {
    private static final String CHART = "fit.svg";

    private FitFiles() {}

    /** Plans and checks them. */
    static ResultFiles<FitOutcome> plan(FitOutputOptions options) {
        ResultFiles<FitOutcome> files = new ResultFiles<>(options.force);
        if (options.to != null) {
            files.text(Outputs.checkEnding("--to", options.to, ".json"), FitFiles::car);
        }
        if (options.chart != null) {
            String name = Outputs.checkEnding("--chart", options.chart, ".svg", ".png");
            files.picture(name, outcome -> chart(name, outcome));
        }
        if (options.out != null) {
            out(files, options.out);
        }
        return files;
    }

    private static void out(ResultFiles<FitOutcome> files, String name) {
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, FitJson::text);
        } else if (Outputs.isNamed(name, ".csv")) {
            files.text(name, outcome -> FitTable.csv(outcome.result()));
        } else if (Outputs.isNamed(name, ".svg") || Outputs.isNamed(name, ".png")) {
            files.picture(name, outcome -> chart(name, outcome));
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv", ".svg", ".png");
            files.textIn(name, "fit.json", FitJson::text);
            files.textIn(name, "estimates.csv", outcome -> FitTable.csv(outcome.result()));
            files.textIn(name, "parts.csv", outcome -> FitTable.partsCsv(outcome.result()));
            files.textIn(name, "trace.csv", outcome -> FitTable.traceCsv(outcome.result()));
            files.textIn(name, "fitted-car.json", FitFiles::car);
            files.pictureIn(name, CHART, outcome -> chart(CHART, outcome));
        }
    }

    private static String car(FitOutcome outcome) {
        return DocumentWriter.text(outcome.result().document(outcome.name(), FitOrigin.description(outcome)));
    }

    private static byte[] chart(String fileName, FitOutcome outcome) {
        return ChartImage.forFile(
                fileName,
                FitSpeedChart.of(outcome.result(), ChartStyle.STANDARD),
                FitSpeedChart.SIZE,
                LapCharts.PNG_SCALE);
    }
}
