package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.brief.Proof;
import dev.lapwright.cli.page.Page;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.fit.FitResult;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.results.EvidenceReport;
import dev.lapwright.results.FitReport;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

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
        BriefResult.Part<Proof> part = brief.result().debrief().proof();
        if (brief.log().isEmpty()) {
            blocks.add(Page.Block.paragraph(
                    "Nothing has been driven yet, or no log was given. Afterwards make this page again"
                            + " with --after and a log of lap times (columns time, setup and, if known, run and flag), or of laps"
                            + " with their speeds for each run: it then says which changes were real, what to keep, what is"
                            + " known of the car now, and what to run next."));
        } else {
            part.value().ifPresentOrElse(found -> fill(blocks, found), () -> blocks.add(BriefPage.missing(part)));
        }
        if (!brief.runs().isEmpty()) {
            BriefResult.Part<FitResult> fit = brief.result().debrief().fit();
            blocks.add(Page.Block.subheading("What is known of the car now"));
            fit.value().ifPresentOrElse(found -> fitted(blocks, found), () -> blocks.add(BriefPage.missing(fit)));
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

    private void fitted(List<Page.Block> blocks, FitResult found) {
        blocks.add(Page.Block.table(FitReport.FIGURES, found.estimates()));
        blocks.add(Page.Block.paragraph("Before the fit the model's laps took "
                + found.runs().stream()
                        .map(run -> Numbers.lapTime(run.before().time()))
                        .collect(Collectors.joining(" and "))
                + ", the fitted car's take "
                + found.runs().stream()
                        .map(run -> Numbers.lapTime(run.after().time()))
                        .collect(Collectors.joining(" and "))
                + "; driven were "
                + found.runs().stream()
                        .map(run -> Numbers.lapTime(run.loggedTime()))
                        .collect(Collectors.joining(" and "))
                + " on average."));
        List<String> notes = new ArrayList<>();
        brief.runs().forEach(run -> notes.addAll(run.pick().leftOut()));
        notes.addAll(found.notes());
        if (!notes.isEmpty()) {
            blocks.add(Page.Block.list(notes));
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
        return Page.Block.table(BriefDebrief.CHANGES, found.changes());
    }
}
