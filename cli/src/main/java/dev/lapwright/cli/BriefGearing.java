package dev.lapwright.cli;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.cli.page.PageBlock;
import dev.lapwright.cli.page.PageSection;
import dev.lapwright.cli.page.PageTable;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.Subject;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.sweep.SweepAxis;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the lap makes of the gears, and of others. */
final class BriefGearing {
    /** As in the command gearing, s. */
    private static final double BEFORE_BRAKING_S = 0.5;

    private final BriefOutcome outcome;
    private final BriefCharts charts;

    BriefGearing(BriefOutcome outcome, BriefCharts charts) {
        this.outcome = outcome;
        this.charts = charts;
    }

    PageSection section() {
        BriefResult.Part<GearingResult> part = outcome.result().gearing();
        List<PageBlock> blocks = new ArrayList<>();
        part.value().ifPresentOrElse(found -> fill(blocks, found), () -> blocks.add(BriefPage.missing(part)));
        return new PageSection(
                "gearing",
                "Gearing",
                "Short gears (a larger final drive) pull harder and run out of revs sooner, long ones the other way"
                        + " round: which suit this circuit, and what the others cost.",
                blocks);
    }

    private void fill(List<PageBlock> blocks, GearingResult found) {
        GearingOutcome gearing = new GearingOutcome(outcome.subject(), BEFORE_BRAKING_S, found);
        GearingReading.of(gearing)
                .forEach(text -> blocks.add(
                        PageBlock.paragraph(BriefWords.named(text, found.car().adjustments()))));
        blocks.add(charts.gears(
                found,
                "Thin lines: engine speed over road speed in each gear up to the rev limit. Heavy line: how this lap goes up"
                        + " through them, with the road speed at each shift."));
        blocks.add(PageBlock.table(gears(found)));
        for (SweepAxis axis : found.axes()) {
            if (axis.count() > 1) {
                blocks.add(PageBlock.table(choices(gearing, axis)));
            }
        }
    }

    private static PageTable gears(GearingResult found) {
        GearingResult.GearedLap lap = found.asGiven().baseline();
        double[] times = lap.timeInGear();
        PageTable table = new PageTable("The gears as fitted")
                .words("Gear")
                .numbers("Ratio", "")
                .numbers("Time in it", "s")
                .numbers("Share", "% of lap")
                .lesser()
                .numbers("Speed at the rev limit", "km/h");
        for (GearingResult.Gear gear : found.gears()) {
            double time = times[gear.gear() - 1];
            table.row(
                    "gear\u00A0" + gear.gear(),
                    Numbers.fixed(gear.ratio(), 3),
                    Numbers.fixed(time, 1),
                    Numbers.percent(time / lap.lapTime()),
                    Numbers.kmh(gear.limitSpeed()));
        }
        return table;
    }

    private PageTable choices(GearingOutcome gearing, SweepAxis axis) {
        GearingResult.Scenario given = gearing.result().asGiven();
        Optional<GearingResult.Candidate> best = gearing.best(given, axis);
        String name = Subject.isAdjustment(gearing.result().car(), axis.name())
                ? BriefWords.name(gearing.result().car().adjustment(axis.name()))
                : axis.name();
        PageTable table = new PageTable(name + " in all ratios tried")
                .words(name)
                .numbers("Lap", "min:s")
                .numbers("Gain", "s")
                .numbers("Top speed", "km/h")
                .numbers("Revs to spare", "rpm")
                .lesser()
                .words("Remark");
        for (GearingResult.Candidate choice : given.choices(axis.name())) {
            List<String> cells = new ArrayList<>();
            cells.add(Numbers.plain(choice.value()));
            if (choice.lap().isPresent()) {
                GearingResult.GearedLap lap = choice.lap().get();
                cells.add(Numbers.lapTime(lap.lapTime()));
                cells.add(BriefWords.signed(given.gain(choice)));
                cells.add(Numbers.kmh(lap.top().speed()));
                cells.add(lap.limiter().time() > 0 ? "on it" : Numbers.fixed(lap.headroom(), 0));
            } else {
                cells.addAll(List.of("no lap", "-", "-", "-"));
            }
            boolean fitted = gearing.isFitted(choice);
            boolean fastest = best.filter(choice::equals).isPresent();
            cells.add(fitted && fastest ? "fitted, fastest" : fitted ? "fitted" : fastest ? "fastest" : "-");
            table.row(cells, fitted);
        }
        return table;
    }
}
