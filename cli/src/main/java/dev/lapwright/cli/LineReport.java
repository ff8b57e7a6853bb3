package dev.lapwright.cli;

import dev.lapwright.car.Quantity;
import dev.lapwright.documents.LineKind;
import dev.lapwright.line.Line;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.LineTable;
import java.util.List;

/** Lines found, for people. */
final class LineReport {
    static final String CAUTION =
            "A line runs as near to the road's edges as its margin lets it, at the model's limit of grip"
                    + " all the way. Kerbs, bumps, dirt, water, walls and other cars are not in it. It is no advice to drive there or"
                    + " so fast: find the limit from the safe side, within the rules of the event and licensed practice.";

    /** Lap times are given in thousandths; less than half of one is nothing. */
    private static final double NOTHING_S = 0.0005;

    private final Console console;
    private final LineOutcome outcome;

    LineReport(Console console, LineOutcome outcome) {
        this.console = console;
        this.outcome = outcome;
    }

    void print() {
        LapReport.heading(console, outcome.subject());
        Lines.item(
                console,
                "Room",
                "a car " + Numbers.plain(outcome.subject().car().value(Quantity.WIDTH)) + " m wide, "
                        + Numbers.plain(outcome.choices().margin()) + " m free on each side; nodes every "
                        + Numbers.plain(outcome.choices().spacing()) + " m");
        console.line();
        Table table = new Table()
                .words("line")
                .numbers("length", "m")
                .numbers(outcome.subject().track().isClosed() ? "lap time" : "run time", "m:ss.mmm")
                .numbers("gain", "s")
                .numbers("least radius", "m")
                .numbers("largest offset", "m")
                .numbers("at", "m");
        double middle = outcome.row(LineKind.MIDDLE).lap().time();
        for (LineTable.Row row : outcome.rows()) {
            Line.Figures figures = row.figures();
            boolean offset = row.kind() != LineKind.MIDDLE;
            table.row(
                    List.of(
                            row.kind().word(),
                            Numbers.fixed(figures.length(), 1),
                            Numbers.lapTime(row.lap().time()),
                            Numbers.signed(middle - row.lap().time(), 3),
                            Numbers.fixed(figures.leastRadius(), 1),
                            Numbers.signed(figures.largestOffset(), 2),
                            offset ? Numbers.fixed(figures.largestOffsetAt(), 0) : "-"),
                    row.kind() == LineKind.FASTEST);
        }
        table.printTo(console);
        console.line();
        Lines.paragraph(console, reading(outcome));
        console.line();
        Lines.paragraph(console, console.bold("Caution:") + " " + CAUTION);
    }

    /** What was found in a sentence or two. */
    static String reading(LineOutcome outcome) {
        double fastest = outcome.row(LineKind.FASTEST).lap().time();
        double smoothest = outcome.row(LineKind.SMOOTHEST).lap().time();
        double middle = outcome.row(LineKind.MIDDLE).lap().time();
        return "The fastest line found is " + against(middle - fastest, "the circuit's own path (middle)") + " and "
                + against(smoothest - fastest, "the line that bends least (smoothest)")
                + ". Offsets are positive to the left, at a distance along the circuit's own path.";
    }

    private static String against(double gain, String what) {
        if (Math.abs(gain) < NOTHING_S) {
            return "as fast as " + what;
        }
        return Numbers.fixed(Math.abs(gain), 3) + " s " + (gain > 0 ? "faster" : "slower") + " than " + what;
    }
}
