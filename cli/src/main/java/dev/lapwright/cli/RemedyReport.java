package dev.lapwright.cli;

import dev.lapwright.car.Car;
import dev.lapwright.car.Caution;
import dev.lapwright.chassis.UndersteerGradient;
import dev.lapwright.report.Numbers;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.RemedyResult;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Remedies for people. */
final class RemedyReport {
    private static final int MOST_ROWS = 15;

    private final Console console;
    private final Car car;
    private final RemedyResult result;

    RemedyReport(Console console, Car car, RemedyResult result) {
        this.console = console;
        this.car = car;
        this.result = result;
    }

    void print() {
        String where = result.complaint().corner() == 0
                ? "all corners"
                : "T" + result.complaint().corner();
        String first = result.understeer() > 0 ? "front" : "rear";
        String verdict = result.isConfirmed()
                ? "The model agrees: "
                : "The model does not see it, so look first for a cause that it does not know: ";
        Lines.paragraph(
                console,
                console.bold("Against " + result.complaint().label() + ", " + where + ".") + " " + verdict + "the "
                        + first
                        + " axle gives up first there, by " + Numbers.fixed(Math.abs(result.understeer()), 2)
                        + " m/s2" + (result.complaint().corner() == 0 ? " in the mean." : "."));
        console.line();
        remedies();
        belowTheLimit();
        result.failures().forEach(failure -> Lines.paragraph(console, "Not looked at: " + failure + "."));
        cautions();
    }

    private void remedies() {
        if (result.remedies().isEmpty()) {
            console.line("No step of any adjustment of this car moves that limit by 0.01 m/s2.");
            return;
        }
        Lines.paragraph(
                console,
                "One step each, best first: steps that cost no time (less than 5 ms) by their gain, then the others by"
                        + " gain per tenth of a second. Under the phases: the change, + is towards understeer.");
        Table table = new Table()
                .words("change")
                .numbers("gain", "m/s2")
                .numbers("lap time", "s")
                .numbers("gain per tenth", "m/s2");
        for (BalancePhase phase : BalancePhase.values()) {
            table.numbers(phase.label(), "m/s2");
        }
        table.words("disturbs");
        List<RemedyResult.Remedy> shown = result.remedies()
                .subList(0, Math.min(MOST_ROWS, result.remedies().size()));
        for (RemedyResult.Remedy remedy : shown) {
            List<String> cells = new ArrayList<>();
            cells.add(change(remedy));
            cells.add(Numbers.signed(remedy.gain(), 2));
            cells.add(Numbers.signed(remedy.slower(), 3));
            cells.add(Numbers.fixed(remedy.gainPerTenth(), 2));
            for (BalancePhase phase : BalancePhase.values()) {
                cells.add(Numbers.signed(remedy.shifts().getOrDefault(phase, Double.NaN), 2));
            }
            cells.add(String.join(
                    ", ", remedy.disturbed().stream().map(BalancePhase::label).toList()));
            table.row(cells, false);
        }
        table.printTo(console);
        if (shown.size() < result.remedies().size()) {
            console.line((result.remedies().size() - shown.size()) + " more are in the result: --json, or --out.");
        }
    }

    private String change(RemedyResult.Remedy remedy) {
        return remedy.adjustment() + " " + Numbers.plain(remedy.from()) + " -> "
                + Numbers.with(remedy.to(), car.unitOf(remedy.adjustment()));
    }

    private void belowTheLimit() {
        if (result.belowTheLimit().isEmpty()) {
            return;
        }
        List<String> said = new ArrayList<>();
        for (RemedyResult.Remedy remedy : result.belowTheLimit()) {
            double degrees = new UndersteerGradient(remedy.gradientShift(), 1).degreesPerG();
            said.add(change(remedy) + " (" + Numbers.signed(degrees, 3) + " deg/g)");
        }
        console.line();
        Lines.paragraph(console, "Below the limit only, by the understeer gradient: " + String.join(", ", said) + ".");
    }

    private void cautions() {
        Set<Caution> cautions = EnumSet.noneOf(Caution.class);
        result.remedies().forEach(remedy -> cautions.addAll(remedy.cautions()));
        for (Caution caution : cautions) {
            console.line();
            Lines.paragraph(console, console.bold("Caution:") + " " + caution.text());
        }
    }
}
