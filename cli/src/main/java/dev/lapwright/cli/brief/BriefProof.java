package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.brief.Proof;
import dev.lapwright.cli.page.Page;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.results.EvidenceReport;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Section of a brief after driving: what the laps driven prove. */
public final class BriefProof {
    private final BriefReport brief;
    private final BriefCharts charts;

    public BriefProof(BriefReport brief, BriefCharts charts) {
        this.brief = brief;
        this.charts = charts;
    }

    public Page.Section section() {
        List<Page.Block> blocks = new ArrayList<>();
        BriefResult.Part<Proof> part = brief.result().proof();
        if (brief.log().isEmpty()) {
            blocks.add(Page.Block.paragraph(
                    "Nothing has been driven yet, or no log was given. Afterwards make this page again"
                            + " with --laps and the log of lap times (columns time, setup and, if known, run and flag): this section"
                            + " then says which changes were real, and whether the model had them right."));
        } else {
            part.value().ifPresentOrElse(found -> fill(blocks, found), () -> blocks.add(BriefPage.missing(part)));
        }
        return new Page.Section(
                "proof",
                "After driving: what the laps proved",
                "Whether each change of setup shows in the lap times, beside what the model expected; minus is faster.",
                blocks);
    }

    private void fill(List<Page.Block> blocks, Proof found) {
        blocks.add(Page.Block.paragraph(pace(found)));
        blocks.add(paces(found));
        if (found.changes().isEmpty()) {
            blocks.add(Page.Block.paragraph(
                    "All laps are with one setup: there is no change to judge. Name the setups in a column setup."));
            return;
        }
        blocks.add(changes(found));
        int number = 0;
        for (Proof.Change change : found.changes()) {
            number++;
            blocks.add(Page.Block.subheading(change.after() + " against " + change.before()));
            Optional<EvidenceResult> seen = change.seen().value();
            if (seen.isEmpty()) {
                blocks.add(BriefPage.missing(change.seen()));
                continue;
            }
            blocks.add(Page.Block.paragraph(verdict(seen.get())));
            if (!change.expected().isThere()) {
                blocks.add(Page.Block.paragraph("The model was not asked: "
                        + BriefWords.sentence(change.expected().problem() + remedy(change.expected()))));
            }
            if (number == 1) {
                blocks.add(charts.laps(
                        "laps",
                        seen.get(),
                        "Every lap in the order driven: filled marks count, hollow ones do not; the line of each run is at its"
                                + " median."));
            }
        }
    }

    private static String remedy(BriefResult.Part<?> part) {
        return part.remedy().isEmpty() ? "" : "; " + part.remedy();
    }

    /** The answer of the command evidence, without bold type. */
    private static String verdict(EvidenceResult seen) {
        return Report.marked(EvidenceReport.verdict(seen), "", "");
    }

    private static String pace(Proof found) {
        double percent = 100 * (found.ratio() - 1);
        return "The fastest clean lap driven is " + Numbers.lapTime(found.bestLap()) + ", "
                + Numbers.fixed(Math.abs(percent), 1) + " % " + (percent >= 0 ? "slower" : "faster")
                + " than the model's " + Numbers.lapTime(found.modelLap())
                + ". The model compares settings better than it predicts lap times.";
    }

    private static Page.Block paces(Proof found) {
        Table<EvidenceResult.SetupPace> table = Table.<EvidenceResult.SetupPace>of(
                        "Pace in each setup, with the day's course taken out of mean and scatter")
                .words("", "Setup", EvidenceResult.SetupPace::setup)
                .number("", "Clean laps", "", Numbers.fixed(0), EvidenceResult.SetupPace::clean)
                .number("", "Best", "min:s", Numbers::lapTime, EvidenceResult.SetupPace::best)
                .number("", "Median", "min:s", Numbers::lapTime, EvidenceResult.SetupPace::median)
                .number("", "Mean", "min:s", Numbers::lapTime, EvidenceResult.SetupPace::mean)
                .number("", "Scatter", "s", Numbers.fixed(3), EvidenceResult.SetupPace::spread);
        return Page.Block.table(table, found.paces());
    }

    private static Page.Block changes(Proof found) {
        Table<Proof.Change> table = Table.<Proof.Change>of("Each change, as seen and as expected")
                .words("", "Change", change -> change.before() + " to " + change.after())
                .words(
                        "",
                        "Verdict",
                        change -> change.comparison()
                                .map(comparison ->
                                        comparison.verdict().finding().label())
                                .orElse("cannot be compared"))
                .text(
                        "Seen",
                        "s a lap",
                        change -> change.difference()
                                .map(seen -> Numbers.signed(seen.mean(), 3))
                                .orElse("-"))
                .text(
                        "Between",
                        "s, 95 %",
                        change -> change.difference()
                                .map(seen -> Numbers.signed(seen.once().low(), 3) + " to "
                                        + Numbers.signed(seen.once().high(), 3))
                                .orElse("-"))
                .text(
                        "Expected",
                        "s a lap",
                        change -> change.expected()
                                .value()
                                .map(effect -> Numbers.signed(effect.difference(), 3))
                                .orElse("-"))
                .words(
                        "",
                        "Model",
                        change -> change.agrees()
                                .map(yes -> yes ? "agrees" : "disagrees")
                                .orElse("not known"));
        return Page.Block.table(table, found.changes());
    }
}
