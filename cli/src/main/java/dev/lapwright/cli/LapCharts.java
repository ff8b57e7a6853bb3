package dev.lapwright.cli;

import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.lap.GgDiagram;
import dev.lapwright.charts.lap.SpeedComparison;
import dev.lapwright.charts.lap.SpeedTrace;
import dev.lapwright.charts.lap.TrackMap;
import dev.lapwright.results.Subject;
import java.util.ArrayList;
import java.util.List;

/** Pictures of laps. Nothing of the charts is loaded before one is asked for. */
final class LapCharts {
    /** Pixels of a .png for each pixel of the layout: sharp on paper and on dense screens. */
    static final int PNG_SCALE = 2;

    private LapCharts() {}

    /** What has been looked at, for a heading. */
    static String subject(Subject subject) {
        return subject.car().name() + " at " + subject.track().name();
    }

    static byte[] speed(String fileName, LapResult result) {
        return ChartImage.forFile(
                fileName, SpeedTrace.of(result.lap(), ChartStyle.STANDARD), SpeedTrace.SIZE, PNG_SCALE);
    }

    static byte[] map(String fileName, LapResult result) {
        return ChartImage.forFile(fileName, TrackMap.of(result.lap(), ChartStyle.STANDARD), TrackMap.SIZE, PNG_SCALE);
    }

    static byte[] gg(String fileName, LapResult result) {
        return ChartImage.forFile(fileName, GgDiagram.of(result.lap(), ChartStyle.STANDARD), GgDiagram.SIZE, PNG_SCALE);
    }

    static byte[] comparison(String fileName, LapResult result) {
        List<SpeedComparison.NamedLap> laps = new ArrayList<>();
        laps.add(new SpeedComparison.NamedLap(result.subject().setupText(), result.lap()));
        result.others().forEach(other -> laps.add(new SpeedComparison.NamedLap(other.name(), other.lap())));
        return comparison(fileName, laps);
    }

    static byte[] comparison(String fileName, CompareOutcome outcome) {
        SpeedComparison.NamedLap first = new SpeedComparison.NamedLap(
                outcome.firstName(), outcome.comparison().first());
        SpeedComparison.NamedLap second = new SpeedComparison.NamedLap(
                outcome.name(), outcome.comparison().second());
        return comparison(fileName, List.of(first, second));
    }

    private static byte[] comparison(String fileName, List<SpeedComparison.NamedLap> laps) {
        return ChartImage.forFile(
                fileName, SpeedComparison.of(laps, ChartStyle.STANDARD), SpeedComparison.SIZE, PNG_SCALE);
    }
}
