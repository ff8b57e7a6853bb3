package dev.lapwright.cli;

import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.Cautions;
import dev.lapwright.study.compare.Comparison;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A comparison for people. */
final class CompareReport {
    private final Console console;
    private final CompareOutcome outcome;
    private final Comparison comparison;

    CompareReport(Console console, CompareOutcome outcome) {
        this.console = console;
        this.outcome = outcome;
        this.comparison = outcome.comparison();
    }

    void print() {
        LapReport.heading(console, outcome.subject());
        Lines.item(console, "Against", against());
        console.line();
        figures();
        console.line();
        console.line("By part of the lap (+ is slower than the setup above):");
        parts();
        console.line();
        Lines.paragraph(console, CompareReading.of(outcome));
        cautions("Caution: ", comparison.first());
        cautions("Caution with " + outcome.name() + ": ", comparison.second());
    }

    private String against() {
        String setup = outcome.other().setupText();
        String car = outcome.twoCars() ? outcome.other().car().name() + ", " : "";
        boolean otherDay = !outcome.other().day().equals(outcome.subject().day());
        return car
                + setup
                + (otherDay
                        ? "; on another day: "
                                + LapReport.conditions(outcome.other().day())
                        : "");
    }

    private void figures() {
        String name = comparison.first().track().isClosed() ? "Lap time" : "Run time";
        Lines.item(
                console,
                name,
                Numbers.lapTime(comparison.first().time()) + " against "
                        + console.bold(Numbers.lapTime(comparison.second().time())) + ": "
                        + Numbers.signed(comparison.difference(), 3) + " s");
        List<String> sectors = new ArrayList<>();
        for (double sector : comparison.bySector()) {
            sectors.add(Numbers.signed(sector, 3));
        }
        Lines.item(console, "Sectors", String.join(", ", sectors) + " s");
        Lines.item(console, "Corners", Numbers.signed(comparison.inCorners(), 3) + " s");
        Lines.item(console, "Straights", Numbers.signed(comparison.onStraights(), 3) + " s");
        Lines.item(console, "By cause", causes() + " s");
    }

    private String causes() {
        List<Map.Entry<Limit, Double>> causes =
                new ArrayList<>(comparison.byCause().entrySet());
        causes.sort((a, b) -> Double.compare(Math.abs(b.getValue()), Math.abs(a.getValue())));
        List<String> said = new ArrayList<>();
        causes.forEach(cause -> said.add(cause.getKey().label() + " " + Numbers.signed(cause.getValue(), 3)));
        return String.join(", ", said);
    }

    private void parts() {
        Table table = new Table()
                .words("part")
                .numbers("from", "m")
                .numbers("time", "s")
                .numbers("difference", "s")
                .numbers("slowest", "km/h")
                .numbers("other slowest", "km/h")
                .numbers("fastest", "km/h")
                .numbers("other fastest", "km/h")
                .words("mostly by");
        for (Comparison.Part part : comparison.parts()) {
            table.row(
                    part.label(),
                    Numbers.fixed(part.from(), 0),
                    Numbers.fixed(part.first().time(), 3),
                    Numbers.signed(part.difference(), 3),
                    Numbers.kmh(part.first().minimumSpeed()),
                    Numbers.kmh(part.second().minimumSpeed()),
                    Numbers.kmh(part.first().topSpeed()),
                    Numbers.kmh(part.second().topSpeed()),
                    part.mainCause().map(Limit::label).orElse(""));
        }
        table.printTo(console);
    }

    private void cautions(String beginning, Lap lap) {
        for (String caution : Cautions.of(lap)) {
            console.line();
            Lines.paragraph(console, console.bold(beginning.strip()) + " " + caution);
        }
    }
}
