package dev.lapwright.cli;

import dev.lapwright.car.Unit;
import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.setup.PressureCosts;
import dev.lapwright.results.PressureTable;

/** Which files a study of pressures is written to. */
final class PressuresFiles {
    private static final String CHART = "cost.svg";

    private PressuresFiles() {}

    /** Plans and checks them. */
    static ResultFiles<PressuresOutcome> plan(PressuresOutputOptions options) {
        ResultFiles<PressuresOutcome> files = new ResultFiles<>(options.force);
        if (options.chart != null) {
            String name = Outputs.checkEnding("--chart", options.chart, ".svg", ".png");
            files.picture(name, outcome -> chart(name, outcome));
        }
        if (options.out != null) {
            out(files, options.out);
        }
        return files;
    }

    private static void out(ResultFiles<PressuresOutcome> files, String name) {
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, PressuresJson::text);
        } else if (Outputs.isNamed(name, ".csv")) {
            files.text(name, outcome -> PressureTable.csv(outcome.result()));
        } else if (Outputs.isNamed(name, ".svg") || Outputs.isNamed(name, ".png")) {
            files.picture(name, outcome -> chart(name, outcome));
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv", ".svg", ".png");
            files.textIn(name, "pressures.json", PressuresJson::text);
            files.textIn(name, "pressures.csv", outcome -> PressureTable.csv(outcome.result()));
            files.pictureIn(name, CHART, outcome -> chart(CHART, outcome));
        }
    }

    private static byte[] chart(String fileName, PressuresOutcome outcome) {
        return ChartImage.forFile(
                fileName,
                PressureCosts.of(
                        outcome.result(),
                        1 / Unit.KILOPASCAL.convert(1, outcome.unit()),
                        outcome.unit().symbol(),
                        ChartStyle.STANDARD),
                PressureCosts.SIZE,
                LapCharts.PNG_SCALE);
    }
}
