package dev.lapwright.cli;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.cli.page.PageBlock;
import dev.lapwright.cli.page.PageSection;
import dev.lapwright.cli.page.PageTable;
import dev.lapwright.report.Numbers;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.BalanceResult;
import java.util.ArrayList;
import java.util.List;

/** Which axle gives up first in each phase of each corner. */
final class BriefBalance {
    private final BriefOutcome outcome;
    private final BriefCharts charts;

    BriefBalance(BriefOutcome outcome, BriefCharts charts) {
        this.outcome = outcome;
        this.charts = charts;
    }

    PageSection section() {
        BriefResult.Part<BalanceResult> part = outcome.result().balance();
        List<PageBlock> blocks = new ArrayList<>();
        part.value().ifPresentOrElse(found -> fill(blocks, found), () -> blocks.add(BriefPage.missing(part)));
        return new PageSection(
                "balance",
                "Balance by phase of the corner",
                "At the limit one end slides first: front first is understeer (the car pushes wide), rear first oversteer"
                        + " (the tail comes round); the figure is how much the other end has left then.",
                blocks);
    }

    private void fill(List<PageBlock> blocks, BalanceResult found) {
        blocks.add(PageBlock.paragraph(means(found)));
        blocks.add(charts.balance(
                found,
                "To the right, filled: the front gives up first. To the left, outlined: the rear does. The longer the bar,"
                        + " the further the car is from being even."));
        blocks.add(PageBlock.table(table(found)));
        outcome.result()
                .suggestion()
                .value()
                .filter(suggested -> !suggested.changes().isEmpty())
                .flatMap(suggested -> suggested.balance().value())
                .ifPresent(suggested -> blocks.add(PageBlock.table(beside(found, suggested))));
        blocks.add(
                PageBlock.paragraph(
                        "The model knows no driver and no transient: it says which end has less grip, not how"
                                + " the car gets there. Against a complaint of the driver's, 'lapwright balance' ranks what to turn."));
    }

    private static String means(BalanceResult found) {
        List<String> said = new ArrayList<>();
        for (BalancePhase phase : BalancePhase.values()) {
            double understeer = found.understeer(phase);
            if (Double.isFinite(understeer)) {
                String g = Numbers.g(Math.abs(understeer));
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

    private static PageTable table(BalanceResult found) {
        PageTable table = new PageTable("The end that gives up first, and what the other has left, g")
                .words("Corner")
                .numbers("Slowest", "km/h")
                .lesser()
                .words("Way in, braking")
                .words("Off the throttle")
                .words("Middle")
                .words("Way out, power");
        for (BalanceResult.CornerBalance corner : found.corners()) {
            List<String> cells = new ArrayList<>();
            cells.add(corner.corner().label());
            cells.add(corner.in(BalancePhase.MIDDLE)
                    .map(phase -> BriefCircuit.speed(phase.state().speed()))
                    .orElse("-"));
            for (BalancePhase phase : BalancePhase.values()) {
                cells.add(cell(
                        corner.in(phase).map(one -> one.margins().understeer()).orElse(Double.NaN)));
            }
            table.row(cells, false);
        }
        List<String> cells = new ArrayList<>(List.of("Mean", "-"));
        for (BalancePhase phase : BalancePhase.values()) {
            cells.add(cell(found.understeer(phase)));
        }
        return table.row(cells, true);
    }

    private static PageTable beside(BalanceResult found, BalanceResult suggested) {
        PageTable table = new PageTable("Mean of all corners, now and with the suggested setup")
                .words("Phase")
                .words("Now")
                .words("Suggested");
        for (BalancePhase phase : BalancePhase.values()) {
            String when = when(phase);
            table.row(
                    Character.toUpperCase(when.charAt(0)) + when.substring(1),
                    cell(found.understeer(phase)),
                    cell(suggested.understeer(phase)));
        }
        return table;
    }

    private static String cell(double understeer) {
        if (!Double.isFinite(understeer)) {
            return "none";
        }
        String g = Numbers.g(Math.abs(understeer));
        return g.equals("0.00") ? "even" : (understeer > 0 ? "front, " : "rear, ") + g;
    }
}
