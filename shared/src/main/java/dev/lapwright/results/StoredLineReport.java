package dev.lapwright.results;

import dev.lapwright.documents.StoredLine;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import java.util.Arrays;

/** Report of a line document: whose line it is, and how far it leaves the middle of the road. */
public final class StoredLineReport {
    private StoredLineReport() {}

    /** What is said of a line, for people and machines. */
    public static Report of(StoredLine line) {
        Report report = new Report()
                .title(
                        Report.verbatim(line.name()),
                        ", a line along " + Report.verbatim(line.road()) + ", " + Numbers.fixed(line.roadLength(), 0)
                                + " m")
                .field("kind", "line")
                .field("name", line.name())
                .field("road", line.road())
                .field("roadLengthM", line.roadLength());
        line.search()
                .kind()
                .ifPresent(kind -> report.item("Looked for", kind.word()).field("lookedFor", kind.word()));
        said(report, "Car", Report.verbatim(line.search().car()));
        said(report, "Setup", line.search().setup());
        report.field("car", line.search().car()).field("setup", line.search().setup());
        line.search()
                .lapTime()
                .ifPresent(
                        time -> report.item("Lap time", Numbers.lapTime(time)).field("lapTimeS", time));
        line.search()
                .margin()
                .ifPresent(margin -> report.item("Margin", Numbers.plain(margin) + " m on " + side(line))
                        .field("marginM", margin));
        line.search().marginRight().ifPresent(margin -> report.field("marginRightM", margin));
        double least = Arrays.stream(line.offsets()).min().orElseThrow();
        double most = Arrays.stream(line.offsets()).max().orElseThrow();
        return report.item(
                        "Offsets",
                        Numbers.signed(least, 2) + " to " + Numbers.signed(most, 2) + " m, positive to the left, at "
                                + line.offsets().length + " places")
                .field("distancesM", InputHash.list(line.distances()))
                .field("offsetsM", InputHash.list(line.offsets()));
    }

    private static String side(StoredLine line) {
        return line.search().marginRight().isPresent()
                ? "its left, " + Numbers.plain(line.search().marginRight().getAsDouble()) + " m on its right"
                : "each side";
    }

    private static void said(Report report, String name, String text) {
        if (!text.isEmpty()) {
            report.item(name, text);
        }
    }
}
