package dev.lapwright.cli;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.brief.Proof;
import dev.lapwright.cli.page.PageBlock;
import dev.lapwright.cli.page.PageSection;
import dev.lapwright.cli.page.PageTable;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.evidence.MeanDifference;
import dev.lapwright.report.Numbers;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** After driving: what the laps proved. */
final class BriefProof {
    private final BriefOutcome outcome;
    private final BriefCharts charts;

    BriefProof(BriefOutcome outcome, BriefCharts charts) {
        this.outcome = outcome;
        this.charts = charts;
    }

    PageSection section() {
        List<PageBlock> blocks = new ArrayList<>();
        BriefResult.Part<Proof> part = outcome.result().proof();
        if (outcome.log().isEmpty()) {
            blocks.add(PageBlock.paragraph(
                    "Nothing has been driven yet, or no log was given. Afterwards make this page again"
                            + " with --laps and the log of lap times (columns time, setup and, if known, run and flag): this section"
                            + " then says which changes were real, and whether the model had them right."));
        } else {
            part.value().ifPresentOrElse(found -> fill(blocks, found), () -> blocks.add(BriefPage.missing(part)));
        }
        return new PageSection(
                "proof",
                "After driving: what the laps proved",
                "Whether each change of setup shows in the lap times, beside what the model expected; below 0 is faster.",
                blocks);
    }

    private void fill(List<PageBlock> blocks, Proof found) {
        blocks.add(PageBlock.paragraph(pace(found)));
        blocks.add(PageBlock.table(paces(found)));
        if (found.changes().isEmpty()) {
            blocks.add(PageBlock.paragraph(
                    "All laps are with one setup: there is no change to judge. Name the setups in a column setup."));
            return;
        }
        blocks.add(PageBlock.table(changes(found)));
        int number = 0;
        for (Proof.Change change : found.changes()) {
            number++;
            blocks.add(PageBlock.subheading(change.after() + " against " + change.before()));
            Optional<EvidenceResult> seen = change.seen().value();
            if (seen.isEmpty()) {
                blocks.add(BriefPage.missing(change.seen()));
                continue;
            }
            blocks.add(PageBlock.paragraph(verdict(seen.get())));
            if (!change.expected().isThere()) {
                blocks.add(PageBlock.paragraph("The model was not asked: "
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
        Console plain = new Console(OutputStream.nullOutputStream(), OutputStream.nullOutputStream(), false, false);
        return new EvidenceVerdict(seen).text(plain);
    }

    private static String pace(Proof found) {
        double percent = 100 * (found.ratio() - 1);
        return "The fastest clean lap driven is " + Numbers.lapTime(found.bestLap()) + ", "
                + Numbers.fixed(Math.abs(percent), 1) + " % " + (percent >= 0 ? "slower" : "faster")
                + " than the model's " + Numbers.lapTime(found.modelLap())
                + ". The model compares settings better than it predicts lap times.";
    }

    private static PageTable paces(Proof found) {
        PageTable table = new PageTable("Pace in each setup, with the trend taken out of mean and scatter")
                .words("Setup")
                .numbers("Clean laps", "")
                .numbers("Best", "min:s")
                .numbers("Median", "min:s")
                .numbers("Mean", "min:s")
                .numbers("Scatter", "s");
        for (EvidenceResult.SetupPace pace : found.paces()) {
            table.row(
                    pace.setup(),
                    Integer.toString(pace.clean()),
                    Numbers.lapTime(pace.best()),
                    Numbers.lapTime(pace.median()),
                    Numbers.lapTime(pace.mean()),
                    Numbers.fixed(pace.spread(), 3));
        }
        return table;
    }

    private static PageTable changes(Proof found) {
        PageTable table = new PageTable("Each change, as seen and as expected")
                .words("Change")
                .words("Verdict")
                .numbers("Seen", "s a lap")
                .numbers("Between", "s, 95 %")
                .numbers("Expected", "s a lap")
                .words("Model");
        for (Proof.Change change : found.changes()) {
            Optional<MeanDifference> seen = change.difference();
            table.row(
                    change.before() + " to " + change.after(),
                    change.comparison()
                            .map(comparison -> comparison.verdict().finding().label())
                            .orElse("cannot be compared"),
                    seen.map(difference -> Numbers.signed(difference.difference(), 3))
                            .orElse("-"),
                    seen.map(difference ->
                                    Numbers.signed(difference.low(), 3) + " to " + Numbers.signed(difference.high(), 3))
                            .orElse("-"),
                    change.expected()
                            .value()
                            .map(effect -> Numbers.signed(-effect.gain(), 3))
                            .orElse("-"),
                    change.agrees().map(yes -> yes ? "agrees" : "disagrees").orElse("not known"));
        }
        return table;
    }
}
