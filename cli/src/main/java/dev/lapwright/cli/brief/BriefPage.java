package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.cli.output.VersionText;
import dev.lapwright.cli.page.Page;
import dev.lapwright.cli.page.PageHtml;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.results.Subject;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;

/** Brief laid out as a page. */
public final class BriefPage {
    private final BriefReport brief;

    private BriefPage(BriefReport brief) {
        this.brief = brief;
    }

    /** As HTML. */
    public static String html(BriefReport brief) {
        return PageHtml.text(new BriefPage(brief).page());
    }

    private Page page() {
        BriefCharts charts = new BriefCharts(brief);
        BriefCircuit circuit = new BriefCircuit(brief, charts);
        BriefTyresAndFuel tyresAndFuel = new BriefTyresAndFuel(brief);
        return new Page(
                Report.verbatim(brief.subject().title()) + ": the brief",
                facts(),
                new BriefShort(brief).facts(),
                BriefCautions.of(brief),
                List.of(
                        circuit.circuit(),
                        circuit.limits(),
                        new BriefWorth(brief, charts).section(),
                        new BriefSetup(brief).section(),
                        new BriefAero(brief, charts).section(),
                        new BriefGearing(brief, charts).section(),
                        new BriefBalance(brief, charts).section(),
                        tyresAndFuel.pressures(),
                        tyresAndFuel.fuel(),
                        new BriefTests(brief).section(),
                        new BriefProof(brief, charts).section(),
                        BriefGlossary.section()),
                "Made by Lapwright, version " + VersionText.version()
                        + ", by 'lapwright brief'. The same car, circuit and"
                        + " conditions give the same page again; all numbers are in the JSON file beside it.");
    }

    private List<Page.Fact> facts() {
        Track track = brief.subject().track();
        List<Page.Fact> facts = new ArrayList<>();
        facts.add(new Page.Fact("Car", Report.verbatim(brief.subject().car().name())));
        facts.add(new Page.Fact(
                "Circuit",
                Report.verbatim(track.name()) + ", " + (track.isClosed() ? "closed circuit" : "open run") + " of "
                        + Numbers.fixed(track.length(), 0) + " m"));
        facts.add(new Page.Fact("Setup now", brief.subject().setupTold()));
        facts.add(
                new Page.Fact("Conditions", Subject.told(brief.subject().day()).replace("degC", "°C")));
        facts.add(new Page.Fact("Line", brief.subject().line().text()));
        facts.add(new Page.Fact(
                "Race", BriefTyresAndFuel.race(brief.result().choices().race())));
        brief.log().ifPresent(log -> facts.add(new Page.Fact("Laps driven", Report.verbatim(log.name()))));
        return facts;
    }

    /** Why a part is not there, and what to do. */
    public static Page.Block missing(BriefResult.Part<?> part) {
        String remedy = part.remedy().isEmpty() ? "nothing can be done about it here" : part.remedy();
        return Page.Block.missing(BriefWords.sentence(part.problem()), BriefWords.sentence(remedy));
    }
}
