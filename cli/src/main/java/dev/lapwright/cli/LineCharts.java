package dev.lapwright.cli;

import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.lap.TrackMap;
import dev.lapwright.charts.track.DrivenLine;
import dev.lapwright.charts.track.LineMap;
import dev.lapwright.documents.LineKind;
import dev.lapwright.line.Line;
import dev.lapwright.results.LineTable;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;

/** Pictures of lines. Nothing of the charts is loaded before one is asked for. */
final class LineCharts {
    private LineCharts() {}

    /** The lines found, on the road. */
    static byte[] lines(String fileName, LineOutcome outcome) {
        List<DrivenLine> lines = new ArrayList<>();
        for (LineTable.Row row : outcome.rows()) {
            if (row.line() != null) {
                lines.add(driven(row.kind().word(), row.line(), row.lap().time()));
            }
        }
        return map(fileName, outcome.subject().track(), lines);
    }

    /** The line of a lap, on the road. */
    static byte[] line(String fileName, LapResult result) {
        Line line = result.line().line().orElseThrow();
        return map(
                fileName,
                result.subject().track(),
                List.of(driven(result.line().name(), line, result.lap().time())));
    }

    private static byte[] map(String fileName, Track road, List<DrivenLine> lines) {
        return ChartImage.forFile(
                fileName,
                LineMap.of(road.stations(StationSpacing.DEFAULT), lines, ChartStyle.STANDARD),
                LineMap.SIZE,
                LapCharts.PNG_SCALE);
    }

    private static DrivenLine driven(String name, Line line, double time) {
        return new DrivenLine(name, time, line.x(), line.y(), line.distances(), line.offsets());
    }

    /** Speed on the fastest line. */
    static byte[] speedMap(String fileName, LineOutcome outcome) {
        return ChartImage.forFile(
                fileName,
                TrackMap.of(outcome.row(LineKind.FASTEST).lap(), ChartStyle.STANDARD),
                TrackMap.SIZE,
                LapCharts.PNG_SCALE);
    }
}
