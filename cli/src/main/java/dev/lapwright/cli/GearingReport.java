package dev.lapwright.cli;

import dev.lapwright.car.Unit;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.Subject;
import dev.lapwright.study.gearing.GearingAxes;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.Corner;
import java.util.ArrayList;
import java.util.List;

/** A study of gearing for people. */
final class GearingReport {
    private static final int THOUSAND = 1000;

    private final Console console;
    private final GearingOutcome outcome;
    private final GearingResult result;
    private final GearingResult.GearedLap lap;

    GearingReport(Console console, GearingOutcome outcome) {
        this.console = console;
        this.outcome = outcome;
        result = outcome.result();
        lap = result.asGiven().baseline();
    }

    void print() {
        TerminalReport.print(console, outcome.subject().heading());
        console.line();
        figures();
        console.line();
        gears();
        for (SweepAxis axis : result.axes()) {
            console.line();
            axis(axis);
        }
        if (!others().isEmpty()) {
            console.line("  * fastest of its column");
        }
        for (String paragraph : GearingReading.of(outcome)) {
            console.line();
            Lines.paragraph(console, paragraph);
        }
    }

    private void figures() {
        String name = result.track().isClosed() ? "Lap time" : "Run time";
        Lines.item(console, name, console.bold(Numbers.lapTime(lap.lapTime())));
        Lines.item(
                console,
                "Top speed",
                Numbers.kmh(lap.top().speed()) + " km/h at "
                        + Numbers.fixed(lap.top().at(), 0) + " m"
                        + lap.top()
                                .nextCorner()
                                .map(Corner::label)
                                .map(c -> ", before " + c)
                                .orElse("")
                        + ", in gear " + lap.top().gear() + " at "
                        + Numbers.fixed(lap.top().engineSpeed(), 0)
                        + " rpm of " + Numbers.fixed(lap.limiter().revLimit(), 0) + " rpm");
        Lines.item(console, "Gears used", joined(lap.gearsUsed()) + unused());
        Lines.item(
                console,
                "Limiter",
                lap.limiter().time() > 0
                        ? "held for " + Numbers.fixed(lap.limiter().time(), 2) + " s"
                        : "never held");
        long late = lap.upshifts().stream()
                .filter(shift -> shift.brakingWithin(outcome.beforeBraking()))
                .count();
        Lines.item(
                console,
                "Upshifts",
                lap.upshifts().size() + ": " + lap.upshiftsInCorners().size() + " in corners, " + late + " within "
                        + Numbers.plain(outcome.beforeBraking()) + " s of braking");
    }

    private String unused() {
        return lap.gearsUnused().isEmpty() ? "" : "; never " + joined(lap.gearsUnused());
    }

    private static String joined(List<Integer> gears) {
        return String.join(", ", gears.stream().map(String::valueOf).toList());
    }

    private void gears() {
        Table table = new Table()
                .numbers("gear", "")
                .numbers("ratio", "")
                .numbers("overall", "")
                .numbers("per 1000 rpm", "km/h")
                .numbers("shift up at", "km/h")
                .numbers("engine speed", "rpm")
                .numbers("falls to", "rpm")
                .numbers("at the limit", "km/h")
                .numbers("upshifts", "")
                .numbers("time", "s")
                .numbers("share", "%");
        double[] times = lap.timeInGear();
        for (GearingResult.Gear gear : result.gears()) {
            boolean top = gear.gear() == result.gears().size();
            double next = top ? Double.NaN : result.gears().get(gear.gear()).engineSpeed(gear.toSpeed());
            double spent = times[gear.gear() - 1];
            table.row(
                    Integer.toString(gear.gear()),
                    Numbers.fixed(gear.ratio(), 3),
                    Numbers.fixed(gear.overallRatio(), 3),
                    Numbers.fixed(
                            Unit.METRE_PER_SECOND.convert(
                                    THOUSAND / gear.engineSpeedPerSpeed(), Unit.KILOMETRE_PER_HOUR),
                            2),
                    top ? "-" : Numbers.kmh(gear.toSpeed()),
                    top ? "-" : Numbers.fixed(gear.engineSpeed(gear.toSpeed()), 0),
                    Numbers.fixed(next, 0),
                    Numbers.kmh(gear.limitSpeed()),
                    Long.toString(upshiftsFrom(gear.gear())),
                    Numbers.fixed(spent, 2),
                    Numbers.percent(spent / lap.lapTime()));
        }
        table.printTo(console);
    }

    private long upshiftsFrom(int gear) {
        return lap.upshifts().stream().filter(shift -> shift.from() == gear).count();
    }

    private void axis(SweepAxis axis) {
        Table table = new Table()
                .numbers(axis.name(), Subject.unitOf(result.car(), axis.name()).symbol());
        if (outcome.isNoRatio(axis)) {
            table.numbers("final drive", "");
        }
        table.numbers("lap time", "m:ss.mmm")
                .numbers("gain", "s")
                .numbers("top speed", "km/h")
                .numbers("in gear", "")
                .numbers("rpm left", "")
                .numbers("on limiter", "s")
                .numbers("up shifts", "");
        for (GearingResult.Scenario scenario : others()) {
            table.numbers("gain in " + said(scenario), "s");
        }
        table.words("");
        List<GearingResult.Candidate> choices = result.asGiven().choices(axis.name());
        for (int k = 0; k < choices.size(); k++) {
            row(table, axis, choices.get(k), k);
        }
        table.printTo(console);
        failures(choices);
    }

    private static double finalDrive(GearingResult.Candidate choice) {
        return choice.car().value(GearingAxes.FINAL_DRIVE);
    }

    private List<GearingResult.Scenario> others() {
        return result.scenarios().subList(1, result.scenarios().size());
    }

    private static String said(GearingResult.Scenario scenario) {
        return scenario.kind() == GearingResult.Scenario.Kind.TOW ? "tow" : "wind";
    }

    private void row(Table table, SweepAxis axis, GearingResult.Candidate choice, int k) {
        double none = Double.NaN;
        List<String> cells = new ArrayList<>();
        cells.add(Numbers.plain(choice.value()));
        if (outcome.isNoRatio(axis)) {
            cells.add(Numbers.fixed(finalDrive(choice), 3));
        }
        cells.add(Numbers.lapTime(
                choice.lap().map(GearingResult.GearedLap::lapTime).orElse(none)));
        cells.add(gain(result.asGiven(), axis, choice));
        cells.add(Numbers.kmh(choice.lap()
                .map((GearingResult.GearedLap lap) -> lap.top().speed())
                .orElse(none)));
        cells.add(choice.lap().map(l -> Integer.toString(l.top().gear())).orElse("-"));
        cells.add(Numbers.fixed(
                choice.lap().map(GearingResult.GearedLap::headroom).orElse(none), 0));
        cells.add(Numbers.fixed(choice.lap().map(lap -> lap.limiter().time()).orElse(none), 2));
        cells.add(choice.lap().map(l -> Integer.toString(l.upshifts().size())).orElse("-"));
        for (GearingResult.Scenario scenario : others()) {
            cells.add(gain(scenario, axis, scenario.choices(axis.name()).get(k)));
        }
        cells.add(marks(axis, choice));
        table.row(cells, isBest(result.asGiven(), axis, choice));
    }

    /** With a star where it is the best of several columns. */
    private String gain(GearingResult.Scenario scenario, SweepAxis axis, GearingResult.Candidate choice) {
        String star = others().isEmpty() ? "" : isBest(scenario, axis, choice) ? "*" : " ";
        return Numbers.signed(scenario.gain(choice), 3) + star;
    }

    private String marks(SweepAxis axis, GearingResult.Candidate choice) {
        List<String> marks = new ArrayList<>();
        if (choice.lap().isEmpty()) {
            marks.add("no lap");
        }
        if (others().isEmpty() && isBest(result.asGiven(), axis, choice)) {
            marks.add("fastest");
        }
        if (outcome.isFitted(choice)) {
            marks.add("fitted");
        }
        return String.join(", ", marks);
    }

    private boolean isBest(GearingResult.Scenario scenario, SweepAxis axis, GearingResult.Candidate choice) {
        return axis.count() > 1
                && outcome.best(scenario, axis).filter(choice::equals).isPresent();
    }

    private void failures(List<GearingResult.Candidate> choices) {
        for (GearingResult.Candidate choice : choices) {
            if (choice.lap().isEmpty()) {
                Lines.paragraph(
                        console,
                        "No lap with " + Subject.said(result.car(), choice.axis(), choice.value()) + ": "
                                + choice.failure() + ".");
            }
        }
    }
}
