package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.cli.output.VersionText;
import dev.lapwright.cli.page.Page;
import dev.lapwright.cli.page.PageBlock;
import dev.lapwright.cli.page.PageFact;
import dev.lapwright.cli.page.PageHtml;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.Subject;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;

/** Brief laid out as a page. */
public final class BriefPage {
    private final BriefOutcome outcome;

    private BriefPage(BriefOutcome outcome) {
        this.outcome = outcome;
    }

    /** As HTML. */
    public static String html(BriefOutcome outcome) {
        return PageHtml.text(new BriefPage(outcome).page());
    }

    private Page page() {
        BriefCharts charts = new BriefCharts(outcome);
        BriefCircuit circuit = new BriefCircuit(outcome, charts);
        BriefTyresAndFuel tyresAndFuel = new BriefTyresAndFuel(outcome);
        return new Page(
                outcome.subject().car().name() + " at "
                        + outcome.subject().track().name() + ": the brief",
                facts(),
                new BriefShort(outcome).facts(),
                BriefCautions.of(outcome),
                List.of(
                        circuit.circuit(),
                        circuit.limits(),
                        new BriefWorth(outcome, charts).section(),
                        new BriefSetup(outcome).section(),
                        new BriefAero(outcome, charts).section(),
                        new BriefGearing(outcome, charts).section(),
                        new BriefBalance(outcome, charts).section(),
                        tyresAndFuel.pressures(),
                        tyresAndFuel.fuel(),
                        new BriefTests(outcome).section(),
                        new BriefProof(outcome, charts).section(),
                        BriefGlossary.section()),
                "Made by Lapwright, version " + VersionText.version()
                        + ", by 'lapwright brief'. The same car, circuit and"
                        + " conditions give the same page again; all numbers are in the JSON file beside it.");
    }

    private List<PageFact> facts() {
        Track track = outcome.subject().track();
        List<PageFact> facts = new ArrayList<>();
        facts.add(new PageFact("Car", outcome.subject().car().name()));
        facts.add(new PageFact(
                "Circuit",
                track.name() + ", " + (track.isClosed() ? "closed circuit" : "open run") + " of "
                        + Numbers.fixed(track.length(), 0) + " m"));
        facts.add(new PageFact("Setup now", outcome.subject().setupText()));
        facts.add(
                new PageFact("Conditions", Subject.text(outcome.subject().day()).replace("degC", "°C")));
        facts.add(new PageFact(
                "Race", BriefTyresAndFuel.race(outcome.result().choices().race())));
        outcome.log().ifPresent(log -> facts.add(new PageFact("Laps driven", log.name())));
        return facts;
    }

    /** Why a part is not there, and what to do. */
    public static PageBlock missing(BriefResult.Part<?> part) {
        String remedy = part.remedy().isEmpty() ? "nothing can be done about it here" : part.remedy();
        return PageBlock.missing(BriefWords.sentence(part.problem()), BriefWords.sentence(remedy));
    }
}
