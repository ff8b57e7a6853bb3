package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.cli.output.VersionText;
import dev.lapwright.cli.page.Page;
import dev.lapwright.cli.page.PageHtml;
import dev.lapwright.report.Report;
import dev.lapwright.report.UnitSystem;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;

/** Brief laid out as a page. */
public final class BriefPage {
    private final BriefReport brief;

    private BriefPage(BriefReport brief) {
        this.brief = brief;
    }

    /** As HTML, in units of somebody's choice. */
    public static String html(BriefReport brief, UnitSystem units) {
        return PageHtml.text(new BriefPage(brief).page(), units);
    }

    private Page page() {
        BriefCharts charts = new BriefCharts(brief);
        BriefCircuit circuit = new BriefCircuit(brief, charts);
        BriefTyresAndFuel tyresAndFuel = new BriefTyresAndFuel(brief);
        AtomicReference<Page.Sheet> answer = new AtomicReference<>();
        // None needs another, and what takes time is to draw: side by side.
        List<Supplier<Page.Section>> sections = List.of(
                () -> {
                    answer.set(answer(charts));
                    return cautions();
                },
                circuit::circuit,
                circuit::limits,
                new BriefWorth(brief, charts)::section,
                new BriefSetup(brief)::section,
                new BriefAero(brief, charts)::section,
                new BriefGearing(brief, charts)::section,
                new BriefBalance(brief, charts)::section,
                tyresAndFuel::pressures,
                tyresAndFuel::fuel,
                new BriefProof(brief, charts)::section,
                BriefGlossary::section);
        List<Page.Section> written = StudyRun.onAllCores()
                .inParallel(
                        sections.size(), () -> sections, (all, i) -> all.get(i).get(), done -> {});
        return new Page(
                Report.verbatim(brief.subject().title()) + ": the brief",
                List.of(answer.get(), new BriefRunCard(brief).sheet()),
                written,
                "Made by Lapwright, version " + VersionText.version()
                        + ", by 'lapwright brief'. The same car, circuit and"
                        + " conditions give the same page again; all numbers are in the JSON file beside it.");
    }

    /** The first sheet. */
    private Page.Sheet answer(BriefCharts charts) {
        BriefResult result = brief.result();
        BriefShort shortly = new BriefShort(brief);
        BriefPlan plan = new BriefPlan(brief);
        List<Page.Block> first = new ArrayList<>();
        first.add(Page.Block.paragraph(shortly.lap()));
        shortly.heard().ifPresent(text -> first.add(Page.Block.paragraph(text)));
        List<Page.Fact> driven = shortly.driven();
        if (!driven.isEmpty()) {
            first.add(Page.Block.terms(driven));
        }
        if (plan.rows().isEmpty()) {
            plan.reading()
                    .ifPresentOrElse(
                            text -> first.add(Page.Block.paragraph("What to change: " + text)),
                            () -> first.add(missing(result.plan())));
        } else {
            first.add(Page.Block.table(plan.table(), plan.rows()));
        }
        List<Page.Band> bands = new ArrayList<>();
        bands.add(new Page.Band(first, List.of()));
        if (!plan.rows().isEmpty()) {
            bands.add(Page.Band.of(plan.waterfall(), Page.Block.paragraph(plan.remarks() + shortly.ownLine())));
        }
        bands.add(Page.Band.of(Page.Block.terms(plan.verdicts())));
        List<Page.Block> map = List.of(charts.limits("What limits the car where, by share of the time."));
        List<Page.Block> beside = new ArrayList<>();
        result.pressures()
                .value()
                .ifPresentOrElse(
                        found -> beside.add(BriefTyresAndFuel.coldPressures(found)),
                        () -> beside.add(missing(result.pressures())));
        beside.add(Page.Block.paragraph(
                result.stint().value().map(BriefTyresAndFuel::carry).orElse("No fuel told: see Fuel for the race.")));
        bands.add(new Page.Band(map, beside));
        bands.add(Page.Band.of(Page.Block.cautions(BriefCautions.shortly(brief))));
        return new Page.Sheet("answer", Report.verbatim(brief.subject().title()), facts(), bands);
    }

    private Page.Section cautions() {
        return new Page.Section(
                "cautions",
                "Before you act on it: all cautions",
                "What to mind about this car, everything that the page suggests to turn, tyres and fuel.",
                List.of(Page.Block.cautions(BriefCautions.of(brief))));
    }

    private List<Page.Fact> facts() {
        List<Page.Fact> facts = new ArrayList<>();
        facts.add(new Page.Fact("Setup now", brief.subject().setupTold()));
        facts.add(
                new Page.Fact("Conditions", Subject.told(brief.subject().day()).replace("degC", "°C")));
        facts.add(new Page.Fact("Line", brief.subject().line().text()));
        facts.add(new Page.Fact(
                "Race", BriefTyresAndFuel.race(brief.result().choices().racing().length())));
        brief.log().ifPresent(log -> facts.add(new Page.Fact("Laps driven", Report.verbatim(log.name()))));
        return facts;
    }

    /** Why a part is not there, and what to do. */
    public static Page.Block missing(BriefResult.Part<?> part) {
        String remedy = part.remedy().isEmpty() ? "nothing can be done about it here" : part.remedy();
        return Page.Block.missing(BriefWords.sentence(part.problem()), BriefWords.sentence(remedy));
    }
}
