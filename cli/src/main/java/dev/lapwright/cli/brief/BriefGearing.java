package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.cli.page.Page;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Table;
import dev.lapwright.results.GearingReport;
import dev.lapwright.results.Subject;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.sweep.SweepAxis;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Section of a brief on gearing: how a lap uses the gears, and what other ratios are worth. */
public final class BriefGearing {
    /** As in the command gearing, s. */
    static final double BEFORE_BRAKING_S = 0.5;

    private final BriefReport brief;
    private final BriefCharts charts;

    public BriefGearing(BriefReport brief, BriefCharts charts) {
        this.brief = brief;
        this.charts = charts;
    }

    public Page.Section section() {
        BriefResult.Part<GearingResult> part = brief.result().gearing();
        List<Page.Block> blocks = new ArrayList<>();
        part.value().ifPresentOrElse(found -> fill(blocks, found), () -> blocks.add(BriefPage.missing(part)));
        return new Page.Section(
                "gearing",
                "Gearing",
                "Short gears (a larger final drive) pull harder and run out of revs sooner, long ones the other way"
                        + " round: which suit this circuit, and what the others cost.",
                blocks);
    }

    private void fill(List<Page.Block> blocks, GearingResult found) {
        GearingReport gearing = new GearingReport(brief.subject(), BEFORE_BRAKING_S, found)
                .checked(brief.lines().map(BriefLines::gearing).orElse(List.of()));
        gearing.reading()
                .forEach(text -> blocks.add(
                        Page.Block.paragraph(BriefWords.named(text, found.car().adjustments()))));
        blocks.add(charts.gears(
                found,
                "Thin lines: engine speed over road speed in each gear up to the rev limit. Heavy line: how this lap goes up"
                        + " through them, with the road speed at each shift."));
        blocks.add(gears(found));
        for (SweepAxis axis : found.axes()) {
            if (axis.count() > 1) {
                blocks.add(choices(gearing, axis));
            }
        }
    }

    private static Page.Block gears(GearingResult found) {
        GearingResult.GearedLap lap = found.asGiven().baseline();
        double[] times = lap.timeInGear();
        Table<GearingResult.Gear> table = Table.<GearingResult.Gear>of("The gears as fitted")
                .words("", "Gear", gear -> "gear\u00A0" + gear.gear())
                .number("", "Ratio", "", Numbers.fixed(3), GearingResult.Gear::ratio)
                .number("", "Time in it", "s", Numbers.fixed(1), gear -> times[gear.gear() - 1])
                .number("", "Share", "% of lap", Numbers::percent, gear -> times[gear.gear() - 1] / lap.lapTime())
                .with(Table.Trait.LESSER)
                .number("", "Speed at the rev limit", "km/h", Numbers::kmh, GearingResult.Gear::limitSpeed);
        return Page.Block.table(table, found.gears());
    }

    private Page.Block choices(GearingReport gearing, SweepAxis axis) {
        GearingResult.Scenario given = gearing.result().asGiven();
        Optional<GearingResult.Candidate> best = gearing.best(given, axis);
        String name = Subject.isAdjustment(gearing.result().car(), axis.name())
                ? BriefWords.name(gearing.result().car().adjustment(axis.name()))
                : axis.name();
        Table<GearingResult.Candidate> table = Table.<GearingResult.Candidate>of(name + " in all ratios tried")
                .words("", name, tried -> Numbers.plain(tried.value()))
                .text("Lap", "min:s", tried -> lap(tried, lap -> Numbers.lapTime(lap.lapTime()), "no lap"))
                .text("Delta", "s", tried -> lap(tried, lap -> BriefWords.signed(given.difference(tried)), "-"))
                .text(
                        "Top speed",
                        "km/h",
                        tried -> lap(tried, lap -> Numbers.kmh(lap.top().speed()), "-"))
                .text("Revs to spare", "rpm", tried -> lap(tried, BriefGearing::spare, "-"))
                .with(Table.Trait.LESSER)
                .words(
                        "",
                        "Remark",
                        tried -> remark(
                                gearing.isFitted(tried),
                                best.filter(tried::equals).isPresent()))
                .marking(gearing::isFitted);
        return Page.Block.table(table, given.choices(axis.name()));
    }

    private static String lap(
            GearingResult.Candidate tried, Function<GearingResult.GearedLap, String> said, String none) {
        return tried.lap().map(said).orElse(none);
    }

    private static String spare(GearingResult.GearedLap lap) {
        return lap.limiter().time() > 0 ? "on it" : Numbers.fixed(lap.headroom(), 0);
    }

    private static String remark(boolean fitted, boolean fastest) {
        return fitted && fastest ? "fitted, fastest" : fitted ? "fitted" : fastest ? "fastest" : "-";
    }
}
