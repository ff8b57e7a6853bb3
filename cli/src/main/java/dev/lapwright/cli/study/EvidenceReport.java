package dev.lapwright.cli.study;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.Lines;
import dev.lapwright.cli.output.TextTable;
import dev.lapwright.evidence.BootstrapInterval;
import dev.lapwright.evidence.CleanLaps;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.evidence.MeanDifference;
import dev.lapwright.evidence.RankSum;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.evidence.Trend;
import dev.lapwright.report.Numbers;
import java.util.ArrayList;
import java.util.List;

/** What a lap log shows, for people. */
public final class EvidenceReport {
    private final Console console;
    private final EvidenceOutcome outcome;
    private final EvidenceResult result;

    public EvidenceReport(Console console, EvidenceOutcome outcome) {
        this.console = console;
        this.outcome = outcome;
        result = outcome.result();
    }

    public void print() {
        TimingLog log = result.laps().log();
        console.line(console.bold(outcome.file().name()) + ", "
                + count(log.laps().size(), "lap") + " in " + count(log.runs(), "run"));
        Lines.item(console, "Columns", outcome.file().columns());
        cleanLaps();
        trend();
        console.line();
        paces();
        console.line();
        result.comparison().ifPresent(this::comparison);
        Lines.paragraph(console, new EvidenceVerdict(result).text(console));
    }

    public static String count(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }

    private void cleanLaps() {
        CleanLaps laps = result.laps();
        CleanLaps.Rule rule = laps.rule();
        List<String> out = new ArrayList<>();
        for (CleanLaps.Status status : CleanLaps.Status.values()) {
            if (status != CleanLaps.Status.CLEAN && laps.count(status) > 0) {
                boolean noun = status == CleanLaps.Status.OUT || status == CleanLaps.Status.IN;
                out.add(noun ? count(laps.count(status), status.label()) : laps.count(status) + " " + status.label());
            }
        }
        Lines.item(
                console,
                "Clean laps",
                laps.clean().length + " of " + laps.log().laps().size()
                        + (out.isEmpty() ? "" : "; not " + String.join(", ", out)));
        List<String> limits = new ArrayList<>();
        for (String setup : laps.log().setups()) {
            limits.add(setup + " " + Numbers.lapTime(laps.slowLimit(setup)));
        }
        String first = rule.warmUpLaps() == 0
                ? ""
                : rule.warmUpLaps() == 1
                        ? ", the first of each run"
                        : ", the first " + rule.warmUpLaps() + " of each run";
        Lines.item(
                console,
                "Rule",
                "left out are flagged laps" + first
                        + ", and those slower than their setup's median by more than "
                        + Numbers.plain(rule.slowLimit())
                        + " robust standard deviations (MAD/0.6745; at least 0.5 %): beyond "
                        + String.join(", ", limits));
        for (int lap : laps.oddlyFast()) {
            Lines.item(
                    console,
                    "Look at",
                    "lap " + laps.log().laps().get(lap).number()
                            + " counts, but is oddly fast: a tow, a short cut, a fault of timing?");
        }
    }

    private void trend() {
        Trend trend = result.trend();
        if (!trend.isTaken()) {
            Lines.item(
                    console,
                    "Trend",
                    trend.kind() == Trend.Kind.NONE
                            ? "none taken out"
                            : "none taken out: there are too few laps to tell it");
            return;
        }
        Lines.item(
                console,
                "Trend",
                Numbers.signed(trend.slope(), 3) + " s a lap " + trend.kind().label() + " (95 %: "
                        + Numbers.signed(trend.slope() - trend.halfInterval(), 3) + " to "
                        + Numbers.signed(trend.slope() + trend.halfInterval(), 3)
                        + "), by regression with one slope for all "
                        + (trend.kind() == Trend.Kind.RUN ? "runs" : "setups")
                        + ": fuel, tyres, driver and road together. It is taken out of means, spreads and tests, which stand"
                        + " for lap " + Numbers.fixed(trend.reference(), 1)
                        + (trend.kind() == Trend.Kind.RUN ? " of a run" : ""));
    }

    private void paces() {
        TextTable table = new TextTable()
                .words("setup")
                .numbers("clean laps", "")
                .numbers("best", "m:ss.mmm")
                .numbers("median", "m:ss.mmm")
                .numbers("mean", "m:ss.mmm")
                .numbers("spread", "s")
                .numbers("consistency", "%")
                .numbers("lap to lap", "s");
        for (EvidenceResult.SetupPace pace : result.paces()) {
            table.row(
                    pace.setup(),
                    Integer.toString(pace.clean()),
                    Numbers.lapTime(pace.best()),
                    Numbers.lapTime(pace.median()),
                    Numbers.lapTime(pace.mean()),
                    Numbers.fixed(pace.spread(), 3),
                    Numbers.fixed(100 * pace.consistency(), 2),
                    Numbers.fixed(pace.lapToLap(), 3));
        }
        table.printTo(console);
    }

    private void comparison(EvidenceResult.Comparison comparison) {
        String before = comparison.before().setup();
        String after = comparison.after().setup();
        console.line(console.bold(after + " against " + before) + ", below 0 is faster");
        if (comparison.tests().isPresent()) {
            tests(comparison, comparison.tests().get());
        }
        comparison.returned().ifPresent(check -> returned(check, before, after));
        if (result.choices().predicted().isPresent()) {
            double predicted = result.choices().predicted().getAsDouble();
            Lines.item(
                    console,
                    "Model",
                    "predicted " + Numbers.signed(predicted, 3) + " s"
                            + comparison
                                    .tests()
                                    .map(tests -> inside(tests.welch(), predicted)
                                            ? ", inside Welch's interval"
                                            : ", outside Welch's interval")
                                    .orElse(""));
        }
        console.line();
    }

    public static boolean inside(MeanDifference difference, double value) {
        return value >= difference.low() && value <= difference.high();
    }

    public static String interval(MeanDifference difference) {
        return Numbers.signed(difference.difference(), 3) + " s (95 %: " + Numbers.signed(difference.low(), 3) + " to "
                + Numbers.signed(difference.high(), 3) + "), p " + p(difference.p());
    }

    public static String p(double p) {
        return p < 0.0001 ? "below 0.0001" : Numbers.fixed(p, 4);
    }

    private void tests(EvidenceResult.Comparison comparison, EvidenceResult.Tests tests) {
        Lines.item(console, "Welch", interval(tests.welch()));
        RankSum ranks = tests.rankSum();
        Lines.item(
                console,
                "Mann-Whitney",
                comparison.after().setup() + " is faster in " + Numbers.plain(ranks.pairs() - ranks.u()) + " of "
                        + ranks.pairs() + " pairs of laps, p " + p(ranks.p()) + (ranks.exact() ? " (exact)" : ""));
        BootstrapInterval bootstrap = tests.bootstrap();
        Lines.item(
                console,
                "Bootstrap",
                "95 %: " + Numbers.signed(bootstrap.low(), 3) + " to " + Numbers.signed(bootstrap.high(), 3)
                        + " s; faster in " + Numbers.fixed(100 * bootstrap.fasterShare(), 1) + " % of "
                        + bootstrap.resamples() + " resamples (seed " + bootstrap.seed() + ")");
        for (Trend.Kind kind : Trend.Kind.values()) {
            if (kind != result.trend().kind()) {
                String how =
                        kind == Trend.Kind.NONE ? "with no trend taken out: " : "with a trend " + kind.label() + ": ";
                Lines.item(
                        console,
                        "Otherwise",
                        how
                                + interval(tests.byTrend().get(kind))
                                + (tests.dependsOn(kind) ? "; that would change the answer" : ""));
            }
        }
    }

    private void returned(EvidenceResult.ReturnCheck check, String before, String after) {
        Lines.item(
                console,
                "A-B-A",
                before + " run again (" + check.firstLaps() + " and " + check.lastLaps() + " clean laps) "
                        + (check.drifted()
                                ? "did not come back: "
                                : check.cameBack() ? "came back: " : "is not known to have come back: ")
                        + interval(check.change()) + "; " + after
                        + " against the middle of the two: " + interval(check.bracketed()));
    }
}
