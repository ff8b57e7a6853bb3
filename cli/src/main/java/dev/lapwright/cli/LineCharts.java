package dev.lapwright.cli;

import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.TrackMap;
import dev.lapwright.documents.LineKind;

/** Pictures of lines. Nothing of the charts is loaded before one is asked for. */
final class LineCharts {
    private LineCharts() {}

    /** Speed on the fastest line. */
    static byte[] speedMap(String fileName, LineOutcome outcome) {
        return ChartImage.forFile(
                fileName,
                TrackMap.of(outcome.row(LineKind.FASTEST).lap(), ChartStyle.STANDARD),
                TrackMap.SIZE,
                LapCharts.PNG_SCALE);
    }
}
