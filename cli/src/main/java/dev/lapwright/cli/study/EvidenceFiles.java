package dev.lapwright.cli.study;

import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.log.LapLog;
import dev.lapwright.cli.output.Outputs;
import dev.lapwright.cli.output.ResultFiles;
import dev.lapwright.files.SafeFile;
import dev.lapwright.results.EvidenceTable;

/** Which files a look at a log is written to. */
public final class EvidenceFiles {
    private EvidenceFiles() {}

    /** Plans and checks them. */
    public static ResultFiles<EvidenceOutcome> plan(EvidenceOutputOptions options) {
        ResultFiles<EvidenceOutcome> files = new ResultFiles<>(options.force);
        if (options.chart != null) {
            String name = Outputs.checkEnding("--chart", options.chart, ".svg", ".png");
            files.picture(name, outcome -> chart(name, outcome));
        }
        if (options.out != null) {
            out(files, options.out);
        }
        return files;
    }

    private static void out(ResultFiles<EvidenceOutcome> files, String name) {
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, EvidenceFiles::json);
        } else if (Outputs.isNamed(name, ".csv")) {
            files.text(name, outcome -> EvidenceTable.csv(outcome.result()));
        } else if (Outputs.isNamed(name, ".svg") || Outputs.isNamed(name, ".png")) {
            files.picture(name, outcome -> chart(name, outcome));
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv", ".svg", ".png");
            files.textIn(name, "evidence.json", EvidenceFiles::json);
            files.textIn(name, "laps.csv", outcome -> EvidenceTable.csv(outcome.result()));
            files.pictureIn(name, "laps.svg", outcome -> chart("laps.svg", outcome));
        }
    }

    public static String json(EvidenceOutcome outcome) {
        return EvidenceTable.json(outcome.file(), outcome.result());
    }

    private static byte[] chart(String fileName, EvidenceOutcome outcome) {
        return ChartImage.forFile(
                fileName,
                LapLog.of(subject(outcome), outcome.result(), ChartStyle.STANDARD),
                LapLog.SIZE,
                LapCharts.PNG_SCALE);
    }

    /** The log's name without its folder. */
    private static String subject(EvidenceOutcome outcome) {
        return SafeFile.path(outcome.file().name()).getFileName().toString();
    }
}
