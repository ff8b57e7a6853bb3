package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.cli.page.Page;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.results.LapTrace;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.BalanceResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Section of a brief on balance: which axle gives up first in each phase of each corner. */
public final class BriefBalance {
    private final BriefReport brief;
    private final BriefCharts charts;

    public BriefBalance(BriefReport brief, BriefCharts charts) {
        this.brief = brief;
        this.charts = charts;
    }

    public Page.Section section() {
        BriefResult.Part<BalanceResult> part = brief.result().balance();
        List<Page.Block> blocks = new ArrayList<>();
        part.value().ifPresentOrElse(found -> fill(blocks, found), () -> blocks.add(BriefPage.missing(part)));
        return new Page.Section(
                "balance",
                "Balance by phase of the corner",
                "At the limit one end slides first: front first is understeer (the car pushes wide), rear first oversteer"
                        + " (the tail comes round); the figure is how much the other end has left then.",
                blocks);
    }

    private void fill(List<Page.Block> blocks, BalanceResult found) {
        blocks.add(Page.Block.paragraph(means(found)));
        blocks.add(charts.balance(
                found,
                "To the right, filled: the front gives up first. To the left, outlined: the rear does. The longer the bar,"
                        + " the further the car is from being even."));
        blocks.add(table(found));
        brief.result()
                .suggestion()
                .value()
                .filter(suggested -> !suggested.changes().isEmpty())
                .flatMap(suggested -> suggested.balance().value())
                .ifPresent(suggested -> blocks.add(beside(found, suggested)));
        blocks.add(
                Page.Block.paragraph(
                        "The model knows no driver and no transient: it says which end has less grip, not how"
                                + " the car gets there. Against a complaint of the driver's, 'lapwright balance' ranks what to turn."));
    }

    private static String means(BalanceResult found) {
        List<String> said = new ArrayList<>();
        for (BalancePhase phase : BalancePhase.values()) {
            double understeer = found.understeer(phase);
            if (Double.isFinite(understeer)) {
                String g = Numbers.fixed(LapTrace.g(Math.abs(understeer)), 2);
                said.add((g.equals("0.00") ? "even " : understeer > 0 ? "understeer " : "oversteer ")
                        + when(phase)
                        + (g.equals("0.00") ? "" : " (by " + g + " g)"));
            }
        }
        return "On average over all corners: " + BriefWords.listed(said) + ".";
    }

    private static String when(BalancePhase phase) {
        return switch (phase) {
            case ENTRY -> "when braking on the way in";
            case LIFT_OFF -> "off the throttle";
            case MIDDLE -> "in the middle";
            case EXIT -> "under power on the way out";
        };
    }

    private static Page.Block table(BalanceResult found) {
        Table<Optional<BalanceResult.CornerBalance>> table = Table.<Optional<BalanceResult.CornerBalance>>of(
                        "The end that gives up first, and what the other has left, g")
                .words(
                        "",
                        "Corner",
                        row -> row.map(corner -> Report.verbatim(corner.corner().label()))
                                .orElse("Mean"))
                .text(
                        "Slowest",
                        "km/h",
                        row -> row.flatMap(corner -> corner.in(BalancePhase.MIDDLE))
                                .map(phase -> BriefCircuit.speed(phase.state().speed()))
                                .orElse("-"))
                .with(Table.Trait.LESSER);
        List<String> titles = List.of("Way in, braking", "Off the throttle", "Middle", "Way out, power");
        for (BalancePhase phase : BalancePhase.values()) {
            table.words(
                    "",
                    titles.get(phase.ordinal()),
                    row -> cell(row.map(corner -> corner.in(phase)
                                    .map(one -> one.margins().understeer())
                                    .orElse(Double.NaN))
                            .orElseGet(() -> found.understeer(phase))));
        }
        List<Optional<BalanceResult.CornerBalance>> rows = new ArrayList<>();
        found.corners().forEach(corner -> rows.add(Optional.of(corner)));
        // The mean of all corners comes last.
        rows.add(Optional.empty());
        return Page.Block.table(table.marking(Optional::isEmpty), rows);
    }

    private static Page.Block beside(BalanceResult found, BalanceResult suggested) {
        Table<BalancePhase> table = Table.<BalancePhase>of("Mean of all corners, now and with the suggested setup")
                .words("", "Phase", phase -> capital(when(phase)))
                .words("", "Now", phase -> cell(found.understeer(phase)))
                .words("", "Suggested", phase -> cell(suggested.understeer(phase)));
        return Page.Block.table(table, List.of(BalancePhase.values()));
    }

    private static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    private static String cell(double understeer) {
        if (!Double.isFinite(understeer)) {
            // No such phase, as in a corner that is not braked for.
            return "-";
        }
        String g = Numbers.fixed(LapTrace.g(Math.abs(understeer)), 2);
        return g.equals("0.00") ? "even" : (understeer > 0 ? "front, " : "rear, ") + g;
    }
}
