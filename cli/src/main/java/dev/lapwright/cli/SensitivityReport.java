package dev.lapwright.cli;

import dev.lapwright.evidence.LapsToSee;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.results.Subject;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.List;

/** A study of sensitivities for people. */
final class SensitivityReport {
    private static final String NONE = "-";
    private static final int PAIRS_SHOWN = 5;
    /** More than anybody drives to compare two setups. */
    private static final int MOST_LAPS_SHOWN = 1000;

    private static final int DECIMALS = 3;

    private final Console console;
    private final SensitivityOutcome outcome;
    private final SensitivityResult result;

    SensitivityReport(Console console, SensitivityOutcome outcome) {
        this.console = console;
        this.outcome = outcome;
        result = outcome.result();
    }

    void print() {
        LapReport.heading(console, outcome.subject());
        TerminalReport.print(console, outcome.line().addTo(new Report()));
        console.line();
        figures();
        console.line();
        worth();
        console.line();
        seen();
        if (!result.interactions().isEmpty()) {
            console.line();
            interactions();
        }
        for (String paragraph : SensitivityReading.of(outcome)) {
            console.line();
            Lines.paragraph(console, paragraph);
        }
        for (String caution : SensitivityReading.cautions(outcome)) {
            console.line();
            Lines.paragraph(console, console.bold("Caution:") + " " + caution);
        }
    }

    private void figures() {
        String name = result.track().isClosed() ? "Lap time" : "Run time";
        Lines.item(console, name, console.bold(Numbers.lapTime(result.baseline().lapTime())));
        Lines.item(
                console,
                "Laps to try",
                result.laps() + ", " + result.lapsWithEach() + " with each of two setups, that scatter by "
                        + Numbers.plain(result.scatter()) + " s");
        Lines.item(
                console,
                "They show",
                Numbers.fixed(result.visibleGain(), DECIMALS) + " s or more (two-sided "
                        + Numbers.plain(100 * LapsToSee.SIGNIFICANCE) + " %, power "
                        + Numbers.plain(100 * LapsToSee.POWER) + " %)");
    }

    private void worth() {
        Lines.paragraph(
                console, "Seconds gained by each alone (+ is faster); the one worth most over its range stands first.");
        Table table = new Table()
                .words("adjustment")
                .words("unit")
                .numbers("now", "")
                .numbers("step down", "s")
                .numbers("step up", "s")
                .numbers("bend", "s")
                .numbers("best at", "")
                .numbers("gain", "s")
                .numbers("worst at", "")
                .numbers("gain", "s")
                .numbers("range", "s");
        for (SensitivityResult.Gain gain : result.gains()) {
            boolean faster = gain.isGain();
            boolean slower = gain.isLoss();
            table.row(
                    gain.adjustment().name(),
                    gain.adjustment().unit().symbol(),
                    Numbers.plain(gain.setting()),
                    step(gain.lower().setting(), gain.lower().gain()),
                    step(gain.higher().setting(), gain.higher().gain()),
                    Numbers.signed(gain.curvature(), DECIMALS),
                    faster ? Numbers.plain(gain.best().setting()) : NONE,
                    faster ? Numbers.signed(gain.best().gain(), DECIMALS) : NONE,
                    slower ? Numbers.plain(gain.worst().setting()) : NONE,
                    slower ? Numbers.signed(gain.worst().gain(), DECIMALS) : NONE,
                    Numbers.fixed(gain.range(), DECIMALS));
        }
        table.printTo(console);
    }

    private static String step(double setting, double gain) {
        return Double.isNaN(setting) || !Double.isNaN(gain) ? Numbers.signed(gain, DECIMALS) : "no lap";
    }

    private void seen() {
        Lines.paragraph(
                console,
                "Where it arises at the best setting, or where the car stands best already at the worst; and how many"
                        + " laps with each of the two settings it takes to see it.");
        int sectors = result.gains().get(0).sectorGains().size();
        Table table = new Table().words("adjustment").numbers("at", "").numbers("gain", "s");
        for (int sector = 1; sector <= sectors; sector++) {
            table.numbers("sector " + sector, "s");
        }
        table.numbers("laps with each", "").words("in " + result.laps() + " laps");
        for (SensitivityResult.Gain gain : outcome.felt()) {
            List<String> cells = new ArrayList<>();
            cells.add(gain.adjustment().name());
            cells.add(SensitivityOutcome.setting(gain, gain.shown().setting()));
            cells.add(Numbers.signed(gain.shown().gain(), DECIMALS));
            gain.sectorGains().forEach(sector -> cells.add(Numbers.signed(sector, DECIMALS)));
            cells.add(laps(gain));
            cells.add(result.canBeSeen(gain) ? "seen" : "not seen");
            table.row(cells, result.canBeSeen(gain));
        }
        table.printTo(console);
    }

    private static String laps(SensitivityResult.Gain gain) {
        if (!gain.isEverSeen()) {
            return "never";
        }
        return gain.lapsToSee() > MOST_LAPS_SHOWN ? ">" + MOST_LAPS_SHOWN : Integer.toString(gain.lapsToSee());
    }

    private void interactions() {
        Lines.paragraph(
                console, "One step of two adjustments together, and what that gains beyond the sum of the two:");
        Table table = new Table()
                .words("one")
                .words("other")
                .numbers("sum", "s")
                .numbers("together", "s")
                .numbers("beyond", "s");
        for (SensitivityResult.Interaction pair : result.interactions()
                .subList(0, Math.min(PAIRS_SHOWN, result.interactions().size()))) {
            table.row(
                    Subject.said(result.car(), pair.first(), pair.firstSetting()),
                    Subject.said(result.car(), pair.second(), pair.secondSetting()),
                    Numbers.signed(pair.alone(), DECIMALS),
                    Numbers.signed(pair.together(), DECIMALS),
                    Numbers.signed(pair.beyond(), DECIMALS));
        }
        table.printTo(console);
    }
}
