package dev.lapwright.cli;

import dev.lapwright.files.SafeFile;
import dev.lapwright.fit.FitParameter;
import dev.lapwright.fit.FitResult;
import dev.lapwright.logs.DrivenLog;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import java.util.ArrayList;
import java.util.List;

/** A fit for people. */
final class FitReport {
    private static final int PERCENT = 100;
    private static final String USE =
            "A fit tells how this driver used this car on that day, with its tyres, track, wind and line in it: it is no"
                    + " measurement of the car. Try what it suggests in licensed practice, and keep to the maker's limits.";
    private final Console console;
    private final FitOutcome outcome;
    private final FitResult result;

    FitReport(Console console, FitOutcome outcome) {
        this.console = console;
        this.outcome = outcome;
        this.result = outcome.result();
    }

    /** What to think of before the figures are used. */
    static List<String> cautions(FitResult result) {
        List<String> cautions = new ArrayList<>();
        cautions.add(USE);
        for (FitResult.Estimate estimate : result.estimates()) {
            if (estimate.parameter() == FitParameter.GRIP && estimate.value() < 1) {
                cautions.add("A grip of " + FitWords.value(FitParameter.GRIP, estimate.value())
                        + " may be the driver as well as the car: an average lap is driven below the limit.");
            }
            if (estimate.atBound()) {
                cautions.add(
                        FitWords.capital(estimate.parameter().title()) + " ended at the edge of what was searched, "
                                + FitWords.value(estimate.parameter(), estimate.value())
                                + ": see to the car, the circuit and the units of the log.");
            }
        }
        return cautions;
    }

    void print() {
        TerminalReport.print(console, outcome.subject().heading());
        TerminalReport.print(console, outcome.line().addTo(new Report()));
        for (DrivenLog log : outcome.logs()) {
            Lines.item(console, "Log", SafeFile.path(log.name()).getFileName() + ": " + log.columns());
            log.remarks().forEach(remark -> Lines.item(console, "", remark));
        }
        Lines.item(
                console,
                "Laps",
                String.join("; ", result.laps().stream().map(this::lap).toList()));
        outcome.pick().leftOut().forEach(left -> Lines.item(console, "Left out", left));
        console.line();
        estimates();
        for (FitResult.Collinearity tie : result.collinearities()) {
            console.line();
            Lines.paragraph(console, FitWords.tie(tie));
        }
        console.line();
        agreement();
        console.line();
        parts();
        console.line();
        for (String note : result.notes()) {
            Lines.print(console, "- ", 2, note);
        }
        for (String caution : cautions(result)) {
            console.line();
            Lines.paragraph(console, console.bold("Caution:") + " " + caution);
        }
    }

    private String lap(FitResult.LapFit fitted) {
        double time = Double.isFinite(fitted.loggedTime()) ? fitted.loggedTime() : fitted.speedTime();
        return fitted.lap().name() + " in " + Numbers.lapTime(time) + ", " + Numbers.percent(fitted.share())
                + " % of it counts";
    }

    private void estimates() {
        String confidence = Numbers.plain(PERCENT * result.confidence()) + " %";
        console.line("What the laps say of the car (intervals of " + confidence + "):");
        Table table = new Table()
                .words("parameter")
                .words("unit")
                .numbers("before", "")
                .numbers("fitted", "")
                .numbers("from", "")
                .numbers("to", "")
                .numbers("change", "%")
                .words("standing");
        for (FitResult.Estimate estimate : result.estimates()) {
            int decimals = FitWords.decimals(estimate.parameter());
            table.row(
                    estimate.parameter().title(),
                    estimate.parameter().unit().symbol(),
                    Numbers.fixed(estimate.before(), decimals),
                    Numbers.fixed(estimate.value(), decimals),
                    Numbers.fixed(estimate.lower(), decimals),
                    Numbers.fixed(estimate.upper(), decimals),
                    Numbers.signed(PERCENT * estimate.change(), 1),
                    estimate.atBound()
                            ? "at the edge of the search"
                            : estimate.identifiability().label());
        }
        table.printTo(console);
    }

    private void agreement() {
        Lines.item(
                console,
                "Lap time",
                "logged " + console.bold(Numbers.lapTime(result.loggedTime())) + ", the car as given "
                        + Numbers.lapTime(result.before().time()) + ", fitted "
                        + console.bold(Numbers.lapTime(result.after().time())));
        Lines.item(
                console,
                "Speed",
                "logged less simulated, root mean square: "
                        + Numbers.kmh(result.residuals().rmsBefore()) + " km/h as given, "
                        + Numbers.kmh(result.residuals().rmsAfter()) + " km/h fitted; as good as "
                        + Numbers.fixed(result.residuals().effectiveSamples(), 0) + " independent readings");
    }

    private void parts() {
        console.line("By corner and straight, logged against the fitted car (+ the laps lose time):");
        Table table = new Table()
                .words("part")
                .numbers("from", "m")
                .numbers("logged time", "s")
                .numbers("to given", "s")
                .numbers("to fitted", "s")
                .numbers("logged entry", "km/h")
                .numbers("fitted", "km/h")
                .numbers("logged apex, top", "km/h")
                .numbers("fitted", "km/h")
                .numbers("logged exit", "km/h")
                .numbers("fitted", "km/h");
        for (FitResult.Part part : result.parts()) {
            boolean corner = part.isCorner();
            table.row(
                    part.label(),
                    Numbers.fixed(part.start(), 0),
                    Numbers.fixed(part.logged().time(), 3),
                    Numbers.signed(part.logged().time() - part.before().time(), 3),
                    Numbers.signed(part.lost(), 3),
                    Numbers.kmh(part.logged().entrySpeed()),
                    Numbers.kmh(part.fitted().entrySpeed()),
                    Numbers.kmh(extreme(part.logged(), corner)),
                    Numbers.kmh(extreme(part.fitted(), corner)),
                    Numbers.kmh(part.logged().exitSpeed()),
                    Numbers.kmh(part.fitted().exitSpeed()));
        }
        table.printTo(console);
    }

    private static double extreme(FitResult.Passage drive, boolean corner) {
        return corner ? drive.leastSpeed() : drive.mostSpeed();
    }
}
