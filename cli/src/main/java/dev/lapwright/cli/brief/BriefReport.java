package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.brief.Debrief;
import dev.lapwright.car.Setup;
import dev.lapwright.cli.page.Page;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fit.FitResult;
import dev.lapwright.logs.LapLogFile;
import dev.lapwright.report.Report;
import dev.lapwright.results.BriefSummary;
import dev.lapwright.results.FitReport;
import dev.lapwright.results.Subject;
import dev.lapwright.results.event.EventRuns;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Report of a brief: in short for the terminal, whole for machines; the page is laid out by {@link BriefPage}.
 *
 * @param subject the car, set up, and where; after driving as it is kept, and fitted
 * @param log the lap times driven; empty before driving
 * @param runs laps driven with their speeds; may be empty
 * @param result what was found
 * @param lines what it recommends on lines of their own; empty where no line is driven
 */
public record BriefReport(
        Subject subject,
        Optional<LapLogFile> log,
        List<FitReport.Run> runs,
        BriefResult result,
        Optional<BriefLines> lines) {
    public BriefReport {
        runs = List.copyOf(runs);
    }

    /** A brief after all runs of an event so far. */
    public static BriefReport after(EventRuns runs, BriefResult found) {
        return new BriefReport(now(runs.stands(), found), runs.times(), runs.driven(), found, Optional.empty());
    }

    /** The subject of a brief after driving: the car as it is kept, and fitted. */
    static Subject now(Subject before, BriefResult found) {
        Debrief debrief = found.debrief();
        return debrief.car() == debrief.given()
                ? before
                : new Subject(
                        debrief.car().document(),
                        new Setup(before.setup().name(), debrief.car().settings()),
                        debrief.car(),
                        before.track(),
                        before.line(),
                        before.day());
    }

    /**
     * The car's document with the fitted figures and their doubt.
     *
     * @throws InvalidValueException where nothing was fitted
     */
    String fittedDocument() {
        BriefResult.Part<FitResult> fit = result.debrief().fit();
        FitResult found = fit.value()
                .orElseThrow(
                        () -> new InvalidValueException("--to", "nothing was fitted: " + fit.problem(), fit.remedy()));
        return DocumentWriter.text(new FitReport(runs, found, subject.bare().name()).fittedCar());
    }

    /** What it comes to, for people, and all of it for machines. */
    public Report report() {
        Report report = subject.heading().gap();
        for (Page.Fact fact : new BriefShort(this).facts()) {
            // What must not be broken on the page is an ordinary space here.
            report.item(fact.name(), fact.text().replace('\u00A0', ' '));
        }
        return report.caution("Read the cautions on the page before you turn anything; the makers'"
                        + " limits and the rules of the event come first.")
                .gap()
                .fields(BriefSummary.tree(result, BriefTyresAndFuel.KG_PER_LITRE, log))
                .field("setup", subject.setup().name())
                .field("line", subject.line().tree())
                .field("ownLines", lines.map(BriefLines::tree).orElse(null))
                .field("debrief", new BriefDebrief(result.debrief()).tree())
                .field("plan", new BriefPlan(this).tree())
                .field("inShort", shortly())
                .field("cautions", BriefCautions.of(this));
    }

    /** The facts that people read, for machines. */
    private Map<String, Object> shortly() {
        Map<String, Object> facts = new LinkedHashMap<>();
        new BriefShort(this)
                .facts()
                .forEach(
                        fact -> facts.put(fact.name(), Report.plain(fact.text()).replace('\u00A0', ' ')));
        return facts;
    }

    /** The parts that could not be found, by what they are about; a log that was not given is not missed. */
    public Map<String, BriefResult.Part<?>> missing() {
        Map<String, BriefResult.Part<?>> parts = new LinkedHashMap<>();
        parts.put("what is worth changing", result.sensitivity());
        parts.put("the suggested setup", result.suggestion());
        parts.put("what can be said of each adjustment", result.verdicts());
        parts.put("the plan of changes", result.plan());
        parts.put("wings and drag", result.wings());
        parts.put("drag, downforce and grip", result.exchange());
        parts.put("gearing", result.gearing());
        parts.put("balance", result.balance());
        parts.put("tyre pressures", result.pressures());
        parts.put("fuel", result.stint());
        parts.put("test runs", result.tests());
        parts.put("the laps driven", result.debrief().proof());
        parts.put("the fit to the laps driven", result.debrief().fit());
        parts.values().removeIf(BriefResult.Part::isThere);
        if (log.isEmpty()) {
            parts.remove("the laps driven");
        }
        if (runs.isEmpty()) {
            parts.remove("the fit to the laps driven");
        }
        return parts;
    }

    /**
     * Whether what was given cannot be used: a log that does not fit, or a car with nothing to change. Other parts may be missing
     * for good reasons, as fuel for a race on an open run.
     */
    public boolean isUnusable() {
        return (log.isPresent() && !result.debrief().proof().isThere())
                || (!runs.isEmpty() && !result.debrief().fit().isThere())
                || !result.sensitivity().isThere();
    }
}
