package dev.lapwright.cli;

import dev.lapwright.car.Conditions;
import dev.lapwright.report.Numbers;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.optimise.OptimisationLimits;
import dev.lapwright.study.optimise.OptimisationResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** An optimisation's result for people. */
final class OptimiseReport {
    private static final int FRONT_ROWS = 8;
    private static final double SAME = 1e-9;

    private final Console console;
    private final OptimiseOutcome outcome;
    private final OptimisationResult result;

    OptimiseReport(Console console, OptimiseOutcome outcome) {
        this.console = console;
        this.outcome = outcome;
        this.result = outcome.result();
    }

    void print() {
        TerminalReport.print(console, outcome.subject().heading());
        asked();
        console.line();
        Lines.item(console, "Before", figures(result.before()) + before());
        Lines.item(console, "Best", figures(result.best()) + ", gain " + gain(result.best()));
        Lines.item(
                console,
                "Unstepped",
                Numbers.lapTime(result.search().between().lapTime()) + " would be possible between the legal steps");
        console.line();
        adjustments();
        console.line();
        sectors();
        front();
        Lines.paragraph(console, OptimiseReading.of(result));
        console.line();
        leftAlone();
        for (String caution : OptimiseCautions.of(outcome)) {
            console.line();
            Lines.paragraph(console, console.bold("Caution:") + " " + caution);
        }
    }

    private String gain(OptimisationResult.Candidate point) {
        return Numbers.signed(result.gain(point), 3) + " s";
    }

    private void asked() {
        if (result.task().circuits().size() > 1) {
            List<String> said = new ArrayList<>();
            for (Optimisation.Circuit circuit : result.task().circuits()) {
                said.add(circuit.track().name() + " with weight " + Numbers.plain(circuit.weight()));
            }
            Lines.item(console, "Circuits", String.join(", ", said) + "; times are the weighted mean");
        }
        if (result.task().days().size() > 1) {
            String kind = result.task().forTheWorstDay() ? "the least gain on any counts" : "times are their mean";
            Lines.item(console, "Days", result.task().days().size() + ": " + days() + "; " + kind);
        }
        String limits = limits(result.task().limits());
        Lines.item(console, "Limits", limits.isEmpty() ? "none" : limits);
        Lines.item(
                console,
                "Driven",
                result.search().driven() + " setups, seed " + result.task().seed());
    }

    /** What differs from day to day. */
    private String days() {
        List<String> said = new ArrayList<>();
        for (String name : Conditions.NAMES) {
            List<String> values = result.task().days().stream()
                    .map(day -> Numbers.plain(day.value(name)))
                    .distinct()
                    .toList();
            if (values.size() > 1) {
                said.add(name + " " + String.join(", ", values));
            }
        }
        return String.join("; ", said);
    }

    private static String limits(OptimisationLimits limits) {
        List<String> said = new ArrayList<>();
        limits.topSpeedKmh().ifPresent(v -> said.add("top speed at least " + Numbers.plain(v) + " km/h"));
        if (limits.balanceLeastPercent().isPresent()) {
            said.add("limit balance from "
                    + Numbers.plain(limits.balanceLeastPercent().getAsDouble()) + " to "
                    + Numbers.plain(limits.balanceMostPercent().orElse(Double.NaN)) + " %");
        }
        limits.rideHeightMm().ifPresent(v -> said.add("ride height at top speed at least " + Numbers.plain(v) + " mm"));
        if (limits.withoutUpshiftInCorner()) {
            said.add("no upshift in a corner");
        }
        return String.join(", ", said);
    }

    private String figures(OptimisationResult.Candidate point) {
        String text = console.bold(Numbers.lapTime(point.lapTime())) + ", top speed " + Numbers.kmh(point.topSpeed())
                + " km/h, ride height there " + Numbers.fixed(point.limited().rideHeightMm(), 1) + " mm";
        if (Double.isFinite(point.limited().balanceLeastPercent())) {
            text += ", limit balance " + Numbers.signed(point.limited().balanceLeastPercent(), 2)
                    + (point.limited().balanceMostPercent() > point.limited().balanceLeastPercent()
                            ? " to " + Numbers.signed(point.limited().balanceMostPercent(), 2)
                            : "")
                    + " %";
        }
        return point.limited().upshiftsInCorners() < 0
                ? text
                : text + ", upshifts in corners " + point.limited().upshiftsInCorners();
    }

    private String before() {
        List<String> missed = new ArrayList<>();
        for (OptimisationResult.Miss miss : result.missesBefore()) {
            missed.add(miss.limit().label());
        }
        List<String> between = new ArrayList<>();
        for (int i = 0; i < result.search().axes().size(); i++) {
            double was = result.before().settings().get(i);
            if (result.search().axes().get(i).settings().stream().noneMatch(legal -> Math.abs(legal - was) < SAME)) {
                between.add(result.search().axes().get(i).name());
            }
        }
        return (missed.isEmpty() ? "" : "; misses " + String.join(", ", missed))
                + (between.isEmpty() ? "" : "; between legal steps: " + String.join(", ", between));
    }

    private void adjustments() {
        Table table = new Table()
                .words("adjustment")
                .words("unit")
                .numbers("before", "")
                .numbers("best", "")
                .numbers("worth", "s")
                .numbers("alone as good", "from..to")
                .numbers("together as good", "from..to");
        for (OptimisationResult.Range range : result.nearOptimal().ranges()) {
            table.row(
                    List.of(
                            range.name(),
                            result.task().car().unitOf(range.name()).symbol(),
                            Numbers.plain(range.before()),
                            Numbers.plain(range.best()),
                            range.isMoved() ? worth(range) : "-",
                            span(range.aloneLeast(), range.aloneMost()),
                            span(range.togetherLeast(), range.togetherMost())),
                    range.isMoved());
        }
        table.printTo(console);
    }

    private static String worth(OptimisationResult.Range range) {
        return Double.isNaN(range.worth()) ? "limit" : Numbers.fixed(range.worth(), 3);
    }

    private static String span(double least, double most) {
        return least == most ? Numbers.plain(least) : Numbers.plain(least) + ".." + Numbers.plain(most);
    }

    private void sectors() {
        for (OptimisationResult.SectorTimes gain : result.sectors()) {
            List<String> gains = new ArrayList<>();
            gain.gains().forEach(one -> gains.add(Numbers.signed(one, 3)));
            String where = result.sectors().size() > 1 ? " at " + gain.track().name() : "";
            Lines.paragraph(console, "Gain by sector" + where + ": " + String.join(", ", gains) + " s.");
        }
        console.line();
    }

    private void front() {
        if (result.nearOptimal().front().size() < 2) {
            return;
        }
        console.line("For more top speed, the least time lost:");
        Table table = new Table()
                .numbers("top speed", "km/h")
                .numbers("lap time", "m:ss.mmm")
                .numbers("lost", "s")
                .words("settings other than the best's");
        int count = result.nearOptimal().front().size();
        int rows = Math.min(FRONT_ROWS, count);
        for (int k = 0; k < rows; k++) {
            OptimisationResult.Candidate point =
                    result.nearOptimal().front().get((int) Math.round((double) k * (count - 1) / (rows - 1)));
            table.row(
                    Numbers.kmh(point.topSpeed()),
                    Numbers.lapTime(point.lapTime()),
                    Numbers.fixed(point.cost() - result.best().cost(), 3),
                    difference(point));
        }
        table.printTo(console);
        console.line();
    }

    private String difference(OptimisationResult.Candidate point) {
        List<String> said = new ArrayList<>();
        for (int i = 0; i < result.search().axes().size(); i++) {
            if (!point.settings().get(i).equals(result.best().settings().get(i))) {
                said.add(result.search().axes().get(i).name() + " "
                        + Numbers.plain(point.settings().get(i)));
            }
        }
        return said.isEmpty() ? "(the best)" : String.join(", ", said);
    }

    private void leftAlone() {
        Map<String, List<String>> reasons = new LinkedHashMap<>();
        for (OptimisationResult.LeftAlone kept : result.search().leftAlone()) {
            reasons.computeIfAbsent(kept.reason(), reason -> new ArrayList<>()).add(kept.name());
        }
        reasons.forEach((reason, names) ->
                Lines.paragraph(console, "Left alone: " + String.join(", ", names) + " (" + reason + ")."));
    }
}
