package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.cli.page.Page;
import dev.lapwright.logs.LapLogFile;
import dev.lapwright.report.Report;
import dev.lapwright.results.BriefSummary;
import dev.lapwright.results.Subject;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Report of a brief: in short for the terminal, whole for machines; the page is laid out by {@link BriefPage}.
 *
 * @param subject the car, set up, and where
 * @param log the laps driven; empty before driving
 * @param result what was found
 * @param lines what it recommends on lines of their own; empty where no line is driven
 */
public record BriefReport(Subject subject, Optional<LapLogFile> log, BriefResult result, Optional<BriefLines> lines) {
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
        parts.put("the laps driven", result.proof());
        parts.values().removeIf(BriefResult.Part::isThere);
        if (log.isEmpty()) {
            parts.remove("the laps driven");
        }
        return parts;
    }

    /**
     * Whether what was given cannot be used: a log that does not fit, or a car with nothing to change. Other parts may be missing
     * for good reasons, as fuel for a race on an open run.
     */
    public boolean isUnusable() {
        return (log.isPresent() && !result.proof().isThere())
                || !result.sensitivity().isThere();
    }
}
