package dev.lapwright.cli;

import dev.lapwright.lap.LapFigures;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.results.Subject;
import dev.lapwright.results.Vary;
import dev.lapwright.study.sweep.SweepResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** A sweep's result for people. */
final class SweepReport {
    /** More rows than this nobody reads on a screen. */
    private static final int MOST_ROWS = 60;

    private static final int ROWS_OF_LONG_TABLE = 20;
    private static final int FAILURES_SHOWN = 3;

    private final Console console;
    private final SweepOutcome outcome;
    private final SweepResult result;
    private final String tableFile;

    /** @param tableFile where the whole table has been written; empty if nowhere */
    SweepReport(Console console, SweepOutcome outcome, String tableFile) {
        this.console = console;
        this.outcome = outcome;
        this.result = outcome.result();
        this.tableFile = tableFile;
    }

    void print() {
        LapReport.heading(console, outcome.subject());
        TerminalReport.print(console, outcome.line().addTo(new Report()));
        LapFigures baseline = result.baseline();
        Lines.item(
                console,
                "Baseline",
                console.bold(Numbers.lapTime(baseline.lapTime())) + " with " + SweepReading.baseline(outcome));
        console.line();
        List<SweepResult.Point> shown = shown();
        Table table = table();
        for (SweepResult.Point point : shown) {
            List<String> cells = cells(point);
            table.row(cells, result.fastest().filter(point::equals).isPresent());
        }
        table.printTo(console);
        console.line();
        if (shown.size() < result.points().size()) {
            String where = tableFile.isEmpty()
                    ? "add --out FILE.csv for all of them."
                    : "all of them are in " + tableFile + ".";
            Lines.paragraph(
                    console,
                    "Of " + result.points().size() + " laps the fastest " + shown.size() + " are shown; " + where);
            console.line();
        }
        failures();
        Lines.paragraph(console, SweepReading.of(outcome));
    }

    private List<SweepResult.Point> shown() {
        if (result.points().size() <= MOST_ROWS) {
            return result.points();
        }
        return result.points().stream()
                .sorted(Comparator.comparingDouble(
                        point -> point.figures().map(LapFigures::lapTime).orElse(Double.POSITIVE_INFINITY)))
                .limit(ROWS_OF_LONG_TABLE)
                .toList();
    }

    private Table table() {
        Table table = new Table();
        for (Vary vary : outcome.varied()) {
            String name = vary.axis().name();
            if (!vary.typed().isEmpty()) {
                table.numbers(name, vary.typedUnit());
            }
            table.numbers(name, Subject.unitOf(result.car(), name).symbol());
        }
        return table.numbers("lap time", "m:ss.mmm")
                .numbers("gain", "s")
                .numbers("top speed", "km/h")
                .numbers("slowest corner", "km/h")
                .numbers("corner mean", "km/h")
                .words("");
    }

    private List<String> cells(SweepResult.Point point) {
        List<String> cells = new ArrayList<>();
        for (int k = 0; k < outcome.varied().size(); k++) {
            Vary vary = outcome.varied().get(k);
            double value = point.settings().get(k);
            if (!vary.typed().isEmpty()) {
                cells.add(Numbers.plain(vary.typedFor(value)));
            }
            cells.add(Numbers.plain(value));
        }
        double none = Double.NaN;
        cells.add(Numbers.lapTime(point.figures().map(LapFigures::lapTime).orElse(none)));
        cells.add(Numbers.signed(result.gain(point), 3));
        cells.add(Numbers.kmh(point.figures().map(LapFigures::topSpeed).orElse(none)));
        cells.add(
                Numbers.kmh(point.figures().map(LapFigures::minimumCornerSpeed).orElse(none)));
        cells.add(Numbers.kmh(point.figures().map(LapFigures::meanCornerSpeed).orElse(none)));
        cells.add(mark(point));
        return cells;
    }

    private String mark(SweepResult.Point point) {
        List<String> marks = new ArrayList<>();
        if (point.figures().isEmpty()) {
            marks.add("no lap");
        }
        if (result.points().size() > 1 && result.fastest().filter(point::equals).isPresent()) {
            marks.add("fastest");
        }
        if (SweepReading.isBaseline(outcome, point)) {
            marks.add("baseline");
        }
        return String.join(", ", marks);
    }

    private void failures() {
        List<SweepResult.Point> failed =
                result.points().stream().filter(p -> p.figures().isEmpty()).toList();
        for (SweepResult.Point point : failed.subList(0, Math.min(FAILURES_SHOWN, failed.size()))) {
            Lines.paragraph(console, "No lap with " + SweepReading.said(outcome, point) + ": " + point.failure() + ".");
        }
        if (failed.size() > FAILURES_SHOWN) {
            console.line("No lap either with " + (failed.size() - FAILURES_SHOWN) + " more.");
        }
        if (!failed.isEmpty()) {
            console.line();
        }
    }
}
